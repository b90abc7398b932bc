import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cosOf, sinOf } from "../../../packages/core/src/numeric/sine.ts";

const angle = fc.double({ min: -628, max: 628, noNaN: true });

describe("sinOf and cosOf", () => {
  test("are within a rounding of the engine's own, up to a hundred turns", () => {
    fc.assert(
      fc.property(angle, (angleRad) => {
        expect(Math.abs(sinOf(angleRad) - Math.sin(angleRad))).toBeLessThan(2.3e-16);
        expect(Math.abs(cosOf(angleRad) - Math.cos(angleRad))).toBeLessThan(2.3e-16);
      }),
    );
  });

  test("are odd and even, and their squares add up to 1", () => {
    fc.assert(
      fc.property(angle, (angleRad) => {
        expect(sinOf(-angleRad) + sinOf(angleRad)).toBe(0);
        expect(cosOf(-angleRad)).toBe(cosOf(angleRad));
        expect(sinOf(angleRad) ** 2 + cosOf(angleRad) ** 2).toBeCloseTo(1, 15);
      }),
    );
  });

  // Source: NIST Digital Library of Mathematical Functions, table 4.17.1, as numbers.
  test.each([
    [0, 0, 1],
    [Math.PI / 6, 0.5, Math.sqrt(3) / 2],
    [Math.PI / 4, Math.SQRT1_2, Math.SQRT1_2],
    [Math.PI / 2, 1, 0],
    [(2 * Math.PI) / 3, Math.sqrt(3) / 2, -0.5],
    [Math.PI, 0, -1],
    [-Math.PI / 2, -1, 0],
  ])("of %f are %f and %f", (angleRad, sine, cosine) => {
    expect(sinOf(angleRad)).toBeCloseTo(sine, 15);
    expect(cosOf(angleRad)).toBeCloseTo(cosine, 15);
  });

  // Sums and products alone: whatever the engine, these are the bits.
  test("give these very bits", () => {
    const bits = [0.1, 1, 2.5, -3, 7, 100].map((angleRad) => [sinOf(angleRad), cosOf(angleRad)]);
    expect(bits).toEqual([
      [0.09983341664682815, 0.9950041652780257],
      [0.8414709848078965, 0.5403023058681398],
      [0.5984721441039564, -0.8011436155469337],
      [-0.1411200080598672, -0.9899924966004454],
      [0.6569865987187891, 0.7539022543433046],
      [-0.5063656411097588, 0.862318872287684],
    ]);
  });
});
