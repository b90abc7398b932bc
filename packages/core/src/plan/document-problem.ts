import type * as z from "zod";
import { type Address, formatAddress } from "../address/address.ts";

type Issue = z.core.$ZodIssue;

/** What zod says of a part of `data`, which is no as-built document, as one sentence: where in words and as an address, what should stand there and what does. */
export function asBuiltProblem(issue: Issue, data: unknown): string {
  const address = issue.path.map((step) => (typeof step === "number" ? step : String(step)));
  if (issue.code === "unrecognized_keys") {
    const [key = ""] = issue.keys;
    return `${whereOf([...address, key], data)}: no as-built file has this; take it out.`;
  }
  const value = findAt(data, address);
  const got = typeof value === "string" ? `the text ${wordsOf(value)}` : wordsOf(value);
  const quoted = issue.code === "invalid_union" && typeof value === "string" && isNumber(value);
  return `${whereOf(address, data)}: expected ${expectedOf(issue)}, got ${got}${quoted ? "; write it without quotes" : ""}.`;
}

function expectedOf(issue: Issue): string {
  switch (issue.code) {
    case "invalid_union":
      return { powerUpUs: 'a number, "none" or "not measured"', stick: "-1 or 1" }[lastOf(issue)] ?? asRead;
    case "invalid_value":
      return issue.values.map(wordsOf).join(" or ");
    case "invalid_type":
      return types[issue.expected] ?? issue.expected;
    case "too_small":
      return `${issue.minimum} or more`;
    default:
      return issue.message;
  }
}

const asRead = 'a number or "not measured"';

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
