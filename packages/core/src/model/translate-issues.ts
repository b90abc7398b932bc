import type * as z from "zod";
import { type Address, formatAddress } from "../address/address.ts";
import { describeValue } from "./describe-value.ts";
import { findMeant } from "./find-meant.ts";
import { findAt, type Json } from "./json.ts";
import type { ModelProblem } from "./model-problem.ts";
import { nearestName } from "./nearest-name.ts";

type Issue = z.core.$ZodIssue;
/** A value that can be possible by itself. */
type Word = string | number | boolean;

/**
 * What zod says about `data`, as problems in the order of zod's issues.
 * The schemas of this folder put the phrase for what they expect in each issue's message (schema-parts.ts).
 */
export function translateIssues(issues: readonly Issue[], data: Json): ModelProblem[] {
  const problems = issues.flatMap((issue) => translate(issue, [], data));
  const meant = new Set(problems.flatMap(meantKey));
  return problems.filter(({ kind, address }) => kind !== "missing" || !meant.has(formatAddress(address)));
}

/** Where the key belongs that an unknown one is a misspelling of: it is not missing besides. */
function meantKey(problem: ModelProblem): string[] {
  return problem.kind === "unknownKey" && problem.nearest !== undefined
    ? [formatAddress([...problem.address.slice(0, -1), problem.nearest])]
    : [];
}

/** @param base the address that the issue's path starts from */
function translate(issue: Issue, base: Address, data: Json): ModelProblem[] {
  const address = [...base, ...toAddress(issue.path)];
  const value = findAt(data, address);
  const common = { address, expected: issue.message, received: describeValue(value) };
  switch (issue.code) {
    case "invalid_type":
      return [{ ...common, kind: value === undefined ? "missing" : "wrongType", expected: phrase(issue) }];
    case "invalid_value":
      return [notOneOf(address, value, issue.values.filter(isWord))];
    case "too_small":
      return [beyond(address, value, issue.message, issue.origin, Number(issue.minimum), issue.inclusive)];
    case "too_big":
      return [beyond(address, value, issue.message, issue.origin, Number(issue.maximum), issue.inclusive)];
    case "invalid_format":
      return [{ ...common, kind: "badText" }];
    case "unrecognized_keys":
      return issue.keys.map((key) => unknownKey([...address, key], key, issue.message.split(", "), data));
    case "invalid_key":
      return [
        {
          ...common,
          kind: "badName",
          expected: innerMessage(issue),
          received: describeValue(address.at(-1)),
        },
      ];
    case "invalid_union":
      return translateUnion(issue, address, value, data);
    case "not_multiple_of":
    case "invalid_element":
    case "custom":
      return [{ ...common, kind: "wrongShape" }];
  }
}

/** A union is reported by the alternative that was meant; where none can be told, by what all of them are together. */
function translateUnion(
  issue: z.core.$ZodIssueInvalidUnion,
  address: Address,
  value: Json | undefined,
  data: Json,
): ModelProblem[] {
  if (issue.discriminator !== undefined) {
    const possible = "options" in issue && Array.isArray(issue.options) ? issue.options.filter(isWord) : [];
    return [notOneOf(address, value, possible)];
  }
  const meant = findMeant(issue.errors, value);
  if (meant !== undefined) return meant.flatMap((inner) => translate(inner, address, data));
  const kind = value === undefined ? "missing" : "wrongType";
  return [{ kind, address, expected: issue.message, received: describeValue(value) }];
}

function beyond(
  address: Address,
  value: Json | undefined,
  message: string,
  origin: string,
  limit: number,
  limitAllowed = true,
): ModelProblem {
  const received = describeValue(value);
  if (typeof value === "number")
    return { kind: "outOfRange", address, expected: message, received, value, limit, limitAllowed };
  const length = Array.isArray(value) ? value.length : 0;
  const expected = message.startsWith("Too ")
    ? `a ${origin === "array" ? "list" : origin} of ${limit}`
    : message;
  return { kind: "wrongLength", address, expected, received, length, limit };
}

function notOneOf(address: Address, value: Json | undefined, possible: readonly Word[]): ModelProblem {
  const expected = possible.map(describeValue).join(" or ");
  const received = describeValue(value);
  if (value === undefined) return { kind: "missing", address, expected, received };
  const nearest = typeof value === "string" ? nearestName(value, possible.filter(isText)) : undefined;
  return {
    kind: "notOneOf",
    address,
    expected,
    received,
    possible,
    ...(nearest !== undefined && { nearest }),
  };
}

function unknownKey(address: Address, key: string, known: readonly string[], data: Json): ModelProblem {
  const beside = findAt(data, address.slice(0, -1));
  const free = known.filter((name) => findAt(beside, [name]) === undefined);
  const nearest = nearestName(key, free);
  const expected = `no key but ${known.join(", ")}`;
  return {
    kind: "unknownKey",
    address,
    expected,
    received: describeValue(key),
    known,
    ...(nearest !== undefined && { nearest }),
  };
}

const containers: Readonly<Record<string, string>> = {
  object: "an object",
  record: "an object",
  array: "a list",
  tuple: "a list",
};

/** zod's own words ("Invalid input: …") stand only where a container has no phrase of its own. */
function phrase(issue: z.core.$ZodIssueInvalidType): string {
  return issue.message.startsWith("Invalid ")
    ? (containers[issue.expected] ?? issue.expected)
    : issue.message;
}

function innerMessage(issue: z.core.$ZodIssueInvalidKey): string {
  return issue.issues[0]?.message ?? issue.message;
}

const isText = (value: unknown): value is string => typeof value === "string";
const isWord = (value: unknown): value is Word =>
  isText(value) || ["number", "boolean"].includes(typeof value);

function toAddress(path: readonly PropertyKey[]): (string | number)[] {
  return path.map((step) => (typeof step === "symbol" ? String(step) : step));
}
