import { it } from "vitest";
import { readBench, normal } from "./core/response/synthetic-readings.ts";
import { seededRandom } from "../packages/core/src/uncertainty/random.ts";
import { fitLinkage } from "../packages/core/src/response/fit-linkage.ts";
import { fitShape } from "../packages/core/src/response/fit-shape.ts";
import { explainMisfit } from "../packages/core/src/response/explain-misfit.ts";
import { drive } from "../packages/core/src/linkage/drives.ts";
it("x", () => {
  const declared = { kind: "pushrod", arm: 10, horn: 17, base: 88, rise: -16, armAt: -74, hornAt: -60 } as any;
  for (const seed of [1,2,3,5,6,7]) for (const arm of [12,9]) for (const rotationsDeg of [[-38, -25, -15, -5, 5, 16, 28, 40],[-36, -24, -12, 0, 12, 25, 38]]) {
  const random = seededRandom(seed);
  const degPerUs = 0.09 * (1 + 0.01 * normal(random));
  const rotationZeroDeg = normal(random);
  const pts = readBench({...declared, arm}, { levelUs: 1500, degPerUs, rotationZeroDeg, rotationsDeg, scatterDeg: 0.15, random });
  const start = { levelUs: 1500, degPerUs: 0.09 };
  const f = fitLinkage(declared, pts, 0.264, start);
  const t0 = performance.now();
  const m = explainMisfit(declared, pts, 0.264, start);
  console.log("Q", seed, arm, "kind" in f ? f.kind : f.agreement.chiSquare.toFixed(1), !m ? "none" : m.agreement.chiSquare.toFixed(1)+" "+m.explanations.map(e => e.path + " " + e.fitted.toFixed(2) + " " + e.agreement.chiSquare.toFixed(1)).join("; "), (performance.now()-t0).toFixed(0));
  }
});
