import type * as z from "zod";
import { findAt, type Json } from "./json.ts";

type Issue = z.core.$ZodIssue;

/**
 * Which alternative of a union `value` was meant as, by the issues of each: the one whose deepest fault lies deepest,
 * of equals the one with the fewest faults. Undefined where all of them refuse the value as a whole.
 */
export function findMeant(
  alternatives: readonly Issue[][],
  value: Json | undefined,
): readonly Issue[] | undefined {
  if (dependsOnSelector(value)) {
    const withPer = alternatives.find((issues) => !issues.some((issue) => refuses(issue, "per")));
    if (withPer !== undefined) return withPer;
  }
  let meant: readonly Issue[] | undefined;
  let deepest = 0.5;
  let fewest = 0;
  for (const issues of alternatives) {
    const depth = deepestOf(issues);
    const faults = countFaults(issues);
    if (depth > deepest || (depth === deepest && faults < fewest)) {
      deepest = depth;
      fewest = faults;
      meant = issues;
    }
  }
  return meant;
}

/** Moves with a text at `per` are meant to depend on a selector, whatever else is wrong with them. */
function dependsOnSelector(value: Json | undefined): boolean {
  return typeof findAt(value, ["per"]) === "string";
}

function refuses(issue: Issue, key: string): boolean {
  if (issue.code === "unrecognized_keys" && issue.path.length === 0) return issue.keys.includes(key);
  return issue.path.length === 0 || issue.path[0] === key;
}

function countFaults(issues: readonly Issue[]): number {
  return issues.reduce((sum, issue) => sum + (issue.code === "unrecognized_keys" ? issue.keys.length : 1), 0);
}

// Not Math.max(...): there may be more issues than a call takes arguments.
function deepestOf(issues: readonly Issue[]): number {
  return issues.reduce((deepest, issue) => Math.max(deepest, depthOf(issue)), 0);
}

/** How far into the value an issue lies; half a level further if it takes the value's type and faults its form. */
function depthOf(issue: Issue): number {
  if (issue.code === "invalid_type") return issue.path.length;
  if (issue.code !== "invalid_union" || issue.errors.length === 0) return issue.path.length + 0.5;
  return issue.path.length + Math.max(...issue.errors.map(deepestOf));
}
