/**
 * A copy of plain data with the keys of every object in the order of their UTF-16 code units, so that the order in which a model
 * was written down changes nothing.
 */
export function sortKeys<T>(data: T): T {
  return copy(data) as T;
}

function copy(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(copy);
  if (typeof value !== "object" || value === null) return value;
  const sorted = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(sorted.map(([key, item]) => [key, copy(item)]));
}
