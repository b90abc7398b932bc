import { deg, us } from "../units/quantity.ts";
import type { Response } from "./response.ts";

/** A pulse of the new servo and the deflection read at it. */
export interface SwapReading {
  readonly pulseUs: number;
  readonly deflectionDeg: number;
}

/** How far the new servo stands from where the map expects it, at a reading that the map was not made from. */
export interface SwapTest {
  /** Place among the readings as given. */
  readonly index: number;
  readonly expectedUs: number;
  /** Measured less expected pulse, and what that is in deflection; both signed. */
  readonly missUs: number;
  readonly missDeg: number;
  /** What a position is sure to anyway: a larger miss refuses the map. */
  readonly doubtDeg: number;
}

/** How the pulses of an old servo become those of a new one on the same linkage: new = offset + factor times old. */
export interface SwapMap {
  readonly kind: "map";
  /** Whether every test lies within the doubt; a map that does not is not to be used. */
  readonly accepted: boolean;
  readonly offsetUs: number;
  readonly factor: number;
  /** Old pulses between the two readings that the map was made from; nothing is mapped outside. */
  readonly fromUs: readonly [low: number, high: number];
  readonly tests: readonly SwapTest[];
  /** The test that misses furthest. */
  readonly worst: SwapTest;
  /** Stops stand in no map: they belong to the new servo and are found again on the bench. */
  readonly stops: "measureAgain";
}

/** Why there is no map at all. */
export type SwapProblem =
  | { readonly kind: "too-few-readings"; readonly count: number; readonly needed: 3 }
  /** The old servo was never read at this deflection. */
  | {
      readonly kind: "not-covered";
      readonly index: number;
      readonly deflectionDeg: number;
      readonly knownDeg: readonly [number, number];
    }
  /** The two outermost readings stand too near to each other to say anything of what lies between. */
  | { readonly kind: "too-close"; readonly spanDeg: number; readonly neededDeg: number }
  /** No reading lies between the outermost two. */
  | { readonly kind: "no-test" }
  /** The pulse falls where it rose before, or stays: the servo turns the other way, or a reading is wrong. */
  | { readonly kind: "turns-other-way"; readonly factor: number };

/**
 * The map from an old servo's pulses to a new one's, made from the two readings that stand furthest apart and tested at all others.
 * It rests on the linkage being the same: the arm on the same tooth, or on another by a shift. Accepted where no test misses by more
 * than the doubt of a position. Source: straight line through two points; the test at a third is common practice, no source.
 * @param old the response of the old servo
 * @param doubtAt old pulse in microseconds -> expanded doubt of the deflection there, k = 2, degrees
 */
export function mapServo(
  old: Response,
  readings: readonly SwapReading[],
  doubtAt: (pulseUs: number) => number,
): SwapMap | SwapProblem {
  if (readings.length < NEEDED) return { kind: "too-few-readings", count: readings.length, needed: NEEDED };
  const points: Point[] = [];
  for (const [index, { pulseUs, deflectionDeg }] of readings.entries()) {
    const oldUs = old.pulseAt(deg(deflectionDeg));
    if (oldUs === undefined) {
      const [low, high] = old.deflections;
      return { kind: "not-covered", index, deflectionDeg, knownDeg: [low, high] };
    }
    points.push({ index, oldUs, newUs: pulseUs, deflectionDeg });
  }
  const sorted = points.toSorted((a, b) => a.oldUs - b.oldUs);
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined) return { kind: "no-test" };
  const spanDeg = Math.abs(last.deflectionDeg - first.deflectionDeg);
  const neededDeg = SPAN * Math.max(doubtAt(first.oldUs), doubtAt(last.oldUs));
  if (!(spanDeg > neededDeg)) return { kind: "too-close", spanDeg, neededDeg };
  const factor = (last.newUs - first.newUs) / (last.oldUs - first.oldUs);
  if (!(factor > 0)) return { kind: "turns-other-way", factor };
  const between = sorted.filter(({ oldUs }) => oldUs > first.oldUs && oldUs < last.oldUs);
  const tests = between.map((point) => testAt(point, first, factor, old, doubtAt));
  const worst = tests.toSorted((a, b) => overshoot(b) - overshoot(a))[0];
  if (worst === undefined) return { kind: "no-test" };
  return {
    kind: "map",
    accepted: overshoot(worst) <= 1,
    offsetUs: first.newUs - factor * first.oldUs,
    factor,
    fromUs: [first.oldUs, last.oldUs],
    tests,
    worst,
    stops: "measureAgain",
  };
}

/** An old pulse in, the new servo's out; undefined outside the readings that the map was made from. */
export function mapPulse({ offsetUs, factor, fromUs }: SwapMap, oldUs: number): number | undefined {
  return oldUs < fromUs[0] || oldUs > fromUs[1] ? undefined : offsetUs + factor * oldUs;
}

interface Point {
  readonly index: number;
  readonly oldUs: number;
  readonly newUs: number;
  readonly deflectionDeg: number;
}

const NEEDED = 3;
/** The outermost readings stand this many doubts apart at least. Assumption of experience. */
const SPAN = 10;

function testAt(
  { index, oldUs, newUs }: Point,
  first: Point,
  factor: number,
  old: Response,
  doubtAt: (pulseUs: number) => number,
): SwapTest {
  const expectedUs = first.newUs + factor * (oldUs - first.oldUs);
  const missUs = newUs - expectedUs;
  const slope = old.slopeAt(us(oldUs)) ?? 0;
  return { index, expectedUs, missUs, missDeg: (missUs / factor) * slope, doubtDeg: doubtAt(oldUs) };
}

function overshoot({ missDeg, doubtDeg }: SwapTest): number {
  return Math.abs(missDeg) / doubtDeg;
}
