import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rootOfCubic } from "../../../packages/core/src/numeric/root-of-cubic.ts";
import { evenly } from "../../support/evenly.ts";

describe("rootOfCubic", () => {
  it("finds the root of a cubic whose slope is zero where the search begins", () => {
    // (s - 1/2)³ + 1/8: rises from 0 at 0 to 1/4 at 1 and is flat in the middle, so Newton's rule alone leaves the range.
    fc.assert(
      fc.property(evenly(0.001, 0.249), fc.constantFrom(1, -1), (target, sign) => {
        const s = rootOfCubic(0.75 * sign, -1.5 * sign, sign, target * sign, 1);
        expect(Math.abs(s - (0.5 + Math.cbrt(target - 0.125)))).toBeLessThan(1e-9);
      }),
    );
  });

  it("finds the root beside a slope of zero at 0", () => {
    // s² (3 - 2 s) from 0 to 1/2; near 0 the root is the square root of a third of the target.
    expect(rootOfCubic(0, 3, -2, 3e-20, 0.5) / 1e-10).toBeCloseTo(1, 9);
    expect(rootOfCubic(0, 3, -2, 0.5, 0.5)).toBeCloseTo(0.5, 14);
  });

  it("finds any root of a rising or falling cubic to the last places of its value", () => {
    fc.assert(
      fc.property(
        evenly(0.001, 2),
        evenly(0, 0.05),
        evenly(0, 0.01),
        evenly(0, 1),
        fc.constantFrom(1, -1),
        (slope, square, cube, part, sign) => {
          const value = (s: number) => s * (slope + s * (square + s * cube));
          const s = rootOfCubic(sign * slope, sign * square, sign * cube, sign * value(50 * part), 50);
          expect(Math.abs(s - 50 * part)).toBeLessThan(1e-13 * 50);
        },
      ),
    );
  });

  it("finds both ends", () => {
    expect(rootOfCubic(0.08, 0, 0, 0, 50)).toBe(0);
    expect(rootOfCubic(0.08, 0, 0, 4, 50)).toBeCloseTo(50, 12);
  });
});
