import { type PercentPulsePoint, sum } from "./fit-line.ts";
import { type FittedScale, fitScale, fittedUs, withinDoubt } from "./fit-scale.ts";

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
    if (!scale?.fits || percentsOf(used).length < (scale.straight ? 3 : 4)) continue;
    if (ends.every((end) => fallsShort(end, scale, doubtUs)))
      return { scale, used, short: ends.map(({ percent: _, ...end }) => end) };
  }
  return unchanged;
}

interface End extends ShortEnd {
  readonly percent: number;
}

function endOf(points: readonly PercentPulsePoint[], where: "low" | "high"): End {
  const percents = percentsOf(points);
  const [fromPercent = 0, toPercent = 0] = where === "low" ? percents : percents.slice(-2);
  const percent = where === "low" ? fromPercent : toPercent;
  const readings = points.filter((point) => point.percent === percent);
  const pulseUs = sum(readings, (point) => point.pulseUs) / readings.length;
  return { where, percent, fromPercent, toPercent, pulseUs };
}

function fallsShort(end: End, scale: FittedScale, doubtUs: number): boolean {
  const missingUs = fittedUs(scale, end.percent) - end.pulseUs;
  const inwardUs = Math.max(0, end.where === "high" ? missingUs : -missingUs);
  return !withinDoubt(inwardUs, 2 * doubtUs);
}

function percentsOf(points: readonly PercentPulsePoint[]): readonly number[] {
  return [...new Set(points.map((point) => point.percent))].toSorted((a, b) => a - b);
}
