import { expect, test } from "vitest";
import { parseModel } from "../../../packages/core/src/model/parse-model.ts";
import { fullModel } from "./full-model.ts";

type Path = readonly (string | number)[];

/** Every place in some data, the whole first. */
function pathsIn(value: unknown, path: Path = []): readonly Path[] {
  if (typeof value !== "object" || value === null) return [path];
  const entries: readonly (readonly [string | number, unknown])[] = Array.isArray(value)
    ? [...value.entries()]
    : Object.entries(value);
  return [path, ...entries.flatMap(([key, inner]) => pathsIn(inner, [...path, key]))];
}

/** The data with something else at one place. */
function replaced(data: unknown, path: Path, by: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return by;
  const copy: Record<string | number, unknown> = Array.isArray(data)
    ? (Object.assign([], data) as never)
    : { ...(data as object) };
  copy[key] = replaced(copy[key], rest, by);
  return copy;
}

test("a model with every part that there is parses to itself", () => {
  expect(parseModel(fullModel())).toEqual({ model: fullModel() });
});

test("whatever stands at a place of a model where it cannot, the problem says in words what can", () => {
  const seen = new Set<string>();
  for (const path of pathsIn(fullModel()))
    for (const wrong of [null, "?", -1e9, [], {}]) {
      const parsed = parseModel(replaced(fullModel(), path, wrong));
      if ("problems" in parsed) for (const { expected } of parsed.problems) seen.add(expected);
    }
  expect(seen.size).toBeGreaterThan(80);
  for (const expected of seen) {
    expect(expected).toMatch(/^["a-zA-Z\d-]/);
    expect(expected).toMatch(/[a-z\d")\]]$/);
    expect(expected).not.toMatch(/ {2}|invalid|undefined|\[object/i);
  }
});
