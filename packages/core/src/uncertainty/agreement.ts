import { hypotOf } from "../numeric/hypotenuse.ts";
import { expand } from "./expand.ts";

/** A verdict that leaves room for the doubt. */
export type ToleranceVerdict =
  /** Within the tolerance, whatever the doubt. */
  | "agrees"
  /** Outside the tolerance, whatever the doubt. */
  | "differs"
  /** The doubt reaches across the tolerance. */
  | "cannotTell";

/**
 * Standard doubt of the difference of two values that share no cause of doubt. Values that share one go through
 * `propagateDifference`.
 */
export function differenceDoubt(first: number, second: number): number {
  return hypotOf(first, second);
}

/**
 * Whether two values are equal as far as can be told: their difference is no larger than k times its standard doubt.
 * Source: common practice, no source; the same as |E_n| not above 1.
 */
export function isEqualWithinDoubt(difference: number, standard: number, k?: number): boolean {
  return Math.abs(difference) <= expand(standard, k);
}

/**
 * Whether a difference is within plus and minus `tolerance`, 0 or more, guarded to both sides by k times its standard
 * doubt. Source: JCGM 106:2012 8.3, guarded acceptance and guarded rejection.
 */
export function judgeTolerance(
  difference: number,
  standard: number,
  tolerance: number,
  k?: number,
): ToleranceVerdict {
  const expanded = expand(standard, k);
  if (Math.abs(difference) + expanded <= tolerance) return "agrees";
  return Math.abs(difference) - expanded > tolerance ? "differs" : "cannotTell";
}
