import fc from "fast-check";
import { expect, test } from "vitest";
import { goldenSection } from "../../../packages/core/src/numeric/golden-section.ts";
import { evenly } from "../../support/evenly.ts";

test("goldenSection finds the top of a hump, wherever between the ends it stands", () => {
  fc.assert(
    fc.property(evenly(-3, 3), evenly(0.1, 9), evenly(-5, 5), (top, steep, height) => {
      const { x, value } = goldenSection((at) => height - steep * (at - top) ** 2, -4, 5, 60);
      expect(Math.abs(x - top)).toBeLessThan(1e-6);
      expect(value).toBeCloseTo(height, 12);
    }),
  );
});

test("goldenSection narrows a sharp top by 0.618 a cut, and ends at an end that is highest", () => {
  // Arithmetic: the golden ratio's inverse to the power of 20 leaves 6.6e-5 of the stretch.
  expect(Math.abs(goldenSection((x) => -Math.abs(x - 1), 0, 3, 20).x - 1)).toBeLessThan(3 * 6.7e-5);
  expect(goldenSection((x) => x, 0, 3, 60).x).toBeCloseTo(3, 10);
  expect(goldenSection((x) => -x, 0, 3, 60).value).toBeCloseTo(0, 10);
});
