import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findJsonFault } from "../../../packages/dsl/src/load/find-json-fault.ts";

// JSON.parse of the engine is the oracle: it says whether a text is JSON, though not where it stops being so.
function parses(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

test("findJsonFault finds nothing in what JSON.stringify writes, indented or not", () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.nat(4), (value, indent) => {
      expect(findJsonFault(JSON.stringify(value, undefined, indent))).toBeUndefined();
    }),
  );
});

test("findJsonFault agrees with the engine on every text with a character put in, taken out or changed", () => {
  const characters = '{}[]:,"\\ \n\t0123456789.-+eEtrufalsn\u0001x\u00a0';
  const edit = fc.tuple(
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.nat(1),
    fc.string({ unit: fc.constantFrom(...characters), maxLength: 2 }),
  );
  fc.assert(
    fc.property(fc.jsonValue(), edit, (value, [at, removed, added]) => {
      const text = JSON.stringify(value);
      const index = Math.floor(at * text.length);
      const edited = text.slice(0, index) + added + text.slice(index + removed);
      const fault = findJsonFault(edited);
      // The one thing in which they differ on purpose.
      if (fault?.message.endsWith("stands twice")) return;
      expect(fault === undefined).toBe(parses(edited));
    }),
    { numRuns: 2000 },
  );
});

describe("findJsonFault says where and what", () => {
  test.each([
    ["", 1, 1, "expected a value, but the text ends"],
    ['{\n  "a": 1,\n}', 3, 1, "expected a key in double quotes"],
    ['{\r\n  "a" 1}', 2, 7, 'expected ":"'],
    ["{'a': 1}", 1, 2, 'expected a key in double quotes or "}"'],
    ["[1 2]", 1, 4, 'expected "," or the closing bracket'],
    ["[1}", 1, 3, 'expected "," or the closing bracket'],
    ["[1,]", 1, 4, "expected a value"],
    ["[", 1, 2, 'expected a value or "]", but the text ends'],
    ["{} {}", 1, 4, "expected the end of the text"],
    ["[NaN]", 1, 2, 'expected a value or "]"'],
    ["[01]", 1, 2, 'expected a value or "]"'],
    ['{"a": 1, "b": {"a": 2}, "\\u0061": 3}', 1, 25, 'the key "\\u0061" stands twice'],
  ])("%j", (text, line, column, message) => {
    expect(findJsonFault(text)).toEqual({ line, column, message });
  });
});

test("findJsonFault takes deep and long texts", () => {
  expect(findJsonFault("[".repeat(200_000) + "]".repeat(200_000))).toBeUndefined();
  expect(findJsonFault(`"${"a".repeat(5_000_000)}"`)).toBeUndefined();
  expect(findJsonFault(`"${"\\n".repeat(1_000_000)}"`)).toBeUndefined();
});
