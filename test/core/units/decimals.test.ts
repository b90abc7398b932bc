import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  decimalsFor,
  decimalsOf,
  roundToStep,
  timesStep,
} from "../../../packages/core/src/units/decimals.ts";
import { formatNumber } from "../../../packages/core/src/units/format.ts";

describe("decimalsFor", () => {
  it("shows one significant digit of the doubt or two, and keeps the doubt to within a sixth", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 9.4, noNaN: true }), (doubt) => {
        const text = formatNumber(doubt, decimalsFor(doubt) ?? Number.NaN);
        const digits = text.replace(".", "").replace(/^0+/, "");
        expect([1, 2]).toContain(digits.length);
        // The worst case is 3.5 written as 3 or 4: a seventh.
        expect(Math.abs(Number(text) - doubt)).toBeLessThan(doubt / 6);
      }),
    );
  });

  it("never gives more decimals to a greater doubt", () => {
    const doubt = fc.double({ min: 1e-4, max: 100, noNaN: true });
    fc.assert(
      fc.property(doubt, doubt, (a, b) => {
        const [fine = 0, coarse = 0] = [decimalsFor(Math.min(a, b)), decimalsFor(Math.max(a, b))];
        expect(fine).toBeGreaterThanOrEqual(coarse);
      }),
    );
  });

  it.each([
    [0.6, 1], // 14.0 +- 0.6 degrees
    [0.26, 2],
    [0.302, 1],
    [0.0996, 2], // rounds to 0.10
    [1.91, 1],
    [7.1, 0],
    [29.6, 0],
    [250, 0],
  ])("gives a value with doubt %d so many decimals: %d", (doubt, decimals) => {
    expect(decimalsFor(doubt)).toBe(decimals);
  });

  it("says nothing where there is no doubt to go by", () => {
    for (const none of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(decimalsFor(none)).toBeUndefined();
  });
});

describe("decimalsOf", () => {
  it("counts the decimals of any number with a short decimal text", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99999 }), fc.integer({ min: 0, max: 12 }), (digits, places) => {
        const value = Number(`${digits}e-${places}`);
        // Oracle: the fewest decimals with which toFixed still gives the number back.
        const fewest = Array.from({ length: 13 }, (_, n) => n).find(
          (n) => Number(value.toFixed(n)) === value,
        );
        expect(decimalsOf(value)).toBe(fewest);
      }),
    );
  });

  it("reads exponents, and whole numbers as none", () => {
    expect([0.1, 0.25, 5, 1e-7, 2.5e-8, 1e21, -0.5].map(decimalsOf)).toEqual([1, 2, 0, 7, 9, 0, 1]);
  });
});

describe("roundToStep and timesStep", () => {
  /** Steps as radios have them, in thousandths. */
  const thousandths = fc.constantFrom(1, 5, 10, 25, 50, 100, 125, 200, 250, 300, 400, 500, 1000, 2500);

  it("give the double that the decimal text of the multiple stands for", () => {
    fc.assert(
      fc.property(thousandths, fc.integer({ min: -3000, max: 3000 }), (parts, multiple) => {
        // One division of whole numbers is rounded once, as the text is.
        const exact = (multiple * parts) / 1000 + 0;
        expect(timesStep(multiple, parts / 1000)).toBe(exact);
        expect(roundToStep(exact, parts / 1000)).toBe(exact);
      }),
    );
  });

  it("go to a multiple that is no more than half a step away", () => {
    fc.assert(
      fc.property(thousandths, fc.double({ min: -150, max: 150, noNaN: true }), (parts, value) => {
        const rounded = roundToStep(value, parts / 1000);
        expect(Math.abs(rounded - value)).toBeLessThanOrEqual(parts / 2000 + 1e-12);
        expect(Math.abs(Math.round((rounded * 1000) / parts) * parts - rounded * 1000)).toBeLessThan(1e-6);
      }),
    );
  });

  it.each([
    [0.3000001, 0.1, 0.3],
    [-0.04, 0.1, 0],
    [2.5, 1, 3],
    [-2.5, 1, -2],
    [12.3, 0.25, 12.25],
  ])("%d by steps of %d is %d", (value, step, rounded) => {
    expect(roundToStep(value, step)).toBe(rounded);
  });
});
