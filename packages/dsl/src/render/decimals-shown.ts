import { decimalsOf } from "@hingeline/core";

/** Decimals that show all of these values as they were stated: one at least, two at most. */
export function decimalsShown(values: readonly number[]): number {
  return Math.min(2, Math.max(1, ...values.map(decimalsOf)));
}
