import {
  type LeftOut,
  leaveOneOut,
  type ReadingDoubts,
  SUSPICIOUS_RATIO,
  without,
  worstRatio,
} from "./leave-one-out.ts";
import type { ReadingPoint } from "./merge-readings.ts";

/** A reading that its neighbours do not bear out. */
export interface SuspiciousProblem {
  readonly kind: "suspicious";
  readonly pulseUs: number;
  readonly deflectionDeg: number;
  /** What the other readings expect at this pulse. */
  readonly expectedDeg: number;
  /** What was read minus what is expected. */
  readonly missDeg: number;
  /** The miss in standard doubts; above 3. */
  readonly ratio: number;
  readonly indices: readonly number[];
}

/**
 * The one reading to measure again, or undefined where none misses by more than three standard doubts. A wrong reading pulls
 * its neighbours over the mark with it; named is the one without which the rest agrees best, then the one with the
 * largest ratio. Points by rising pulse. End readings are never named.
 */
export function findSuspiciousReading(
  points: readonly ReadingPoint[],
  doubts: ReadingDoubts,
): SuspiciousProblem | undefined {
  let found: { readonly left: LeftOut; readonly restRatio: number } | undefined;
  for (const left of leaveOneOut(points, doubts)) {
    if (left.ratio <= SUSPICIOUS_RATIO) continue;
    const restRatio = worstRatio(without(points, left.point), doubts);
    const isBetter =
      found === undefined ||
      restRatio < found.restRatio ||
      (restRatio === found.restRatio && left.ratio > found.left.ratio);
    if (isBetter) found = { left, restRatio };
  }
  if (found === undefined) return undefined;
  const { point, ...miss } = found.left;
  return { kind: "suspicious", ...point, ...miss };
}
