import type { Address } from "@hingeline/core";

/** JSON data, as a model consists of. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

type JsonObject = { readonly [key: string]: Json };

/** Whether a value is JSON data: no NaN, no undefined, no class, no cycle (nothing deeper than 32 levels). */
export function isJson(value: unknown, depth = 0): value is Json {
  if (value === null || typeof value === "boolean" || typeof value === "string") return true;
  if (typeof value === "number") return Number.isFinite(value);
  if (typeof value !== "object" || depth > 32) return false;
  if (Array.isArray(value)) return value.every((item) => isJson(item, depth + 1));
  return (
    Object.getPrototypeOf(value) === Object.prototype &&
    Object.entries(value).every(([key, part]) => key !== "__proto__" && isJson(part, depth + 1))
  );
}

export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** The first address at which two values differ, the order of keys aside; undefined where they are the same. */
export function findDifference(
  a: Json | undefined,
  b: Json | undefined,
  at: Address = [],
): Address | undefined {
  if (Array.isArray(a) && Array.isArray(b)) {
    for (let index = 0; index < Math.max(a.length, b.length); index += 1) {
      const difference = findDifference(a[index], b[index], [...at, index]);
      if (difference !== undefined) return difference;
    }
    return undefined;
  }
  if (isObject(a) && isObject(b)) {
    for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
      const difference = findDifference(partOf(a, key), partOf(b, key), [...at, key]);
      if (difference !== undefined) return difference;
    }
    return undefined;
  }
  return a === b ? undefined : at;
}

/**
 * The data with `value` at `address`, objects made on the way where there are none; a list takes one item more at its end.
 * Undefined where the address leads into something that is neither.
 */
export function setAt(data: Json | undefined, address: Address, value: Json): Json | undefined {
  const [step, ...rest] = address;
  if (step === undefined) return value;
  if (step === "__proto__") return undefined;
  if (typeof step === "number") {
    if (!Array.isArray(data) || step > data.length) return undefined;
    const part = setAt(data[step], rest, value);
    return part === undefined ? undefined : [...data.slice(0, step), part, ...data.slice(step + 1)];
  }
  if (data !== undefined && !isObject(data)) return undefined;
  const part = setAt(partOf(data ?? {}, step), rest, value);
  return part === undefined ? undefined : { ...data, [step]: part };
}

function partOf(object: JsonObject, key: string): Json | undefined {
  return Object.hasOwn(object, key) ? object[key] : undefined;
}
