import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cosOf, sinOf, turnOf } from "../../../packages/core/src/numeric/sine.ts";
import { exactCosine, exactly, exactSine, ulpsOff } from "./exact.ts";

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

  test("come both at once from turnOf, to the bit", () => {
    fc.assert(
      fc.property(angle, (angleRad) => {
        expect(turnOf(angleRad)).toEqual({ cos: cosOf(angleRad), sin: sinOf(angleRad) });
      }),
    );
    expect([0, 2, 3.2, 5].map(turnOf)).toEqual([0, 2, 3.2, 5].map((a) => ({ cos: cosOf(a), sin: sinOf(a) })));
  });

  test("are within 2 units in the last place of values in 60 digits, over a turn either way", () => {
    fc.assert(
      fc.property(fc.double({ min: -6.3, max: 6.3, noNaN: true }), (angleRad) => {
        fc.pre(Math.min(Math.abs(sinOf(angleRad)), Math.abs(cosOf(angleRad))) > 1e-6);
        expect(ulpsOff(sinOf(angleRad), exactSine(exactly(angleRad)))).toBeLessThan(2);
        expect(ulpsOff(cosOf(angleRad), exactCosine(exactly(angleRad)))).toBeLessThan(2);
      }),
      { numRuns: 300 },
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
