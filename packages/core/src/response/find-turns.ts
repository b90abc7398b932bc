import { type ReadingDoubts, SUSPICIOUS_RATIO, without, worstRatio } from "./leave-one-out.ts";
import type { ReadingPoint } from "./merge-readings.ts";

/** Two neighbouring readings between which the deflection goes against its trend, or stands still. */
export interface NotMonotoneProblem {
  readonly kind: "notMonotone";
  readonly betweenUs: readonly [number, number];
  readonly deflectionsDeg: readonly [number, number];
  /** The trend of all readings: whether deflection grows with pulse. */
  readonly rising: boolean;
  /** The readings of both points. */
  readonly indices: readonly number[];
  /** The readings that are likely wrong: those of one point, or of both where either may be. */
  readonly culpritIndices: readonly number[];
}

/** Every step between neighbours that goes against the trend; points by rising pulse. Empty: strictly monotone. */
export function findTurns(
  points: readonly ReadingPoint[],
  doubts: ReadingDoubts,
): readonly NotMonotoneProblem[] {
  const rising = isRising(points);
  return wrongSteps(points, rising).map(([one, other]) => ({
    kind: "notMonotone",
    betweenUs: [one.pulseUs, other.pulseUs],
    deflectionsDeg: [one.deflectionDeg, other.deflectionDeg],
    rising,
    indices: [...one.indices, ...other.indices],
    culpritIndices: findCulprits(points, one, other, rising, doubts).flatMap((point) => point.indices),
  }));
}

/** The sense in which most pairs of readings agree, so that one slip cannot turn it. Source: the sign of Kendall's tau. */
function isRising(points: readonly ReadingPoint[]): boolean {
  let agreement = 0;
  points.forEach((one, i) => {
    for (const later of points.slice(i + 1)) agreement += Math.sign(later.deflectionDeg - one.deflectionDeg);
  });
  return agreement >= 0;
}

function wrongSteps(points: readonly ReadingPoint[], rising: boolean): [ReadingPoint, ReadingPoint][] {
  const steps: [ReadingPoint, ReadingPoint][] = [];
  points.forEach((one, i) => {
    const other = points[i + 1];
    if (other === undefined) return;
    const riseDeg = other.deflectionDeg - one.deflectionDeg;
    if (rising ? riseDeg <= 0 : riseDeg >= 0) steps.push([one, other]);
  });
  return steps;
}

/** One of two points where leaving it out mends the table and leaving out the other does not; else both. */
function findCulprits(
  points: readonly ReadingPoint[],
  one: ReadingPoint,
  other: ReadingPoint,
  rising: boolean,
  doubts: ReadingDoubts,
): readonly ReadingPoint[] {
  const [stepsOne, stepsOther] = [one, other].map(
    (point) => wrongSteps(without(points, point), rising).length,
  );
  const [ratioOne, ratioOther] = [one, other].map((point) => worstRatio(without(points, point), doubts));
  if (
    stepsOne === undefined ||
    stepsOther === undefined ||
    ratioOne === undefined ||
    ratioOther === undefined
  ) {
    return [one, other];
  }
  if (stepsOne !== stepsOther) return stepsOne < stepsOther ? [one] : [other];
  if (ratioOne <= SUSPICIOUS_RATIO && ratioOther > SUSPICIOUS_RATIO) return [one];
  if (ratioOther <= SUSPICIOUS_RATIO && ratioOne > SUSPICIOUS_RATIO) return [other];
  return [one, other];
}
