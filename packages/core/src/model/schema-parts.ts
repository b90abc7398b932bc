import * as z from "zod";

// The `error` text of every schema here is the phrase for what is expected; translate-issues.ts relies on it.

/**
 * A number in `unit` from `low` to `high`, both included.
 * @param what meaning and, where it matters, sign: "chord" or "deflection (positive trailing edge down)"
 */
export function number(what: string, low: number, high: number, unit: string): z.ZodNumber {
  const phrase = `${what}, ${low} to ${high}${unit === "" ? "" : ` ${unit}`}`;
  return z.number(phrase).min(low, phrase).max(high, phrase).describe(phrase);
}

/** A number in `unit` above 0, up to and including `high`. */
export function positive(what: string, high: number, unit: string): z.ZodNumber {
  const phrase = `${what}, above 0, at most ${high} ${unit}`;
  return z.number(phrase).gt(0, phrase).max(high, phrase).describe(phrase);
}

/** A whole number from `low` to `high`. */
export function whole(what: string, low: number, high: number): z.ZodInt {
  const phrase = `${what}, a whole number from ${low} to ${high}`;
  return z.int(phrase).min(low, phrase).max(high, phrase).describe(phrase);
}

/** An object that has no keys but those of `shape`. */
export function strict<Shape extends z.ZodRawShape>(shape: Shape) {
  const keys = Object.keys(shape).join(", ");
  return z.strictObject(shape, {
    error: (issue) => (issue.code === "unrecognized_keys" ? keys : "an object"),
  });
}

/** An object from names to `value`s. */
export function named<Value extends z.ZodType>(name: z.ZodString, value: Value) {
  return z.record(name, value, {
    error: (issue) => (issue.code === "invalid_type" ? "an object" : undefined),
  });
}

/** The same with at least one name. */
export function namedSome<Value extends z.ZodType>(name: z.ZodString, value: Value) {
  return named(name, value)
    .refine((record) => Object.keys(record).length > 0, "at least one entry")
    .meta({ minProperties: 1 });
}

/** A list of `least` or more different names. */
export function names(name: z.ZodString, least: number) {
  const phrase = `a list of ${least} or more different names`;
  return z
    .array(name, phrase)
    .min(least, phrase)
    .refine((list) => new Set(list).size === list.length, phrase)
    .meta({ uniqueItems: true });
}

// JavaScript objects answer to these names without having them, so a look-up by name would find what is not there.
const reserved = `(?:${[
  "constructor",
  "hasOwnProperty",
  "isPrototypeOf",
  "propertyIsEnumerable",
  "toLocaleString",
  "toString",
  "valueOf",
  "__(?:proto|(?:define|lookup)[GS]etter)__",
].join("|")})`;
const control = "\\u0000-\\u001f\\u007f-\\u009f";
// Half a surrogate pair cannot be written as UTF-8.
const halfPair = "\\ud800-\\udfff";

/** The name of a surface, servo or group: it stands in "rudder.upper", so it holds no ".". */
export const partName: z.ZodString = matching(
  new RegExp(`^(?!${reserved}$)[^.${control}${halfPair}]{1,200}$`, "u"),
  'a name of 1 to 200 characters without "." and control characters',
);

/** The name of a control: "otherwise" has its own meaning under `airspeed`. */
export const controlName: z.ZodString = matching(
  new RegExp(`^(?!(?:otherwise|${reserved})$)[^${control}${halfPair}]{1,200}$`, "u"),
  'a control name of 1 to 200 characters without control characters, other than "otherwise"',
);

/** What `anyName` lets through. */
export const anyNamePattern = new RegExp(`^(?!${reserved}$)[^${control}${halfPair}]{1,200}$`, "u");

/** The name of a detent, or of a surface or servo where it is only pointed at ("rudder.upper"). */
export const anyName: z.ZodString = matching(
  anyNamePattern,
  "a name of 1 to 200 characters without control characters",
);

/** Words for a person to read on one line: the name of a model or radio, the label of a servo. */
export const label: z.ZodString = matching(
  new RegExp(`^[^${control}${halfPair}]{1,200}$`, "u"),
  "a text of 1 to 200 characters without control characters",
);

/** A text of the form `pattern`; characters are counted as code points, as JSON Schema counts them. */
export function matching(pattern: RegExp, phrase: string): z.ZodString {
  return z.string(phrase).regex(pattern, phrase).describe(phrase);
}
