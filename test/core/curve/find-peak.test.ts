import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findPeak } from "../../../packages/core/src/curve/find-peak.ts";
import { evenly } from "../../support/evenly.ts";

/** The peak between `left` and `right` from what f is there and at `topX`. */
function peakOf(f: (x: number) => number, left: number, topX: number, right: number) {
  const at = (x: number) => ({ x, value: f(x) });
  return findPeak(f, at(left), at(topX), at(right));
}

/** Humps over a width of 2 about 0, highest at `x` with the value 3: smooth, steeper on one side, with a corner. */
const humps = {
  parabola: (at: number, by: number) => (x: number) => 3 - by * (x - at) ** 2,
  bell: (at: number, by: number) => (x: number) => 3 * Math.exp(-by * (x - at) ** 2),
  lopsided: (at: number, by: number) => (x: number) => 3 - by * (x - at) ** 2 * Math.exp(x - at),
  corner: (at: number, by: number) => (x: number) => 3 - by * Math.abs(x - at),
};
const hump = fc.constantFrom(...(Object.keys(humps) as (keyof typeof humps)[]));

describe("findPeak", () => {
  test("finds the peak of any hump from three points, in both directions", () => {
    fc.assert(
      fc.property(hump, evenly(-0.9, 0.9), evenly(0.1, 20), evenly(-1, 1), (kind, at, by, near) => {
        const f = humps[kind](at, by);
        const topX = Math.max(-0.95, Math.min(0.95, at + 0.04 * near));
        for (const found of [peakOf(f, -1, topX, 1), peakOf((x) => f(-x), -1, -topX, 1)]) {
          const turned = found.value === f(found.x) ? found.x : -found.x;
          expect(found.value).toBe(f(turned));
          expect(Math.abs(turned - at)).toBeLessThan(5e-6);
          // A corner is as high as x is near; smooth humps are flat there.
          expect(3 - found.value).toBeLessThan(kind === "corner" ? 5e-6 * by : 1e-9);
        }
      }),
    );
  });

  // Brent's rule gains digits ever faster where the hump is smooth; a golden section alone would need about 28 looks.
  test.each([
    ["parabola", 4],
    ["bell", 14],
    ["lopsided", 14],
    ["corner", 26],
  ] as const)("takes few looks at a %s, %i at most, however wide the interval", (kind, most) => {
    fc.assert(
      fc.property(evenly(-0.9, 0.9), evenly(0.1, 20), fc.constantFrom(0.01, 1, 1000), (at, by, width) => {
        const f = humps[kind](at, by);
        let looks = 0;
        const counted = (x: number) => {
          looks++;
          return f(x / width);
        };
        const topX = Math.max(-0.95, Math.min(0.95, at + 0.03));
        const found = peakOf(counted, -width, topX * width, width);
        // Three of them are those that it is given.
        expect(looks - 3).toBeLessThanOrEqual(most);
        expect(Math.abs(found.x / width - at)).toBeLessThan(5e-6);
      }),
    );
  });

  test("stays at an end from which it goes down at once", () => {
    expect(peakOf((x) => -x, 0, 0, 1)).toEqual({ x: 0, value: -0 });
    expect(peakOf((x) => x, 0, 1, 1)).toEqual({ x: 1, value: 1 });
  });

  test("finds the hump that begins with a rise at an end", () => {
    fc.assert(
      fc.property(evenly(0.001, 0.4), (at) => {
        const f = (x: number) => -((x - at) ** 2);
        const fromLeft = peakOf(f, 0, 0, 1);
        expect(Math.abs(fromLeft.x - at)).toBeLessThan(5e-6);
        const fromRight = peakOf((x) => f(1 - x), 0, 1, 1);
        expect(Math.abs(1 - fromRight.x - at)).toBeLessThan(5e-6);
      }),
    );
  });

  test("never gives less than the highest point it was given", () => {
    fc.assert(
      fc.property(evenly(-1, 1), evenly(-1, 1), evenly(-1, 1), evenly(1, 9), (a, b, c, by) => {
        const f = (x: number) => a * Math.sin(by * x) + b * Math.cos(by * x) + c * x;
        const xs = [-1, 0, 1].toSorted((one, other) => f(other) - f(one));
        expect(peakOf(f, -1, xs[0] ?? 0, 1).value).toBeGreaterThanOrEqual(f(xs[0] ?? 0));
      }),
    );
  });
});
