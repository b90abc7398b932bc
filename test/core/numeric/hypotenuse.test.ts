import fc from "fast-check";
import { expect, test } from "vitest";
import { hypotOf } from "../../../packages/core/src/numeric/hypotenuse.ts";
import { evenly } from "../../support/evenly.ts";
import { exactly, exactRoot, ulpsOff } from "./exact.ts";

const lengths = fc.array(fc.oneof(evenly(-2000, 2000), evenly(-0.001, 0.001)), {
  minLength: 1,
  maxLength: 4,
});

test("hypotOf is within 2 units in the last place of the exact root, and of the engine's own", () => {
  fc.assert(
    fc.property(lengths, (values) => {
      const squares = values.map((value) => (exactly(value) * exactly(value)) >> 200n);
      expect(
        ulpsOff(hypotOf(...values), exactRoot(squares.reduce((sum, square) => sum + square))),
      ).toBeLessThan(2);
      expect(ulpsOff(hypotOf(...values), exactly(Math.hypot(...values)))).toBeLessThanOrEqual(2);
    }),
    { numRuns: 500 },
  );
});

test("hypotOf of none is 0, of one its size, and the right triangles of whole numbers come out whole", () => {
  expect([hypotOf(), hypotOf(-7), hypotOf(3, -4), hypotOf(5, 12), hypotOf(2, 3, 6)]).toEqual([
    0, 7, 5, 13, 7,
  ]);
});
