import { describe, expect, it } from "vitest";
import { coverageFactor } from "../../../packages/core/src/uncertainty/coverage-factor.ts";
import { type Distribution, draw } from "../../../packages/core/src/uncertainty/draw.ts";
import { seededRandom } from "../../../packages/core/src/uncertainty/random.ts";
import {
  doubtFromRectangular,
  doubtFromTriangular,
} from "../../../packages/core/src/uncertainty/standard-doubt.ts";
import { summarise } from "../../../packages/core/src/uncertainty/summarise.ts";

const COUNT = 100_000;
const drawn = (distribution: Distribution, seed = 7) => {
  const random = seededRandom(seed);
  return Float64Array.from({ length: COUNT }, () => draw(distribution, random));
};
/** Share of the values at most `bound` from 4, the mean of all distributions here. */
const within = (values: Float64Array, bound: number) =>
  values.filter((value) => Math.abs(value - 4) <= bound).length / COUNT;
/** Five standard deviations of a share. */
const shareNoise = (share: number) => 5 * Math.sqrt((share * (1 - share)) / COUNT);

describe("draw", () => {
  // Exact moments; kurtosis 3 for the normal, less for the others, bounds the noise of the standard deviation.
  it.each([
    [{ kind: "normal", mean: 4, standard: 0.3 }, 0.3],
    [{ kind: "rectangular", mean: 4, halfWidth: 0.3 }, doubtFromRectangular(0.3)],
    [{ kind: "triangular", mean: 4, halfWidth: 0.3 }, doubtFromTriangular(0.3)],
    [{ kind: "t", mean: 4, scale: 0.3, dof: 30 }, 0.3 * Math.sqrt(30 / 28)],
  ] as const)("has the mean and standard doubt of %o", (distribution, standard) => {
    const summary = summarise(drawn(distribution), 0.95);
    expect(Math.abs((summary?.mean ?? NaN) - 4)).toBeLessThan((5 * standard) / Math.sqrt(COUNT));
    expect(Math.abs((summary?.standard ?? NaN) / standard - 1)).toBeLessThan(6 / Math.sqrt(2 * COUNT));
  });

  it.each([1, 2, 3, 5, 16, 50])("holds Student's coverage with %i degrees of freedom", (dof) => {
    const values = drawn({ kind: "t", mean: 4, scale: 0.3, dof });
    for (const share of [0.6827, 0.95, 0.99]) {
      const held = within(values, 0.3 * coverageFactor(share, dof));
      expect(Math.abs(held - share)).toBeLessThan(shareNoise(share));
    }
  });

  it("holds the normal distribution's coverage", () => {
    const values = drawn({ kind: "normal", mean: 4, standard: 0.3 });
    for (const share of [0.6827, 0.95, 0.99]) {
      expect(Math.abs(within(values, 0.3 * coverageFactor(share)) - share)).toBeLessThan(shareNoise(share));
    }
  });

  it("spreads a rectangle evenly and a triangle as its area", () => {
    const rectangle = drawn({ kind: "rectangular", mean: 4, halfWidth: 0.3 });
    const triangle = drawn({ kind: "triangular", mean: 4, halfWidth: 0.3 });
    for (const part of [0.25, 0.5, 0.75]) {
      expect(Math.abs(within(rectangle, 0.3 * part) - part)).toBeLessThan(shareNoise(part));
      const area = 1 - (1 - part) ** 2;
      expect(Math.abs(within(triangle, 0.3 * part) - area)).toBeLessThan(shareNoise(area));
    }
    expect(within(rectangle, 0.3)).toBe(1);
    expect(within(triangle, 0.3)).toBe(1);
  });
});
