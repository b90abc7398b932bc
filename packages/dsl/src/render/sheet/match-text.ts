import { formatNumber, type PlanMatch, type SetupPlan } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import type { SheetServo } from "./servo-on-sheet.ts";

/** Where the plan compares the surfaces of two servos. */
export function findMatch(
  first: SheetServo,
  second: SheetServo,
  matches: SetupPlan["matches"],
): PlanMatch | undefined {
  const surfaces = [first.described.surface, second.described.surface];
  return matches.find((one) => surfaces.every((surface) => one.surfaces.includes(surface)));
}

/** How far two sides differ at most, what is allowed, and whether so small a difference could be measured at all. */
export function matchText(match: PlanMatch): string {
  const { group, worstDeg, withinDeg, between } = match;
  const [from, to] = between.map(visibleText);
  return `${visibleText(group)} differ by ${formatNumber(worstDeg, 2)}° at most, ${from === to ? `at ${from}` : `${from} to ${to}`}, ${formatNumber(withinDeg, 2)}° allowed: ${doubtText(match)}.`;
}

/** "below its doubt of ±0.86°, so equal within measurement" */
function doubtText({ worstDeg, uncertaintyDeg }: PlanMatch): string {
  const doubt = `its doubt of ±${formatNumber(uncertaintyDeg, 2)}°`;
  return worstDeg < uncertaintyDeg ? `below ${doubt}, so equal within measurement` : `more than ${doubt}`;
}
