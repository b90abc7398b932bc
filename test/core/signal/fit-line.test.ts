import fc from "fast-check";
import { inv, matrix, multiply, transpose } from "mathjs";
import { describe, expect, it } from "vitest";
import { fitLine } from "../../../packages/core/src/signal/fit-line.ts";
import { fitTwoSided } from "../../../packages/core/src/signal/fit-two-sided.ts";
import norris from "../../fixtures/regression-norris.json" with { type: "json" };

const pulseUs = fc.double({ min: 900, max: 2100, noNaN: true });
const layout = [-125, -100, -100, -50, 0, 25, 100, 110];
const pulsesUs = fc.array(pulseUs, { minLength: layout.length, maxLength: layout.length });

describe("fitLine", () => {
  it("gives the certified values of NIST StRD Norris to 1e-12", () => {
    const fit = fitLine(norris.x.map((percent, at) => ({ percent, pulseUs: norris.y[at] ?? Number.NaN })));
    if (fit === undefined) throw new Error("Norris has 36 distinct readings");
    const standardUs = Math.sqrt(fit.squaresUs2 / fit.freedom);
    const { B0, B1, se_B0, se_B1, residual_sum_of_squares } = norris.certified;
    const off = (value: number, certified: string) => Math.abs(value / Number(certified) - 1);
    expect(off(fit.centreUs, B0)).toBeLessThan(1e-12);
    expect(off(fit.usPerPercent, B1)).toBeLessThan(1e-14);
    expect(off(fit.centrePerUs * standardUs, se_B0)).toBeLessThan(1e-12);
    expect(off(fit.usPerPercentPerUs * standardUs, se_B1)).toBeLessThan(1e-12);
    expect(off(fit.squaresUs2, residual_sum_of_squares)).toBeLessThan(1e-12);
  });

  it("has no line through one percent, or through nothing", () => {
    expect(
      fitLine([
        { percent: 5, pulseUs: 1500 },
        { percent: 5, pulseUs: 1510 },
      ]),
    ).toBeUndefined();
    expect(fitLine([])).toBeUndefined();
  });
});

describe("fitTwoSided", () => {
  it("leaves residuals that are square to the centre and to both sides: the normal equations hold", () => {
    fc.assert(
      fc.property(pulsesUs, (measured) => {
        const fit = fitTwoSided(layout.map((percent, at) => ({ percent, pulseUs: measured[at] ?? 0 })));
        if (fit === undefined) throw new Error("both sides have readings");
        const residuals = layout.map((percent, at) => {
          const side = percent < 0 ? fit.below : fit.above;
          return (measured[at] ?? 0) - fit.centreUs - side.usPerPercent * percent;
        });
        const against = (weight: (percent: number) => number) =>
          layout.reduce((total, percent, at) => total + weight(percent) * (residuals[at] ?? 0), 0);
        expect(Math.abs(against(() => 1))).toBeLessThan(1e-8);
        expect(Math.abs(against((percent) => Math.min(percent, 0)))).toBeLessThan(1e-6);
        expect(Math.abs(against((percent) => Math.max(percent, 0)))).toBeLessThan(1e-6);
        expect(fit.squaresUs2).toBeCloseTo(
          residuals.reduce((total, one) => total + one * one, 0),
          6,
        );
      }),
    );
  });

  it("states the doubt that the inverse of the normal matrix gives", () => {
    // By hand for percents -1, 0, 1: matrix [3 -1 1; -1 1 0; 1 0 1], inverse [1 1 -1; 1 2 -1; -1 -1 2].
    const fit = fitTwoSided([-1, 0, 1].map((percent) => ({ percent, pulseUs: 1500 + percent })));
    expect(fit?.centrePerUs).toBeCloseTo(1, 12);
    expect(fit?.below.usPerPercentPerUs).toBeCloseTo(Math.SQRT2, 12);
    expect(fit?.above.usPerPercentPerUs).toBeCloseTo(Math.SQRT2, 12);
    expect(fit?.differencePerUs).toBeCloseTo(Math.sqrt(2 + 2 + 2), 12);
  });

  it("has the doubts of the inverse normal matrix, for any layout of readings", () => {
    const percents = fc.array(fc.integer({ min: 1, max: 125 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(percents, percents, fc.nat(3), (below, above, middle) => {
        const all = [...below.map((percent) => -percent), 0, ...Array<number>(middle).fill(0), ...above];
        const fit = fitTwoSided(all.map((percent) => ({ percent, pulseUs: 1500 + 5 * percent })));
        if (fit === undefined) throw new Error("0 percent fixes the centre");
        const design = matrix(all.map((percent) => [1, Math.min(percent, 0), Math.max(percent, 0)]));
        const covariance = inv(multiply(transpose(design), design)).toArray() as number[][];
        const [[centre = 0] = [], [, low = 0, both = 0] = [], [, , high = 0] = []] = covariance;
        const off = (found: number, variance: number) => Math.abs(found / Math.sqrt(variance) - 1);
        expect(off(fit.centrePerUs, centre)).toBeLessThan(1e-9);
        expect(off(fit.below.usPerPercentPerUs, low)).toBeLessThan(1e-9);
        expect(off(fit.above.usPerPercentPerUs, high)).toBeLessThan(1e-9);
        expect(off(fit.differencePerUs, low + high - 2 * both)).toBeLessThan(1e-9);
        expect(fit.freedom).toBe(all.length - 3);
      }),
    );
  });

  it("has no answer with one side only, or where nothing fixes the centre", () => {
    const at = (...percents: readonly number[]) =>
      percents.map((percent) => ({ percent, pulseUs: 1500 + percent }));
    expect(fitTwoSided(at(0, 50, 100))).toBeUndefined();
    expect(fitTwoSided(at(-100, -50, 0))).toBeUndefined();
    expect(fitTwoSided(at(-100, -100, 100))).toBeUndefined();
    expect(fitTwoSided(at(-100, -50, 100))?.centreUs).toBeCloseTo(1500, 9);
  });
});
