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

  it("is undefined where residuals do not tell two parameters apart, or are not finite at the start", () => {
    const problem = { start: [1, 1], units: [0.1, 0.1] };
    expect(
      fitLeastSquares({ ...problem, residualsAt: ([a = 0, b = 0]) => [a + b - 3, 2 * a + 2 * b, 1] }),
    ).toBeUndefined();
    expect(fitLeastSquares({ ...problem, residualsAt: () => [Number.NaN, 1, 2] })).toBeUndefined();
  });

  it("solves a straight line in closed form, with its doubts", () => {
    // Source: JCGM 100:2008, H.3, the formulas for a straight line; readings of doubt 1.
    const [x, y] = [
      [1, 2, 4, 5],
      [3.1, 4.9, 9.2, 10.8],
    ];
    const fit = fitLeastSquares({
      residualsAt: ([a = 0, b = 0]) => x.map((at, i) => a + b * at - (y[i] ?? 0)),
      start: [0, 0],
      units: [1, 1],
    });
    const sum = (f: (i: number) => number) => x.reduce((total, _, i) => total + f(i), 0);
    const at = (i: number) => x[i] ?? 0;
    const d = 4 * sum((i) => at(i) ** 2) - sum(at) ** 2;
    const b = (4 * sum((i) => at(i) * (y[i] ?? 0)) - sum(at) * sum((i) => y[i] ?? 0)) / d;
    expect(fit?.parameters[1]).toBeCloseTo(b, 12);
    expect(fit?.doubts[1]).toBeCloseTo(Math.sqrt(4 / d), 9);
    expect(fit?.doubts[0]).toBeCloseTo(Math.sqrt(sum((i) => at(i) ** 2) / d), 9);
  });
});
