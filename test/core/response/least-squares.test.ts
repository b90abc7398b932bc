import { describe, expect, it } from "vitest";
import { fitLeastSquares } from "../../../packages/core/src/response/least-squares.ts";
import sets from "../../fixtures/regression-nonlinear.json";

type Parameters = readonly number[];

/** The functions of the sets, by name. */
const models: Record<string, (x: number, b: Parameters) => number> = {
  Misra1a: (x, [b1 = 0, b2 = 0]) => b1 * (1 - Math.exp(-b2 * x)),
  DanWood: (x, [b1 = 0, b2 = 0]) => b1 * x ** b2,
  Kirby2: (x, [b1 = 0, b2 = 0, b3 = 0, b4 = 0, b5 = 0]) =>
    (b1 + b2 * x + b3 * x ** 2) / (1 + b4 * x + b5 * x ** 2),
  Rat42: (x, [b1 = 0, b2 = 0, b3 = 0]) => b1 / (1 + Math.exp(b2 - b3 * x)),
};

const relative = (a: number | undefined, b: number) =>
  a === undefined ? Number.POSITIVE_INFINITY : Math.abs(a - b) / Math.abs(b);

describe("fitLeastSquares", () => {
  // Source: NIST Statistical Reference Datasets, nonlinear regression, certified values (in the fixture).
  for (const set of sets) {
    for (const [index, start] of set.starts.entries()) {
      it(`finds the certified parameters and doubts of ${set.name} from start ${index + 1}`, () => {
        const model = models[set.name];
        const fit = fitLeastSquares({
          residualsAt: (b) => set.x.map((x, i) => (model?.(x, b) ?? Number.NaN) - (set.y[i] ?? 0)),
          start,
          units: start.map((value) => Math.abs(value) / 100),
        });
        const { parameters, standardDeviations, residualSumOfSquares, residualStandardDeviation } =
          set.certified;
        for (const [i, certified] of parameters.entries()) {
          expect(relative(fit?.parameters[i], certified)).toBeLessThan(1e-6);
        }
        for (const [i, certified] of standardDeviations.entries()) {
          expect(relative((fit?.doubts[i] ?? 0) * residualStandardDeviation, certified)).toBeLessThan(1e-6);
        }
        expect(relative(fit?.chiSquare, residualSumOfSquares)).toBeLessThan(1e-9);
      });
    }
  }
});
