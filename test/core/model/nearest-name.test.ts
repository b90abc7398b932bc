import fc from "fast-check";
import { expect, test } from "vitest";
import { countEdits, nearestName } from "../../../packages/core/src/model/nearest-name.ts";

const word = fc.string({ maxLength: 8, unit: fc.constantFrom("a", "b", "c") });

test("countEdits is 0 for equals only, the same both ways, and at most the longer length", () => {
  fc.assert(
    fc.property(word, word, (a, b) => {
      expect(countEdits(a, b) === 0).toBe(a === b);
      expect(countEdits(a, b)).toBe(countEdits(b, a));
      expect(countEdits(a, b)).toBeLessThanOrEqual(Math.max(a.length, b.length));
      expect(countEdits(a, b)).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
    }),
  );
});

// "kitten" to "sitting" is 3 in any textbook (from memory); "ca" to "abc" is 3 by optimal string alignment, which
// changes no part of the text twice.
test.each([
  ["kitten", "sitting", 3],
  ["chrod", "chord", 1],
  ["ca", "abc", 3],
  ["", "abc", 3],
])("countEdits(%j, %j) is %i", (a, b, edits) => {
  expect(countEdits(a, b)).toBe(edits);
});

test("nearestName finds the misspelt, whatever the case of its letters, and nothing far off", () => {
  expect(nearestName("chrod", ["span", "chord"])).toBe("chord");
  expect(nearestName("Hornat", ["armAt", "hornAt"])).toBe("hornAt");
  expect(nearestName("paint", ["span", "chord"])).toBeUndefined();
  expect(nearestName("x", [])).toBeUndefined();
});
