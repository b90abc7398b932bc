/** One reading in plain numbers, already in degrees; `way` says from which side the servo came. */
export interface ServoReading {
  readonly pulseUs: number;
  readonly deflectionDeg: number;
  readonly way?: "out" | "back";
}

/** A pulse with one deflection: a reading, or the mean of readings taken both ways. */
export interface ReadingPoint {
  readonly pulseUs: number;
  readonly deflectionDeg: number;
  /** Which of the caller's readings stand behind it. */
  readonly indices: readonly number[];
}

/** How far out and back lie apart at one pulse: free play, dead band and friction together. */
export interface Hysteresis {
  readonly pulseUs: number;
  readonly outDeg: number;
  readonly backDeg: number;
  /** `outDeg` minus `backDeg`. */
  readonly differenceDeg: number;
  readonly indices: readonly number[];
}

/** Several readings at one pulse that are not one way out and one way back. */
export interface DuplicateProblem {
  readonly kind: "duplicate";
  readonly pulseUs: number;
  readonly deflectionsDeg: readonly number[];
  readonly indices: readonly number[];
}

export interface MergedReadings {
  /** By rising pulse, one for each pulse. */
  readonly points: readonly ReadingPoint[];
  readonly hysteresis: readonly Hysteresis[];
  readonly duplicates: readonly DuplicateProblem[];
}

/** Readings this near are at the same pulse: servo testers show whole microseconds. */
const SAME_PULSE_US = 0.5;
/**
 * An out and a back reading this near belong together: nobody dials the very same pulse twice.
 * Common practice, no source.
 */
const SAME_PAIR_US = 2;

/**
 * Sorts readings by pulse and makes one point of all at the same pulse: the middle of the mean out and the mean back
 * reading. Where they are not marked as both ways they are a duplicate, and the pulse yields no point. The order in which
 * the readings come makes no difference but to the indices.
 */
export function mergeReadings(readings: readonly ServoReading[]): MergedReadings {
  const points: ReadingPoint[] = [];
  const hysteresis: Hysteresis[] = [];
  const duplicates: DuplicateProblem[] = [];
  for (const group of groupByPulse(readings)) {
    const indices = group.map((reading) => reading.index);
    const out = group.filter((reading) => reading.way === "out");
    const back = group.filter((reading) => reading.way === "back");
    const [only, another] = group;
    if (only !== undefined && another === undefined) {
      points.push({ pulseUs: only.pulseUs, deflectionDeg: only.deflectionDeg, indices });
    } else if (out.length > 0 && back.length > 0 && out.length + back.length === group.length) {
      const pulseUs = (mean(out, "pulseUs") + mean(back, "pulseUs")) / 2;
      const [outDeg, backDeg] = [mean(out, "deflectionDeg"), mean(back, "deflectionDeg")];
      points.push({ pulseUs, deflectionDeg: (outDeg + backDeg) / 2, indices });
      hysteresis.push({ pulseUs, outDeg, backDeg, differenceDeg: outDeg - backDeg, indices });
    } else {
      const deflectionsDeg = group.map((reading) => reading.deflectionDeg);
      duplicates.push({ kind: "duplicate", pulseUs: mean(group, "pulseUs"), deflectionsDeg, indices });
    }
  }
  return { points, hysteresis, duplicates };
}

interface IndexedReading extends ServoReading {
  readonly index: number;
}

function groupByPulse(readings: readonly ServoReading[]): readonly (readonly IndexedReading[])[] {
  const sorted = readings.map((reading, index) => ({ ...reading, index })).sort(byPulse);
  const groups: IndexedReading[][] = [];
  for (const reading of sorted) {
    const group = groups.at(-1);
    if (group !== undefined && belongs(reading, group)) group.push(reading);
    else groups.push([reading]);
  }
  return groups;
}

function belongs(reading: IndexedReading, group: readonly IndexedReading[]): boolean {
  const first = group[0] ?? reading;
  const distanceUs = reading.pulseUs - first.pulseUs;
  if (distanceUs <= SAME_PULSE_US) return true;
  const isOtherWay = group.every((other) => other.way !== undefined && other.way !== reading.way);
  return distanceUs <= SAME_PAIR_US && reading.way !== undefined && isOtherWay;
}

/** By pulse, then deflection, so that sums come out the same whatever the order of the readings. */
function byPulse(one: IndexedReading, other: IndexedReading): number {
  return one.pulseUs - other.pulseUs || one.deflectionDeg - other.deflectionDeg || one.index - other.index;
}

function mean(readings: readonly IndexedReading[], key: "pulseUs" | "deflectionDeg"): number {
  return readings.reduce((sum, reading) => sum + reading[key], 0) / readings.length;
}
