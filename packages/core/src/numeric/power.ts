import { expOf, logOf } from "./exponential.ts";

/**
 * A number raised to a power: one above 0, or any to a whole power. Whole powers use products alone, so that every engine
 * gives the same bits; `**` leaves the last digit to the engine for all powers but 2.
 */
export function powerOf(base: number, exponent: number): number {
  if (!Number.isInteger(exponent)) return expOf(exponent * logOf(base));
  let product = 1;
  for (let count = Math.abs(exponent); count > 0; count--) product *= base;
  return exponent < 0 ? 1 / product : product;
}
