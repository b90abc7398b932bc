import { hypotOf } from "../numeric/hypotenuse.ts";
import { monotoneCurve } from "../numeric/monotone-curve.ts";
import { pchimSlopes } from "../numeric/pchim-slopes.ts";
import type { ReadingDoubts } from "./leave-one-out.ts";
import type { ReadingPoint } from "./merge-readings.ts";

/** Where one more reading tells most, or that no more are needed. */
export type NextReading =
  /** Two readings do not show how the response bends: read between them. */
  | { readonly kind: "shapeUnknown"; readonly pulseUs: number; readonly betweenUs: readonly [number, number] }
  | (WantedDoubt & {
      readonly kind: "gap";
      /** Where to read, whole microseconds. */
      readonly pulseUs: number;
      /** The readings on either side. */
      readonly betweenUs: readonly [number, number];
    })
  /** At every wanted deflection the gap costs less than a reading's own doubt. What stands here is the worst of them. */
  | (WantedDoubt & { readonly kind: "enough" });

/** How well a wanted deflection is known. */
export interface WantedDoubt {
  readonly wantedDeg: number;
  /** What a response that bends as these readings show can be off its chord there. */
  readonly gapDeg: number;
  /** Standard doubt of one reading there. */
  readonly readingDeg: number;
}

/**
 * Looks for the wanted deflection where the gap between readings and the doubt of reading together are largest. Points by
 * rising pulse, strictly monotone. Wanted deflections outside the points are left out; undefined where none is inside, or
 * with fewer than two points.
 * The gap's part is that of straight-line interpolation, h² |d''| / 8 in the middle of a gap h, with d'' from the curve's
 * slopes at both readings: on the safe side for the curve itself. Source of the bound: any numerical analysis textbook.
 */
export function nextReading(
  points: readonly ReadingPoint[],
  wantedDeg: readonly number[],
  doubts: ReadingDoubts,
): NextReading | undefined {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined || points.length < 2) return undefined;
  if (points.length === 2) {
    const betweenUs = [first.pulseUs, last.pulseUs] as const;
    return { kind: "shapeUnknown", pulseUs: Math.round((first.pulseUs + last.pulseUs) / 2), betweenUs };
  }
  const places = placesOf(points, wantedDeg, doubts);
  const open = places.filter(({ doubt }) => doubt.gapDeg > doubt.readingDeg);
  const worst = (open.length > 0 ? open : places).reduce<Place | undefined>(
    (largest, place) => (largest === undefined || total(place) > total(largest) ? place : largest),
    undefined,
  );
  if (worst === undefined) return undefined;
  if (open.length === 0) return { kind: "enough", ...worst.doubt };
  return { kind: "gap", pulseUs: Math.round(worst.pulseUs), betweenUs: worst.betweenUs, ...worst.doubt };
}

interface Place {
  readonly pulseUs: number;
  readonly betweenUs: readonly [number, number];
  readonly doubt: WantedDoubt;
}

function placesOf(
  points: readonly ReadingPoint[],
  wanted: readonly number[],
  doubts: ReadingDoubts,
): readonly Place[] {
  const pulsesUs = points.map((point) => point.pulseUs);
  const deflectionsDeg = points.map((point) => point.deflectionDeg);
  const curve = monotoneCurve(pulsesUs, deflectionsDeg);
  const slopes = pchimSlopes(pulsesUs, deflectionsDeg);
  return wanted.flatMap((wantedDeg) => {
    const pulseUs = curve.inverseAt(wantedDeg);
    const slope = pulseUs === undefined ? undefined : curve.slopeAt(pulseUs);
    if (pulseUs === undefined || slope === undefined) return [];
    const high = Math.max(
      1,
      pulsesUs.findIndex((at) => at >= pulseUs),
    );
    const [lowUs = pulseUs, highUs = pulseUs] = [pulsesUs[high - 1], pulsesUs[high]];
    const bend = Math.abs((slopes[high] ?? slope) - (slopes[high - 1] ?? slope)) / (highUs - lowUs);
    const gapDeg = ((pulseUs - lowUs) * (highUs - pulseUs) * bend) / 2;
    const readingDeg = hypotOf(doubts.deflectionDeg, slope * doubts.pulseUs);
    return [{ pulseUs, betweenUs: [lowUs, highUs] as const, doubt: { wantedDeg, gapDeg, readingDeg } }];
  });
}

function total({ doubt }: Place): number {
  return doubt.gapDeg + doubt.readingDeg;
}
