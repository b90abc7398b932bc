import { coverageFactor } from "./coverage-factor.ts";

/** The coverage factor used where none is stated: about 95 percent. Source: JCGM 100:2008 6.3.3. */
export const USUAL_FACTOR = 2;

/** A standard doubt with its degrees of freedom; left out, infinitely many. */
export interface CombinedDoubt {
  readonly standard: number;
  readonly dof?: number;
}

/** An expanded doubt that holds the value with a stated probability. */
export interface ExpandedDoubt {
  readonly expanded: number;
  readonly k: number;
  readonly coverage: number;
}

/** Standard doubt times k, in its own unit. */
export function expand(standard: number, k: number = USUAL_FACTOR): number {
  return k * standard;
}

/** The half-width that holds the value with probability `coverage`, above 0 and below 1, from Student's t. */
export function expandTo(coverage: number, doubt: CombinedDoubt): ExpandedDoubt {
  const k = coverageFactor(coverage, doubt.dof);
  return { expanded: expand(doubt.standard, k), k, coverage };
}
