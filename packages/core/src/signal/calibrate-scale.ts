import { type Percent, type Us, us } from "../units/quantity.ts";
import { findFlats } from "./find-flats.ts";
import { type BothSides, type FittedScale, fitScale, fittedUs } from "./fit-scale.ts";
import { leaveOutEnds } from "./leave-out-ends.ts";
import type { SignalScale } from "./signal-scale.ts";

/** What the radio showed, and the pulse then measured at the receiver. */
export interface ReceiverReading {
  readonly percent: Percent;
  readonly pulse: Us;
}

/** How far a reading lies from the fitted scale. */
export interface ReadingResidual {
  /** Place among the readings as given. */
  readonly index: number;
  /** Measured less fitted pulse. */
  readonly residualUs: number;
  /** False for a reading that was left out of the fit, because the pulse no longer follows the percent there. */
  readonly used: boolean;
}

/**
 * A place where the pulse does not follow the percent. `flat`: over two percents or more the pulse stays put; at an end
 * that is a clamp. `short`: the reading at an end is nearer to the centre than all the others let expect, as where a
 * clamp or a change of slope lies between it and its neighbour.
 */
export interface ScaleKink {
  readonly kind: "flat" | "short";
  readonly where: "low" | "high" | "inside";
  readonly fromPercent: number;
  readonly toPercent: number;
  readonly pulseUs: number;
  /** Where the fitted scale meets that pulse: past it, away from the centre, the radio gives no more. */
  readonly meetsPercent: number;
}

/** A signal scale as measured. `centre` and `per100` are those of a SignalScale; doubts are standard doubts. */
export interface ScaleCalibration extends Pick<SignalScale, "centre" | "per100"> {
  readonly kind: "calibrated";
  readonly centreDoubtUs: number;
  readonly per100DoubtUs: number | BothSides;
  readonly residuals: readonly ReadingResidual[];
  /** The largest residual of a reading that was used. */
  readonly largest: ReadingResidual;
  /** Whether all used readings are within their doubt of the fitted scale. */
  readonly fits: boolean;
  readonly kinks: readonly ScaleKink[];
}

/** Why readings give no scale. `leftOut` counts readings on a flat end, which say nothing of the slope. */
export type CalibrationProblem =
  | { readonly kind: "not-finite"; readonly index: number }
  | { readonly kind: "too-few-readings"; readonly count: number; readonly needed: 3 }
  | {
      readonly kind: "too-few-percents";
      readonly distinct: number;
      readonly leftOut: number;
      readonly needed: 3;
    }
  | { readonly kind: "not-rising"; readonly belowPer100Us: number; readonly abovePer100Us: number };

/**
 * The signal scale that three or more receiver readings show, by least squares: one span of 100 percent, or one below
 * and one above the centre where the readings tell them apart (the rule is with fitScale). Readings where the pulse no
 * longer follows the percent are named and left out, never fitted through. `doubt` is the half-width of a reading's
 * doubt, from zero. Five percents or more tell a clamp from two slopes; three cannot.
 */
export function calibrateScale(
  readings: readonly ReceiverReading[],
  doubt: Us,
): ScaleCalibration | CalibrationProblem {
  const bad = readings.findIndex(
    ({ percent, pulse }) => !Number.isFinite(percent) || !Number.isFinite(pulse),
  );
  if (bad >= 0) return { kind: "not-finite", index: bad };
  if (readings.length < NEEDED) return { kind: "too-few-readings", count: readings.length, needed: NEEDED };

  const points = readings.map(({ percent, pulse }) => ({ percent, pulseUs: pulse }));
  const flats = findFlats(points, doubt);
  const ends = flats.filter((flat) => flat.where !== "inside");
  const moving = points.filter(
    ({ percent }) => !ends.some((end) => percent >= end.fromPercent && percent <= end.toPercent),
  );
  const distinct = new Set(moving.map((point) => point.percent)).size;
  const whole = distinct < NEEDED ? undefined : fitScale(moving, doubt);
  if (whole === undefined)
    return { kind: "too-few-percents", distinct, leftOut: points.length - moving.length, needed: NEEDED };

  const { scale, used, short } = leaveOutEnds(moving, whole, doubt);
  const { below, above } = scale.per100Us;
  if (below <= 0 || above <= 0) return { kind: "not-rising", belowPer100Us: below, abovePer100Us: above };

  const kinks = [
    ...flats.map((flat) => ({ kind: "flat" as const, ...flat })),
    ...short.map((end) => ({ kind: "short" as const, ...end })),
  ];
  const residuals = points.map((point, index) => ({
    index,
    residualUs: point.pulseUs - fittedUs(scale, point.percent),
    used: used.includes(point),
  }));
  return {
    kind: "calibrated",
    centre: us(scale.centreUs),
    per100: scale.straight ? us(above) : { below: us(below), above: us(above) },
    centreDoubtUs: scale.centreDoubtUs,
    per100DoubtUs: scale.straight ? scale.per100DoubtUs.above : scale.per100DoubtUs,
    residuals,
    largest: largestOf(residuals),
    fits: scale.fits,
    kinks: kinks.map((kink) => ({ ...kink, meetsPercent: percentAt(scale, kink.pulseUs) })),
  };
}

const NEEDED = 3;

function largestOf(residuals: readonly ReadingResidual[]): ReadingResidual {
  return residuals
    .filter((one) => one.used)
    .reduce((largest, one) => (Math.abs(one.residualUs) > Math.abs(largest.residualUs) ? one : largest));
}

function percentAt(scale: FittedScale, pulseUs: number): number {
  const aboveCentreUs = pulseUs - scale.centreUs;
  return (100 * aboveCentreUs) / (aboveCentreUs < 0 ? scale.per100Us.below : scale.per100Us.above);
}
