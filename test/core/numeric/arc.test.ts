import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { acosOf, asinOf, atan2Of, atanOf } from "../../../packages/core/src/numeric/arc.ts";
import { evenly } from "../../support/evenly.ts";
import { exactAngle, exactArc, exactArcCosine, exactArcSine, exactly, exactPi, ulpsOff } from "./exact.ts";

/** From a millionth to a million, as many in each power of ten, of either sign. */
const anySize = fc.tuple(evenly(-6, 6), fc.constantFrom(1, -1)).map(([power, sign]) => sign * 10 ** power);
const part = fc.oneof(
  evenly(-1, 1),
  evenly(-6, 0).map((power) => 1 - 10 ** power),
  evenly(-9, 0).map((power) => 10 ** power),
);
const ulpsApart = (a: number, b: number) => ulpsOff(a, exactly(b));

describe("the arc functions", () => {
  test("are within 2 units in the last place of values in 60 digits", () => {
    fc.assert(
      fc.property(anySize, anySize, part, (y, x, sine) => {
        expect(ulpsOff(atanOf(y), exactAngle(exactly(y), exactly(1)))).toBeLessThan(2);
        expect(ulpsOff(atan2Of(y, x), exactAngle(exactly(y), exactly(x)))).toBeLessThan(2);
        expect(ulpsOff(asinOf(sine), exactArcSine(exactly(sine)))).toBeLessThan(2);
        expect(ulpsOff(acosOf(sine), exactArcCosine(exactly(sine)))).toBeLessThan(2);
      }),
      { numRuns: 400 },
    );
  });

  test("are within 2 units in the last place of the engine's own", () => {
    fc.assert(
      fc.property(anySize, anySize, part, (y, x, sine) => {
        expect(ulpsApart(atanOf(y), Math.atan(y))).toBeLessThanOrEqual(2);
        expect(ulpsApart(atan2Of(y, x), Math.atan2(y, x))).toBeLessThanOrEqual(2);
        expect(ulpsApart(asinOf(sine), Math.asin(sine))).toBeLessThanOrEqual(2);
        expect(ulpsApart(acosOf(sine), Math.acos(sine))).toBeLessThanOrEqual(2);
      }),
      { numRuns: 1000 },
    );
  });

  test("are odd, and the two of one sine add up to a quarter turn", () => {
    fc.assert(
      fc.property(anySize, part, (y, sine) => {
        expect(atanOf(-y)).toBe(-atanOf(y));
        expect(atan2Of(-y, -1)).toBe(-atan2Of(y, -1));
        expect(asinOf(-sine) + asinOf(sine)).toBe(0);
        expect(asinOf(sine) + acosOf(sine)).toBeCloseTo(Math.PI / 2, 14);
      }),
    );
  });

  test("give the quarters of a turn exactly, and at the origin the angle 0", () => {
    expect([atan2Of(0, 3), atan2Of(3, 0), atan2Of(0, -3), atan2Of(-3, 0), atan2Of(0, 0)]).toEqual([
      0,
      Math.PI / 2,
      Math.PI,
      -Math.PI / 2,
      0,
    ]);
    expect([
      asinOf(1),
      asinOf(-1),
      acosOf(1),
      acosOf(0),
      acosOf(-1),
      atanOf(Number.POSITIVE_INFINITY),
    ]).toEqual([Math.PI / 2, -Math.PI / 2, 0, Math.PI / 2, Math.PI, Math.PI / 2]);
    // What rounding lets pass below zero stays half a turn, never minus half.
    expect(atan2Of(-0, -3)).toBe(Math.PI);
  });

  test("have no answer past 1, and none for no number", () => {
    expect([asinOf(1.0000001), asinOf(-2), acosOf(1.0000001), acosOf(-2), atanOf(Number.NaN)]).toEqual(
      new Array(5).fill(Number.NaN),
    );
  });

  // Source: NIST Digital Library of Mathematical Functions, table 4.17.1 read backwards, as numbers.
  test.each([
    [0.5, Math.PI / 6],
    [Math.SQRT1_2, Math.PI / 4],
    [Math.sqrt(3) / 2, Math.PI / 3],
  ])("the angle of the sine %f is %f", (sine, angleRad) => {
    expect(asinOf(sine)).toBeCloseTo(angleRad, 15);
    expect(acosOf(sine)).toBeCloseTo(Math.PI / 2 - angleRad, 15);
    expect(atan2Of(sine, Math.sqrt(1 - sine ** 2))).toBeCloseTo(angleRad, 15);
  });

  // Whatever the engine, these are the bits.
  test("give these very bits", () => {
    expect([0.01, 0.3, 1, 2.5, -40].map(atanOf)).toMatchInlineSnapshot(`
      [
        0.009999666686665238,
        0.2914567944778671,
        0.7853981633974483,
        1.1902899496825317,
        -1.5458015331759765,
      ]
    `);
    expect([0.01, 0.3, 0.7072, 0.75, -1].map(asinOf)).toMatchInlineSnapshot(`
      [
        0.010000166674167114,
        0.3046926540153975,
        0.7855300033989762,
        0.848062078981481,
        -1.5707963267948966,
      ]
    `);
    expect([0.01, 0.3, 0.7072, 0.999, -0.9].map(acosOf)).toMatchInlineSnapshot(`
      [
        1.5607961601207294,
        1.266103672779499,
        0.7852663233959205,
        0.044725087168733454,
        2.6905658417935308,
      ]
    `);
  });
});

test("the reference itself has pi, and the arc tangents of 1/2 and 1/3 that make an eighth of a turn", () => {
  // Source: NIST Digital Library of Mathematical Functions, 3.12, the first 40 digits; Euler's sum.
  expect(((exactPi * 10n ** 40n) >> 200n).toString()).toBe("31415926535897932384626433832795028841971");
  const sum = exactArc(exactly(1) / 2n) + exactArc(exactly(1) / 3n);
  expect(Number((sum - exactPi / 4n) / 2n ** 20n)).toBe(0);
});
