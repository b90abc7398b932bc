import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { minimaxPolyline } from "../../../packages/core/src/curve/minimax-polyline.ts";
const d = JSON.parse(readFileSync("test/fixtures/piecewise-linear.json", "utf8"));
const fs = [[(x: number) => x * x, 0, 1], [(x: number) => Math.sin((Math.PI * x) / 3) / Math.sin(Math.PI / 3), -1, 1]] as const;
test("t", () => {
  for (const [k, [f, a, b]] of fs.entries())
    for (const r of d.curves[k].results)
      for (const [mode, points, pinnedEnds] of [["equal_free", "equal", false], ["equal_pinned_ends", "equal", true], ["freeknot_free", "free", false], ["freeknot_pinned_ends", "free", true]] as const) {
        let evals = 0;
        const g = (x: number) => { evals++; return f(x); };
        const p = minimaxPolyline(g, [a, b], r.points, { points, pinnedEnds });
        const run = () => minimaxPolyline(f, [a, b], r.points, { points, pinnedEnds });
        for (let i = 0; i < 20; i++) run();
        const t = performance.now();
        for (let i = 0; i < 50; i++) run();
        console.log(k, r.points, mode, p?.worst, ((p?.worst ?? 0) / r[mode].E - 1).toExponential(1), evals, ((performance.now() - t) / 50).toFixed(3), "ms", (globalThis as any).rounds);
      }
});
