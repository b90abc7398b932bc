import { numericalTolerance } from "./simulate-until-settled.ts";
import type { Summary } from "./summarise.ts";

/** A result from propagation along straight lines: the value, and the half-width that is claimed to hold it. */
export interface LinearResult {
  readonly value: number;
  readonly expanded: number;
}

/**
 * Whether propagation along straight lines may stand in for a simulation of the same coverage: both ends of value plus
 * and minus `expanded` agree with the symmetric interval to the digits of the simulated standard doubt. False means
 * that the result is too curved there, or too few trials were run. Source: JCGM 101:2008 8.1.
 */
export function isLinearValid(linear: LinearResult, simulated: Summary, digits: 1 | 2 = 1): boolean {
  const tolerance = numericalTolerance(simulated.standard, digits);
  return linearExcess(linear, simulated).every((excess) => Math.abs(excess) <= tolerance);
}

/** How far the straight-line interval reaches past the simulated one at its low and its high end; negative: falls short of it. */
export function linearExcess(
  { value, expanded }: LinearResult,
  { symmetric: [low, high] }: Summary,
): readonly [low: number, high: number] {
  return [low - (value - expanded), value + expanded - high];
}
