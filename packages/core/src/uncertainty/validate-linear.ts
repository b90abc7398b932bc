import { numericalTolerance } from "./simulate-until-settled.ts";
import type { Summary } from "./summarise.ts";

/**
 * Whether propagation along straight lines may stand in for a simulation of the same coverage: both ends of value plus
 * and minus `expanded` agree with the symmetric interval to the digits of the simulated standard doubt. False means
 * that the result is too curved there, or too few trials were run. Source: JCGM 101:2008 8.1.
 */
export function isLinearValid(
  linear: { readonly value: number; readonly expanded: number },
  simulated: Summary,
  digits: 1 | 2 = 1,
): boolean {
  const [low, high] = simulated.symmetric;
  const tolerance = numericalTolerance(simulated.standard, digits);
  return (
    Math.abs(linear.value - linear.expanded - low) <= tolerance &&
    Math.abs(linear.value + linear.expanded - high) <= tolerance
  );
}
