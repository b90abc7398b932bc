import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expOf, logOf } from "../../../packages/core/src/numeric/exponential.ts";
import { evenly } from "../../support/evenly.ts";
import { exactExp, exactLog, exactly, ulpsOff } from "./exact.ts";

const exponent = fc.oneof(evenly(-30, 30), evenly(-0.5, 0.5));
const above0 = fc.oneof(
  evenly(0.3, 3),
  evenly(-12, 12).map((power) => 10 ** power),
);
const ulpsApart = (a: number, b: number) => ulpsOff(a, exactly(b));

describe("expOf and logOf", () => {
  test("are within 2 units in the last place of values in 60 digits", () => {
    fc.assert(
      fc.property(exponent, above0, (x, y) => {
        expect(ulpsOff(expOf(x), exactExp(exactly(x)))).toBeLessThan(2);
        expect(ulpsOff(logOf(y), exactLog(y))).toBeLessThan(2);
      }),
      { numRuns: 300 },
    );
  });

  test("are within 2 units in the last place of the engine's own", () => {
    fc.assert(
      fc.property(exponent, above0, (x, y) => {
        expect(ulpsApart(expOf(x), Math.exp(x))).toBeLessThanOrEqual(2);
        expect(ulpsApart(logOf(y), Math.log(y))).toBeLessThanOrEqual(2);
      }),
      { numRuns: 1000 },
    );
  });

  test("undo each other", () => {
    fc.assert(
      fc.property(exponent, (x) => {
        expect(logOf(expOf(x))).toBeCloseTo(x, 13);
      }),
    );
  });

  // Source: NIST Digital Library of Mathematical Functions, 4.2.11 and 4.2.22 (e, and the logarithm of 10), as numbers.
  test("have the published digits of e and of the logarithm of 10", () => {
    expect(expOf(1)).toBeCloseTo(Math.E, 14);
    expect(logOf(10)).toBeCloseTo(Math.LN10, 14);
    expect([expOf(0), logOf(1)]).toEqual([1, 0]);
  });

  test("run out at both ends as the engine's own do", () => {
    const ends = [-Infinity, -800, -745, -709, 709.7, 711, Infinity, Number.NaN];
    for (const x of ends) {
      const own = Math.exp(x);
      if (own > 0 && own < Infinity) expect(expOf(x) / own).toBeCloseTo(1, 12);
      else expect(expOf(x)).toBe(own);
    }
    expect([0, -0, -1, Infinity, Number.NaN].map(logOf)).toEqual([
      -Infinity,
      -Infinity,
      Number.NaN,
      Infinity,
      Number.NaN,
    ]);
    for (const x of [5e-324, 1e-300, 1.7e308]) expect(logOf(x)).toBeCloseTo(Math.log(x), 12);
  });

  // Whatever the engine, these are the bits.
  test("give these very bits", () => {
    expect([-20, -0.3, 0.1, 0.69, 12.5].map(expOf)).toMatchInlineSnapshot(`
      [
        2.061153622438558e-9,
        0.7408182206817179,
        1.1051709180756477,
        1.9937155332430823,
        268337.2865208745,
      ]
    `);
    expect([1e-9, 0.3, 0.7072, 1.1, 1234.5].map(logOf)).toMatchInlineSnapshot(`
      [
        -20.72326583694641,
        -1.2039728043259361,
        -0.34644176765870327,
        0.09531017980432493,
        7.118421308785234,
      ]
    `);
  });
});
