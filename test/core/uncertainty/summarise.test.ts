import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { summarise } from "../../../packages/core/src/uncertainty/summarise.ts";
import { evenly } from "../../support/evenly.ts";

const values = fc
  .array(evenly(-100, 100), { minLength: 40, maxLength: 200 })
  .map((all) => Float64Array.from(all));

describe("summarise", () => {
  it("does not care about the order of the values and leaves them as they are", () => {
    fc.assert(
      fc.property(values, (all) => {
        const before = all.slice();
        const summary = summarise(all, 0.9);
        expect(all).toEqual(before);
        expect(summarise(all.toReversed(), 0.9)).toEqual(summary);
      }),
    );
  });

  it("has intervals that hold the coverage, the shortest no wider than the symmetric", () => {
    fc.assert(
      fc.property(values, evenly(0.5, 0.95), (all, coverage) => {
        const summary = summarise(all, coverage);
        if (summary === undefined) throw new Error("too few values");
        for (const [low, high] of [summary.symmetric, summary.shortest]) {
          const held = all.filter((value) => value >= low && value <= high).length / all.length;
          expect(held).toBeGreaterThanOrEqual(coverage - 0.5 / all.length);
        }
        const [symmetric, shortest] = [summary.symmetric, summary.shortest].map(([low, high]) => high - low);
        expect(shortest).toBeLessThanOrEqual(symmetric ?? NaN);
      }),
    );
  });

  // Source: JCGM 101:2008 7.7.2: q = p M, r = (M - q) / 2 or the next whole number, counted from 1.
  it.each([
    [10_000, [250, 9750]],
    [1001, [25, 976]],
    [1010, [25, 985]],
    [1020, [26, 995]],
  ])("takes the standard's order numbers of %i values", (count, symmetric) => {
    const ranks = Float64Array.from({ length: count }, (_, index) => count - index);
    expect(summarise(ranks, 0.95)?.symmetric).toEqual(symmetric);
  });

  it("finds the dense end with the shortest interval", () => {
    const squares = Float64Array.from({ length: 1000 }, (_, index) => index ** 2);
    expect(summarise(squares, 0.95)?.shortest).toEqual([0, 950 ** 2]);
    expect(
      summarise(
        squares.map((square) => -square),
        0.95,
      )?.shortest,
    ).toEqual([-(950 ** 2), -0]);
  });

  it("gives the mean and the standard deviation with one degree of freedom less", () => {
    const summary = summarise(Float64Array.of(2, 4, 4, 4, 5, 5, 7, 9), 0.5);
    expect(summary).toMatchObject({ count: 8, mean: 5, standard: Math.sqrt(32 / 7) });
  });

  it("gives undefined where no value would be left out, or none held", () => {
    expect(summarise(new Float64Array(), 0.95)).toBeUndefined();
    expect(summarise(Float64Array.of(1, 2, 3), 0.95)).toBeUndefined();
    expect(summarise(Float64Array.of(1, 2, 3), 0.1)).toBeUndefined();
  });
});
