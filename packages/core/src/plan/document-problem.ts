import type * as z from "zod";
import { type Address, formatAddress } from "../address/address.ts";

type Issue = z.core.$ZodIssue;

/** What a kind of document is called, and what stands where one of several types can. */
interface DocumentKind {
  readonly name: string;
  readonly either: string;
}

/** What zod says of a part of `data`, which is no such document, as one sentence: where in words and as an address, what should stand there and what does. */
export function documentProblem(
  issue: Issue | undefined,
  data: unknown,
  { name, either }: DocumentKind,
): string {
  if (issue === undefined) return "it is not understood.";
  const address = issue.path.map((step) => (typeof step === "number" ? step : String(step)));
  if (issue.code === "unrecognized_keys") {
    const [key = ""] = issue.keys;
    return `${whereOf([...address, key], data)}: no ${name} has this; take it out.`;
  }
  const value = findAt(data, address);
  const got = typeof value === "string" ? `the text ${wordsOf(value)}` : wordsOf(value);
  const quoted = issue.code === "invalid_union" && typeof value === "string" && isNumber(value);
  return `${whereOf(address, data)}: expected ${expectedOf(issue, either)}, got ${got}${quoted ? "; write it without quotes" : ""}.`;
}

function expectedOf(issue: Issue, either: string): string {
  switch (issue.code) {
    case "invalid_union":
      return unions[lastOf(issue)] ?? either;
    case "invalid_value":
      return issue.values.map(wordsOf).join(" or ");
    case "invalid_type":
      return types[issue.expected] ?? issue.expected;
    case "too_small":
      return `${issue.minimum} or more`;
    case "too_big":
      return `${issue.maximum} or less`;
    default:
      return issue.message;
  }
}

const unions: Readonly<Record<string, string>> = {
  powerUpUs: 'a number, "none" or "not measured"',
  stick: "-1 or 1",
  rests: "-1, 0 or 1",
  per100Us: "a number, or one below and one above the centre",
  assumed: "one number with its unit: deg, mm or us",
};

const types: Readonly<Record<string, string>> = {
  string: "a text",
  number: "a number",
  int: "a whole number",
  object: "an object",
  record: "an object",
  array: "a list",
};

function lastOf({ path }: Issue): string {
  return String(path.at(-1));
}

/** "channel 6, flap at start (channels[1].settings[1].pulseUs)" */
function whereOf(address: Address, data: unknown): string {
  if (address.length === 0) return "the document";
  const [first, index, second, place] = address;
  const text = formatAddress(address);
  if (first !== "channels" || index === undefined) return text;
  const channel = findAt(data, ["channels", index, "channel"]);
  const setting = second === "settings" && place !== undefined ? address.slice(0, 4) : undefined;
  const words = [
    ...(typeof channel === "number" ? [`channel ${channel}`] : []),
    ...(setting === undefined ? [] : settingWords(findAt(data, setting))),
  ];
  return words.length === 0 ? text : `${words.join(", ")} (${text})`;
}

function settingWords(setting: unknown): string[] {
  const [control, at] = [
    findAt(setting, ["control"]),
    findAt(setting, ["detent"]) ?? findAt(setting, ["stick"]),
  ];
  const isNamed = typeof at === "string" || typeof at === "number";
  return typeof control === "string" && isNamed ? [`${control} at ${at === 1 ? "+1" : at}`] : [];
}

/** What stands at an address of plain data. */
function findAt(data: unknown, address: Address): unknown {
  let value: unknown = data;
  for (const step of address) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Readonly<Record<string | number, unknown>>)[step];
  }
  return value;
}

function isNumber(text: string): boolean {
  return /^\s*[+-]?\d+(?:[.,]\d+)?\s*$/.test(text);
}

const longest = 60;

function wordsOf(value: unknown): string {
  if (typeof value === "string")
    return JSON.stringify(value.length > longest ? `${value.slice(0, longest)}…` : value);
  if (typeof value === "number" || typeof value === "boolean" || value === null) return String(value);
  if (value === undefined) return "nothing";
  return Array.isArray(value) ? `a list of ${value.length}` : "an object";
}
