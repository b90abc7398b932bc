import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { draw } from "../../../packages/core/src/uncertainty/draw.ts";
import type { Trial } from "../../../packages/core/src/uncertainty/simulate.ts";
import { simulate } from "../../../packages/core/src/uncertainty/simulate.ts";
import {
  numericalTolerance,
  simulateUntilSettled,
} from "../../../packages/core/src/uncertainty/simulate-until-settled.ts";
import { evenly } from "../../support/evenly.ts";

const fourRectangles: Trial = (random) => {
  const halfWidth = Math.sqrt(3);
  return [0, 0, 0, 0].reduce((sum, mean) => sum + draw({ kind: "rectangular", mean, halfWidth }, random), 0);
};

describe("simulateUntilSettled", () => {
  // Source: JCGM 101:2008 9.2.3, exact: standard doubt 2, half-width 2 sqrt 3 (2 - (3/5)^(1/4)).
  it("stops once every figure is good to the tolerance of the digits asked for", () => {
    const simulation = simulateUntilSettled(fourRectangles, { seed: 3, digits: 2 });
    const halfWidth = 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25);
    const tolerance = numericalTolerance(2, 2);
    expect(simulation?.settled).toBe(true);
    expect(Math.abs(simulation?.mean ?? NaN)).toBeLessThan(tolerance);
    expect(Math.abs((simulation?.standard ?? NaN) - 2)).toBeLessThan(tolerance);
    expect(Math.abs((simulation?.symmetric[0] ?? NaN) + halfWidth)).toBeLessThan(tolerance);
    expect(Math.abs((simulation?.symmetric[1] ?? NaN) - halfWidth)).toBeLessThan(tolerance);
  });

  it("runs whole blocks, more of them for more digits", () => {
    const one = simulateUntilSettled(fourRectangles, { seed: 3, digits: 1 });
    const two = simulateUntilSettled(fourRectangles, { seed: 3, digits: 2 });
    expect(one?.count).toBe(20_000);
    expect((two?.count ?? NaN) % 10_000).toBe(0);
    expect(two?.count).toBeGreaterThan(20_000);
  });

  it("says so where the most trials come before the digits", () => {
    const simulation = simulateUntilSettled(fourRectangles, { seed: 3, digits: 2, mostTrials: 25_000 });
    expect(simulation).toMatchObject({ settled: false, count: 20_000 });
  });

  it("summarises what one simulation of as many trials would", () => {
    const adaptive = simulateUntilSettled(fourRectangles, { seed: 8 });
    const fixed = simulate(fourRectangles, { seed: 8, trials: adaptive?.count ?? 0 });
    expect(adaptive).toEqual({ ...fixed, settled: true });
  });

  it("takes larger blocks where the coverage leaves little out", () => {
    expect(simulateUntilSettled(fourRectangles, { seed: 3, coverage: 0.995 })?.count).toBeGreaterThanOrEqual(
      40_000,
    );
  });

  it("settles at once on a result without doubt, and gives undefined without results", () => {
    expect(simulateUntilSettled(() => 5, { seed: 1 })).toMatchObject({ settled: true, mean: 5, standard: 0 });
    expect(simulateUntilSettled(() => undefined, { seed: 1 })).toBeUndefined();
  });
});

describe("numericalTolerance", () => {
  // Source: JCGM 101:2008 7.9.2, examples: 0.00035 as 35 x 10^-5, 0.0004 as 4 x 10^-4, 2 K.
  it("is half a unit of the last digit that counts", () => {
    expect(numericalTolerance(0.00035, 2)).toBeCloseTo(0.000005, 12);
    expect(numericalTolerance(0.0004, 1)).toBeCloseTo(0.00005, 12);
    expect(numericalTolerance(2, 1)).toBe(0.5);
    expect(numericalTolerance(0, 2)).toBe(0);
  });

  it("is between a twentieth and half of the doubt for one digit, a tenth of that for two", () => {
    fc.assert(
      fc.property(evenly(0.001, 900), (standard) => {
        expect(numericalTolerance(standard, 1)).toBeGreaterThanOrEqual(standard / 20);
        expect(numericalTolerance(standard, 1)).toBeLessThanOrEqual(standard * 0.53);
        expect(numericalTolerance(standard, 2)).toBeLessThanOrEqual(standard * 0.051);
      }),
    );
  });
});
