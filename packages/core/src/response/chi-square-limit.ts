import { powerOf } from "../numeric/power.ts";

/** Standard normal value that 99 of 100 draws stay below. */
const NORMAL_99 = 2.3263478740408408;

/**
 * The sum of squares, in standard doubts, that 99 of 100 sound fits stay below, for 1 degree of freedom and more. Good to
 * 1 percent. Source: E. B. Wilson, M. M. Hilferty, The distribution of chi-square, Proc. Natl. Acad. Sci. 17 (1931) 684-688.
 */
export function chiSquareLimit(dof: number): number {
  const ninth = 2 / (9 * dof);
  return dof * powerOf(1 - ninth + NORMAL_99 * Math.sqrt(ninth), 3);
}
