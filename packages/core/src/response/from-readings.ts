import { monotoneCurve } from "../numeric/monotone-curve.ts";
import { deg, degPerUs, us } from "../units/quantity.ts";
import { branded } from "./branded.ts";
import { findTurns, type NotMonotoneProblem } from "./find-turns.ts";
import type { ReadingDoubts } from "./leave-one-out.ts";
import {
  type DuplicateProblem,
  type Hysteresis,
  mergeReadings,
  type ReadingPoint,
  type ServoReading,
} from "./merge-readings.ts";
import type { Response } from "./response.ts";
import { findSuspiciousReading, type SuspiciousProblem } from "./suspicious-reading.ts";

/** What is wrong with a servo's readings. `indices` are places in the caller's array. */
export type ReadingProblem =
  /** No reading, or all at one pulse: no response. */
  | { readonly kind: "tooFew"; readonly pulses: number; readonly indices: readonly number[] }
  /** Two pulses: the response is a straight line, and the real one is not known to be. */
  | { readonly kind: "shapeUnknown"; readonly indices: readonly number[] }
  /** No response. */
  | DuplicateProblem
  /** No response. */
  | NotMonotoneProblem
  /** The response uses the reading all the same. */
  | SuspiciousProblem;

/** A response, as far as the readings bear one, and everything that is wrong with them. */
export interface ReadingsResult {
  /** Absent where a problem says so. */
  readonly response?: Response;
  /** What the response goes through, by rising pulse. */
  readonly points: readonly ReadingPoint[];
  readonly problems: readonly ReadingProblem[];
  /** One for each pulse that was read out and back, by rising pulse. */
  readonly hysteresis: readonly Hysteresis[];
}

/**
 * The response of one servo from its readings, finite numbers in any order. One pulse: none. Two: the straight line.
 * Three or more: the monotone cubic of `monotoneCurve` through all of them. Nothing is smoothed and nothing dropped.
 */
export function responseFromReadings(
  readings: readonly ServoReading[],
  doubts: ReadingDoubts,
): ReadingsResult {
  const { points, hysteresis, duplicates } = mergeReadings(readings);
  const result = { points, hysteresis };
  if (duplicates.length > 0) return { ...result, problems: duplicates };

  const indices = points.flatMap((point) => point.indices);
  if (points.length < 2) return { ...result, problems: [{ kind: "tooFew", pulses: points.length, indices }] };

  const turns = findTurns(points, doubts);
  if (turns.length > 0) return { ...result, problems: turns };

  const response = responseThrough(points);
  if (points.length === 2) return { ...result, response, problems: [{ kind: "shapeUnknown", indices }] };
  const suspicious = findSuspiciousReading(points, doubts);
  return { ...result, response, problems: suspicious === undefined ? [] : [suspicious] };
}

/** The response through at least two points by rising pulse, strictly monotone in deflection. */
function responseThrough(points: readonly ReadingPoint[]): Response {
  const pulsesUs = points.map((point) => point.pulseUs);
  const deflectionsDeg = points.map((point) => point.deflectionDeg);
  const curve = monotoneCurve(pulsesUs, deflectionsDeg);
  const [firstDeg, lastDeg] = [deflectionsDeg.at(0) ?? 0, deflectionsDeg.at(-1) ?? 0];
  return {
    pulses: [us(pulsesUs.at(0) ?? 0), us(pulsesUs.at(-1) ?? 0)],
    deflections: [deg(Math.min(firstDeg, lastDeg)), deg(Math.max(firstDeg, lastDeg))],
    knots: pulsesUs.map((pulse) => us(pulse)),
    rising: lastDeg > firstDeg,
    deflectionAt: (pulse) => branded(deg, curve.valueAt(pulse)),
    pulseAt: (deflection) => branded(us, curve.inverseAt(deflection)),
    slopeAt: (pulse) => branded(degPerUs, curve.slopeAt(pulse)),
  };
}
