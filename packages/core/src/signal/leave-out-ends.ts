import type { PercentPulsePoint } from "./fit-line.ts";
import { type FittedScale, fitScale, fittedUs, withinDoubt } from "./fit-scale.ts";
import { meansByPercent } from "./means-by-percent.ts";

/** An end reading nearer to the centre than the readings before it let expect. */
export interface ShortEnd {
  readonly where: "low" | "high";
  /** The neighbouring percent, where all is still well, and the end, in rising order. */
  readonly fromPercent: number;
  readonly toPercent: number;
  /** Mean pulse at the end. */
  readonly pulseUs: number;
}

/**
 * The fit without those ends that fall short of it. An end is left out where not all readings fit, those without it do,
 * and the end is nearer to the centre than they say by more than two readings' doubts. What is left has to hold three
 * percents on one straight line, or four: two slopes go through any three. Where no such end explains the misfit,
 * the fit of all readings is returned as it was.
 */
export function leaveOutEnds(
  points: readonly PercentPulsePoint[],
  whole: FittedScale,
  doubtUs: number,
): {
  readonly scale: FittedScale;
  readonly used: readonly PercentPulsePoint[];
  readonly short: readonly ShortEnd[];
} {
  const unchanged = { scale: whole, used: points, short: [] };
  if (whole.fits) return unchanged;
  for (const sides of [["high"], ["low"], ["low", "high"]] as const) {
    const ends = sides.map((where) => endOf(points, where));
    const used = points.filter(({ percent }) => !ends.some((end) => end.percent === percent));
    const scale = fitScale(used, doubtUs);
    if (!scale?.fits || meansByPercent(used).length < (scale.straight ? 3 : 4)) continue;
    if (ends.every((end) => fallsShort(end, scale, doubtUs)))
      return { scale, used, short: ends.map(({ percent: _, ...end }) => end) };
  }
  return unchanged;
}

interface End extends ShortEnd {
  readonly percent: number;
}

function endOf(points: readonly PercentPulsePoint[], where: "low" | "high"): End {
  const means = meansByPercent(points);
  const [from = nowhere, to = nowhere] = where === "low" ? means : means.slice(-2);
  const { percent, pulseUs } = where === "low" ? from : to;
  return { where, percent, fromPercent: from.percent, toPercent: to.percent, pulseUs };
}

/** What stands for a neighbour that there is not; a fit that does not hold has more than two percents. */
const nowhere: PercentPulsePoint = { percent: 0, pulseUs: 0 };

function fallsShort(end: End, scale: FittedScale, doubtUs: number): boolean {
  const missingUs = fittedUs(scale, end.percent) - end.pulseUs;
  const inwardUs = Math.max(0, end.where === "high" ? missingUs : -missingUs);
  return !withinDoubt(inwardUs, 2 * doubtUs);
}
