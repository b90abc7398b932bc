import { expect, test } from "vitest";
import * as z from "zod";
import { translateIssues } from "../../../packages/core/src/model/translate-issues.ts";

// One test per issue code of zod, those too that no schema of the model raises today.

function translate(schema: z.ZodType, data: Parameters<typeof translateIssues>[1]) {
  const parsed = schema.safeParse(data);
  return parsed.success ? [] : translateIssues(parsed.error.issues, data);
}

test("invalid_type is missing or wrongType; a container without a phrase has one of ours", () => {
  expect(translate(z.object({ a: z.number("a pulse") }), {})).toEqual([
    { kind: "missing", address: ["a"], expected: "a pulse", received: "nothing" },
  ]);
  expect(translate(z.tuple([z.number()]), "x")).toEqual([
    { kind: "wrongType", address: [], expected: "a list", received: '"x"' },
  ]);
  expect(translate(z.strictObject({}), [1, 2])).toEqual([
    { kind: "wrongType", address: [], expected: "an object", received: "a list of 2" },
  ]);
});

test("invalid_value is notOneOf with the possible values and the nearest, or missing", () => {
  const schema = z.object({ way: z.enum(["out", "back"]) });
  expect(translate(schema, { way: "bakc" })).toEqual([
    {
      kind: "notOneOf",
      address: ["way"],
      expected: '"out" or "back"',
      received: '"bakc"',
      possible: ["out", "back"],
      nearest: "back",
    },
  ]);
  expect(translate(schema, {})).toEqual([
    { kind: "missing", address: ["way"], expected: '"out" or "back"', received: "nothing" },
  ]);
  expect(translate(z.literal(true), false)).toEqual([
    { kind: "notOneOf", address: [], expected: "true", received: "false", possible: [true] },
  ]);
});

test("too_small and too_big are outOfRange for a number, with the limit and whether it is allowed itself", () => {
  expect(translate(z.number().gt(0, "a step"), 0)).toEqual([
    {
      kind: "outOfRange",
      address: [],
      expected: "a step",
      received: "0",
      value: 0,
      limit: 0,
      limitAllowed: false,
    },
  ]);
  expect(translate(z.number().max(200, "a reach"), 201)).toEqual([
    {
      kind: "outOfRange",
      address: [],
      expected: "a reach",
      received: "201",
      value: 201,
      limit: 200,
      limitAllowed: true,
    },
  ]);
});

test("too_small and too_big are wrongLength for a list", () => {
  expect(translate(z.tuple([z.number(), z.number()]), [1])).toEqual([
    {
      kind: "wrongLength",
      address: [],
      expected: "a list of 2",
      received: "a list of 1",
      length: 1,
      limit: 2,
    },
  ]);
  expect(translate(z.array(z.number()).max(1, "one number"), [1, 2])).toEqual([
    {
      kind: "wrongLength",
      address: [],
      expected: "one number",
      received: "a list of 2",
      length: 2,
      limit: 1,
    },
  ]);
});

test("invalid_format is badText", () => {
  expect(translate(z.string().regex(/^a$/, "the letter a"), "b")).toEqual([
    { kind: "badText", address: [], expected: "the letter a", received: '"b"' },
  ]);
});

test("unrecognized_keys is one unknownKey for each key, never suggesting a key that is there", () => {
  const schema = z.strictObject(
    { arm: z.number(), arms: z.number().optional() },
    { error: () => "arm, arms" },
  );
  expect(translate(schema, { arm: 1, amr: 2, zzz: 3 })).toEqual([
    {
      kind: "unknownKey",
      address: ["amr"],
      expected: "no key but arm, arms",
      received: '"amr"',
      known: ["arm", "arms"],
    },
    {
      kind: "unknownKey",
      address: ["zzz"],
      expected: "no key but arm, arms",
      received: '"zzz"',
      known: ["arm", "arms"],
    },
  ]);
});

test("invalid_key is badName at the key", () => {
  expect(translate(z.record(z.string().regex(/^a$/, "the name a"), z.number()), { b: 1 })).toEqual([
    { kind: "badName", address: ["b"], expected: "the name a", received: '"b"' },
  ]);
});

test("invalid_union with a discriminator is notOneOf at the discriminator", () => {
  const schema = z.discriminatedUnion("kind", [
    z.object({ kind: z.literal("rod") }),
    z.object({ kind: z.literal("cable") }),
  ]);
  expect(translate(schema, { kind: "rodd" })).toEqual([
    {
      kind: "notOneOf",
      address: ["kind"],
      expected: '"rod" or "cable"',
      received: '"rodd"',
      possible: ["rod", "cable"],
      nearest: "rod",
    },
  ]);
  expect(translate(schema, {})).toMatchObject([{ kind: "missing", address: ["kind"] }]);
});

test("invalid_union without one is the deepest alternative, or where none is entered all of them together", () => {
  const schema = z.union([z.number(), z.object({ us: z.number("a pulse") })], "a pulse or an object");
  expect(translate(schema, { us: "x" })).toEqual([
    { kind: "wrongType", address: ["us"], expected: "a pulse", received: '"x"' },
  ]);
  expect(translate(schema, true)).toEqual([
    { kind: "wrongType", address: [], expected: "a pulse or an object", received: "true" },
  ]);
});

test("custom, not_multiple_of and invalid_element are wrongShape", () => {
  const shape = { kind: "wrongShape", address: [], received: "3" };
  expect(
    translate(
      z.number().refine(() => false, "a better number"),
      3,
    ),
  ).toEqual([{ ...shape, expected: "a better number" }]);
  expect(translate(z.number().multipleOf(2, "an even number"), 3)).toEqual([
    { ...shape, expected: "an even number" },
  ]);
  const issue = { code: "invalid_element", origin: "set", key: 0, message: "a set", input: 3 } as const;
  expect(translateIssues([{ ...issue, path: [], issues: [] }], 3)).toEqual([{ ...shape, expected: "a set" }]);
});
