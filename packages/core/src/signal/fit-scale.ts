import { fitLine, type PercentPulsePoint } from "./fit-line.ts";
import { fitTwoSided } from "./fit-two-sided.ts";

/** A number for each side of the centre. */
export interface BothSides {
  readonly below: number;
  readonly above: number;
}

/** A signal scale fitted to readings, in plain numbers; doubts are standard doubts. */
export interface FittedScale {
  readonly straight: boolean;
  readonly centreUs: number;
  readonly centreDoubtUs: number;
  readonly per100Us: BothSides;
  readonly per100DoubtUs: BothSides;
  /** Whether every reading is within its own doubt of the fit. */
  readonly fits: boolean;
}

/**
 * One straight line, or two lines through a common centre. Two are chosen where a reading lies further from the one
 * line than its doubt, and the two slopes differ by more than three standard doubts of their difference. A reading's
 * standard doubt is the standard deviation of the residuals, but never less than that of an even spread over `doubtUs`
 * to either side (JCGM 100:2008, 4.3.7: half-width over root 3). Undefined below two distinct percents.
 */
export function fitScale(points: readonly PercentPulsePoint[], doubtUs: number): FittedScale | undefined {
  const line = straightScale(points, doubtUs);
  if (line?.fits) return line;
  return twoSidedScale(points, doubtUs) ?? line;
}

/** The pulse that a fitted scale gives for a percent, microseconds. */
export function fittedUs(scale: Pick<FittedScale, "centreUs" | "per100Us">, percent: number): number {
  return scale.centreUs + (percent * (percent < 0 ? scale.per100Us.below : scale.per100Us.above)) / 100;
}

/** Reads off by no more than their own doubt; the last digits of a double are no misfit where that doubt is zero. */
export function withinDoubt(residualUs: number, doubtUs: number): boolean {
  return Math.abs(residualUs) <= doubtUs + 1e-6;
}

const SIGNIFICANT = 3;

function straightScale(points: readonly PercentPulsePoint[], doubtUs: number): FittedScale | undefined {
  const line = fitLine(points);
  if (line === undefined) return undefined;
  const per100Us = 100 * line.usPerPercent;
  const readingUs = standardUs(line, doubtUs);
  const per100DoubtUs = 100 * line.usPerPercentPerUs * readingUs;
  return judged(points, doubtUs, {
    straight: true,
    centreUs: line.centreUs,
    centreDoubtUs: line.centrePerUs * readingUs,
    per100Us: { below: per100Us, above: per100Us },
    per100DoubtUs: { below: per100DoubtUs, above: per100DoubtUs },
  });
}

function twoSidedScale(points: readonly PercentPulsePoint[], doubtUs: number): FittedScale | undefined {
  const sides = fitTwoSided(points);
  if (sides === undefined) return undefined;
  const readingUs = standardUs(sides, doubtUs);
  const difference = Math.abs(sides.above.usPerPercent - sides.below.usPerPercent);
  if (difference <= SIGNIFICANT * sides.differencePerUs * readingUs) return undefined;
  return judged(points, doubtUs, {
    straight: false,
    centreUs: sides.centreUs,
    centreDoubtUs: sides.centrePerUs * readingUs,
    per100Us: { below: 100 * sides.below.usPerPercent, above: 100 * sides.above.usPerPercent },
    per100DoubtUs: {
      below: 100 * sides.below.usPerPercentPerUs * readingUs,
      above: 100 * sides.above.usPerPercentPerUs * readingUs,
    },
  });
}

function standardUs(fit: { readonly squaresUs2: number; readonly freedom: number }, doubtUs: number): number {
  const scatterUs = fit.freedom > 0 ? Math.sqrt(fit.squaresUs2 / fit.freedom) : 0;
  return Math.max(scatterUs, doubtUs / Math.sqrt(3));
}

function judged(
  points: readonly PercentPulsePoint[],
  doubtUs: number,
  scale: Omit<FittedScale, "fits">,
): FittedScale {
  const fits = points.every((point) => withinDoubt(point.pulseUs - fittedUs(scale, point.percent), doubtUs));
  return { ...scale, fits };
}
