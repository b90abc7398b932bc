const longest = 60;

/** `value` in a few words for a sentence: `12`, `"flap"`, `a list of 3`, `an object`; it runs no code of `value`. */
export function describeValue(value: unknown): string {
  switch (typeof value) {
    case "string":
      return JSON.stringify(value.length > longest ? `${value.slice(0, longest)}…` : value);
    case "number":
    case "boolean":
      return String(value);
    case "undefined":
      return "nothing";
    case "object":
      if (value === null) return "null";
      return Array.isArray(value) ? `a list of ${value.length}` : "an object";
    default:
      return `a ${typeof value}`;
  }
}
