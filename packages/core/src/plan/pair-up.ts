import { canonicalJson } from "./canonical-json.ts";

/** What belongs together in two lists; one side is undefined where only one list has it. */
export interface Pair<T> {
  readonly before: T | undefined;
  readonly after: T | undefined;
}

/**
 * The items of two lists by their keys: those of `after` in its order, then those that only `before` has. Where a key comes several
 * times, first belongs to first.
 */
export function pairUp<T>(
  before: readonly T[],
  after: readonly T[],
  keyOf: (item: T) => unknown,
): readonly Pair<T>[] {
  const old = byKey(before, keyOf);
  const now = byKey(after, keyOf);
  const gone = [...old].filter(([key]) => !now.has(key));
  return [
    ...[...now].map(([key, item]) => ({ before: old.get(key), after: item })),
    ...gone.map(([, item]) => ({ before: item, after: undefined })),
  ];
}

/** Whether two parts of a plan are not the same bytes; a part that is absent differs from one that is there. */
export function differs(before: unknown, after: unknown): boolean {
  return canonicalJson(before ?? null) !== canonicalJson(after ?? null);
}

function byKey<T>(items: readonly T[], keyOf: (item: T) => unknown): ReadonlyMap<string, T> {
  const seen = new Map<string, number>();
  return new Map(
    items.map((item) => {
      const key = canonicalJson(keyOf(item));
      const count = seen.get(key) ?? 0;
      seen.set(key, count + 1);
      return [`${count} ${key}`, item];
    }),
  );
}
