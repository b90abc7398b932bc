import { expect, test } from "vitest";
import { chiSquareLimit } from "../../../packages/core/src/response/chi-square-limit.ts";

// The 99 percent points of the chi-square distribution, as in any table of it; from memory.
test.each([
  [1, 6.635],
  [2, 9.21],
  [3, 11.345],
  [5, 15.086],
  [10, 23.209],
  [20, 37.566],
  [30, 50.892],
  [100, 135.807],
])("chiSquareLimit(%i) is %d, to one percent", (dof, limit) => {
  expect(Math.abs(chiSquareLimit(dof) / limit - 1)).toBeLessThan(0.01);
});
