import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { minimaxPolyline } from "../../../packages/core/src/curve/minimax-polyline.ts";
import { roundPolyline } from "../../../packages/core/src/curve/round-polyline.ts";
import { evenly } from "../../support/evenly.ts";
import { responses, sampledWorst } from "./curves.ts";

const toStep = (step: number) => (y: number) => [Math.floor(y / step) * step, Math.ceil(y / step) * step];
const pointKinds = fc.constantFrom("equal" as const, "free" as const);
const runs = { numRuns: 40 };

describe("roundPolyline", () => {
  test("of all monotone choices of neighbours none has a smaller error", () => {
    fc.assert(
      fc.property(
        responses,
        pointKinds,
        fc.integer({ min: 2, max: 5 }),
        evenly(0.5, 20),
        (curve, points, n, step) => {
          const { f, ends, breaks } = curve;
          const knots = minimaxPolyline(f, ends, n, { points, breaks })?.knots ?? [];
          const rounded = roundPolyline(f, knots, { neighbours: toStep(step), breaks });
          const sign = Math.sign(f(ends[1]) - f(ends[0]));
          const errors = Array.from({ length: 2 ** n }, (_, bits) =>
            knots.map(({ x, y }, k) => ({ x, y: toStep(step)(y)[(bits >> k) & 1] ?? Number.NaN })),
          )
            .filter((all) => all.every(({ y }, k) => k === 0 || sign * (y - (all[k - 1]?.y ?? y)) >= 0))
            .map((all) => sampledWorst(curve, all, 300));
          expect(rounded?.worst).toBeGreaterThanOrEqual(Math.min(...errors) * (1 - 1e-9) - 1e-9);
          expect(rounded?.worst).toBeLessThanOrEqual(Math.min(...errors) * (1 + 1e-2) + 1e-9);
        },
      ),
      runs,
    );
  });

  test("states its real error, stays on the grid, does not turn back, and costs at most one step", () => {
    fc.assert(
      fc.property(
        responses,
        pointKinds,
        fc.integer({ min: 2, max: 9 }),
        evenly(0.5, 20),
        (curve, points, n, step) => {
          const { f, ends, breaks } = curve;
          const exact = minimaxPolyline(f, ends, n, { points, breaks });
          const rounded = roundPolyline(f, exact?.knots ?? [], { neighbours: toStep(step), breaks });
          if (exact === undefined || rounded === undefined) throw new Error("no polyline");
          const sampled = sampledWorst(curve, rounded.knots);
          expect(sampled).toBeLessThanOrEqual(rounded.worst * (1 + 1e-9) + 1e-9);
          expect(sampled).toBeGreaterThanOrEqual(rounded.worst * (1 - 1e-4) - 1e-9);
          expect(rounded.worst).toBeLessThanOrEqual(exact.worst + step + 1e-9);
          const sign = Math.sign(f(ends[1]) - f(ends[0]));
          for (const [k, { x, y }] of rounded.knots.entries()) {
            expect(x).toBe(exact.knots[k]?.x);
            expect(y / step).toBeCloseTo(Math.round(y / step), 9);
            expect(sign * (y - (rounded.knots[k - 1]?.y ?? y))).toBeGreaterThanOrEqual(0);
          }
        },
      ),
      runs,
    );
  });

  test("rounds the x of inner points too where it may, and leaves the ends", () => {
    const f = (x: number) => 1500 + 5 * x + 0.05 * x * x;
    const knots = minimaxPolyline(f, [-20, 30.5], 4, { points: "free" })?.knots ?? [];
    const rounded = roundPolyline(f, knots, { neighbours: toStep(1), neighboursX: toStep(5) });
    const xs = rounded?.knots.map(({ x }) => x) ?? [];
    expect([xs[0], xs[3]]).toEqual([-20, 30.5]);
    for (const x of xs.slice(1, 3)) expect(x % 5).toBeCloseTo(0, 12);
  });

  test("leaves no range, and says so where nothing is inside", () => {
    const knots = [
      { x: 0, y: 1000.4 },
      { x: 1, y: 1200.4 },
    ];
    const line = (x: number) => 1000.4 + 200 * x;
    const to = (range: readonly [number, number]) =>
      roundPolyline(line, knots, { neighbours: toStep(1), range });
    expect(to([1000.2, 1200.8])?.knots.map(({ y }) => y)).toEqual([1001, 1200]);
    expect(to([1000.2, 1000.8])).toBeUndefined();
  });

  test("undefined where every choice turns back, or a knot is alone", () => {
    const knots = [
      { x: 0, y: 1 },
      { x: 1, y: 2 },
    ];
    const swapped = (y: number) => [3 - y];
    expect(roundPolyline((x) => 1 + x, knots, { neighbours: swapped })).toBeUndefined();
    expect(roundPolyline((x) => 1 + x, knots.slice(1), { neighbours: toStep(1) })).toBeUndefined();
  });
});
