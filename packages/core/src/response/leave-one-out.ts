import { hypotOf } from "../numeric/hypotenuse.ts";
import { monotoneCurve } from "../numeric/monotone-curve.ts";
import type { ReadingPoint } from "./merge-readings.ts";

/** Standard doubts (k = 1) of one reading, greater than 0. */
export interface ReadingDoubts {
  readonly pulseUs: number;
  readonly deflectionDeg: number;
}

/** One reading held against the curve through all others. */
export interface LeftOut {
  readonly point: ReadingPoint;
  /** What the others expect here. */
  readonly expectedDeg: number;
  /** What was read minus what the others expect. */
  readonly missDeg: number;
  /** The size of the miss in standard doubts of reading and expectation together. */
  readonly ratio: number;
}

/** A miss of more standard doubts than this is suspicious; common practice, no source. */
export const SUSPICIOUS_RATIO = 3;

/** With fewer points than this, the others make a straight line, which says nothing about a bent response. */
const FEWEST_POINTS = 4;

/**
 * How well the others know their own shape: between points, the part by which the curve leaves its chord is taken to be
 * good to a third of itself (standard doubt). From trial on the demo tables, where every clean reading then stays below half
 * of `SUSPICIOUS_RATIO`.
 */
const SHAPE_DOUBT = 1 / 3;

/**
 * Every inner point against the curve through the others; points by rising pulse, not necessarily monotone. The two end
 * points are not judged: nothing lies beyond them to say what to expect. Fewer than four points: nothing is judged.
 */
export function leaveOneOut(points: readonly ReadingPoint[], doubts: ReadingDoubts): readonly LeftOut[] {
  if (points.length < FEWEST_POINTS) return [];
  return points.slice(1, -1).flatMap((point) => {
    const left = compare(point, without(points, point), doubts);
    return left === undefined ? [] : [left];
  });
}

/** The largest ratio of all inner points, 0 where none is judged. */
export function worstRatio(points: readonly ReadingPoint[], doubts: ReadingDoubts): number {
  return Math.max(0, ...leaveOneOut(points, doubts).map((left) => left.ratio));
}

/** The points but one. */
export function without(points: readonly ReadingPoint[], point: ReadingPoint): readonly ReadingPoint[] {
  return points.filter((other) => other !== point);
}

function compare(
  point: ReadingPoint,
  others: readonly ReadingPoint[],
  doubts: ReadingDoubts,
): LeftOut | undefined {
  const pulsesUs = others.map((other) => other.pulseUs);
  const deflectionsDeg = others.map((other) => other.deflectionDeg);
  const curve = monotoneCurve(pulsesUs, deflectionsDeg);
  const expectedDeg = curve.valueAt(point.pulseUs);
  const slopeDegPerUs = curve.slopeAt(point.pulseUs);
  const chordDeg = chordAt(others, point.pulseUs);
  if (expectedDeg === undefined || slopeDegPerUs === undefined || chordDeg === undefined) return undefined;
  const readingDeg = hypotOf(doubts.deflectionDeg, slopeDegPerUs * doubts.pulseUs);
  // What one doubt in each other reading does to the expectation, the others' doubts taken as this one's.
  const fitDeg = deflectionsDeg.map((_, moved) => {
    const movedDeg = deflectionsDeg.map((valueDeg, i) => (i === moved ? valueDeg + readingDeg : valueDeg));
    return (monotoneCurve(pulsesUs, movedDeg).valueAt(point.pulseUs) ?? expectedDeg) - expectedDeg;
  });
  const shapeDeg = SHAPE_DOUBT * (expectedDeg - chordDeg);
  const missDeg = point.deflectionDeg - expectedDeg;
  const doubtDeg = hypotOf(readingDeg, shapeDeg, ...fitDeg);
  return { point, expectedDeg, missDeg, ratio: doubtDeg > 0 ? Math.abs(missDeg) / doubtDeg : 0 };
}

function chordAt(points: readonly ReadingPoint[], pulseUs: number): number | undefined {
  const after = points.findIndex((point) => point.pulseUs > pulseUs);
  const [low, high] = [points[after - 1], points[after]];
  if (low === undefined || high === undefined) return undefined;
  const share = (pulseUs - low.pulseUs) / (high.pulseUs - low.pulseUs);
  return low.deflectionDeg + share * (high.deflectionDeg - low.deflectionDeg);
}
