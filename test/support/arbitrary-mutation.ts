import fc from "fast-check";

type Step = string | number;

/** `data` with one of its parts taken out, replaced by any JSON value, or given a key too many. */
export function arbitraryMutation(data: unknown): fc.Arbitrary<unknown> {
  const paths = listPaths(data, []);
  return fc
    .record({
      path: fc.constantFrom(...paths),
      change: fc.oneof(
        fc.constant({ kind: "remove" } as const),
        fc.record({ kind: fc.constant("add" as const), key: fc.string(), value: fc.jsonValue() }),
        fc.record({
          kind: fc.constant("replace" as const),
          value: fc.oneof(fc.jsonValue(), fc.constantFrom(-1, 0, 1e9, "", "level", {}, [])),
        }),
      ),
    })
    .map(({ path, change }) => mutate(data, path, change));
}

type Change =
  | { kind: "remove" }
  | { kind: "replace"; value: unknown }
  | { kind: "add"; key: string; value: unknown };

function mutate(value: unknown, path: readonly Step[], change: Change): unknown {
  const [step, ...rest] = path;
  if (step === undefined) {
    if (change.kind === "replace") return change.value;
    if (change.kind === "remove" || typeof value !== "object" || value === null || Array.isArray(value))
      return null;
    return { ...value, [change.key]: change.value };
  }
  const gone = change.kind === "remove" && rest.length === 0;
  if (Array.isArray(value)) {
    return gone
      ? value.filter((_, index) => index !== step)
      : value.map((item, index) => (index === step ? mutate(item, rest, change) : item));
  }
  const entries = Object.entries(value as object);
  const kept = gone ? entries.filter(([key]) => key !== step) : entries;
  return Object.fromEntries(
    kept.map(([key, item]) => [key, key === step ? mutate(item, rest, change) : item]),
  );
}

function listPaths(value: unknown, path: readonly Step[]): (readonly Step[])[] {
  if (typeof value !== "object" || value === null) return [path];
  const entries: [Step, unknown][] = Array.isArray(value)
    ? value.map((item, index) => [index, item])
    : Object.entries(value);
  return [path, ...entries.flatMap(([key, item]) => listPaths(item, [...path, key]))];
}
