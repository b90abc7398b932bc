import fc from "fast-check";
import { expect, test } from "vitest";
import { powerOf } from "../../../packages/core/src/numeric/power.ts";

const base = fc.double({ min: 0.01, max: 100, noNaN: true });

test("powerOf is the engine's power to a few roundings", () => {
  fc.assert(
    fc.property(base, fc.double({ min: -6, max: 6, noNaN: true }), (value, exponent) => {
      expect(powerOf(value, exponent) / value ** exponent).toBeCloseTo(1, 13);
    }),
  );
});

test("powerOf a whole exponent takes negative numbers and nought, and its products are exact where they fit", () => {
  expect([powerOf(-3, 3), powerOf(0, 4), powerOf(10, 22), powerOf(2, -3), powerOf(7, 0)]).toEqual([
    -27, 0, 1e22, 0.125, 1,
  ]);
});

test("powerOf multiplies one exponent after another", () => {
  fc.assert(
    fc.property(base, fc.integer({ min: 0, max: 9 }), (value, exponent) => {
      expect(powerOf(value, exponent + 1)).toBe(powerOf(value, exponent) * value);
    }),
  );
});
