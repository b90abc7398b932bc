import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { explainTypeFault } from "../../../packages/dsl/src/source/explain-type-fault.ts";

// What the compiler really says of each slip, and what becomes of it: test/golden/slips.txt and slips-in-check.txt.

const quantity = readFileSync(
  join(import.meta.dirname, "../../../packages/core/src/units/quantity.ts"),
  "utf8",
);
const units = new Map(
  [...quantity.matchAll(/export type (\w+)(?:<.*?>)? = Quantity<"([^"]+)">/g)].map(([, type, unit]) => [
    type,
    unit,
  ]),
);
const calls = [...quantity.matchAll(/export const (\w+) = finite<(\w+)(?:<\w+>)?>/g)].map(
  ([, call = "", type = ""]) => [call, units.get(type) ?? ""] as const,
);

describe("of every unit that there is", () => {
  test("there are as many as there are functions", () => {
    expect(calls.length).toBeGreaterThanOrEqual(15);
    expect(calls.map(([, unit]) => unit)).not.toContain("");
  });

  test.each(calls)("%s: a plain number and another unit are answered with the function", (call, unit) => {
    expect(
      explainTypeFault([`Type 'number' is not assignable to type '{ readonly [unit]: "${unit}"; }'.`]),
    ).toEqual({
      what: `A plain number stands where one in ${unit} is wanted.`,
      remedy: `Write it as ${call}(…).`,
    });
    expect(
      explainTypeFault([
        "Type 'Other' is not assignable to type 'This'.",
        "Types of property '[unit]' are incompatible.",
        `Type '"furlongs"' is not assignable to type '"${unit}"'.`,
      ]),
    ).toEqual({
      what: `A value in furlongs stands where one in ${unit} is wanted.`,
      remedy: `Write it as ${call}(…).`,
    });
  });
});

test("a slip inside a constant is named by the parts that lead to it", () => {
  const chain = [
    "Type '{ bench: A; }' is not assignable to type 'Servo'.",
    "The types of 'bench.readings' are incompatible between these types.",
    "Type 'number' is not assignable to type 'Us'.",
    `Type 'number' is not assignable to type '{ readonly [unit]: "microseconds"; }'.`,
  ];
  expect(explainTypeFault(chain).what).toBe(
    "In bench.readings: A plain number stands where one in microseconds is wanted.",
  );
});

test("several absent parts are named, and what is no usual slip keeps its words", () => {
  expect(
    explainTypeFault([`Type '{}' is missing the following properties from type 'Radio<"a">': name, centre`]),
  ).toEqual({ what: "These are missing: name, centre.", remedy: "Add them." });
  expect(explainTypeFault(["Cannot find name 'mached'. Did you mean 'matched'?"])).toEqual({
    what: "Cannot find name 'mached'.",
    remedy: 'Did you mean "matched"?',
  });
  expect(explainTypeFault(["Expected 1 arguments, but got 2."])).toEqual({
    what: "Expected 1 arguments, but got 2.",
    remedy: "Correct it.",
  });
});
