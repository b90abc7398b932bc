import { type Bench, deg, mm, type Reading, us } from "@hingeline/core";
import type { Answer, Way } from "./parse-answer.ts";

/** Readings this near are at the same pulse: servo testers show whole microseconds. */
const samePulseUs = 0.5;
/** Another day's reading this near is the same one read again: nobody dials the very same pulse twice. Common practice, no source. */
const sameAgainUs = 2;

/**
 * The readings of a bench with one more. It takes the place of one at the same pulse and from the same side; in a list that goes
 * one way it stands where its pulse belongs, else at the end, so that the order of measuring is kept.
 * @param before the bench as it was when the session began
 */
export function enterReading(
  before: Bench,
  bench: Bench,
  { pulseUs, at }: Pick<Extract<Answer, { kind: "reading" }>, "pulseUs" | "at">,
  way: Way,
): { readonly readings: readonly Reading[]; readonly replaced?: string } | { readonly problem: string } {
  const readings = bench.readings ?? [];
  const isOld = (reading: Reading) => (before.readings ?? []).includes(reading);
  const distance = (reading: Reading) => Math.abs(reading[0] - pulseUs);
  const unmarked = readings.find(
    (one) => one[2] === undefined && distance(one) <= (isOld(one) ? sameAgainUs : samePulseUs),
  );
  if (way === "back" && unmarked !== undefined)
    return {
      problem: `The reading at ${unmarked[0]} us does not say from which side the servo came; read it on the way out again first, or type clear.`,
    };
  const next: Reading = [us(pulseUs), measuredAs(at, readings.length === 0 ? before : bench), way];
  const replaced =
    unmarked ??
    readings.find((one) => one[2] === way && distance(one) <= (isOld(one) ? sameAgainUs : samePulseUs));
  if (replaced !== undefined)
    return {
      readings: readings.map((one) => (one === replaced ? next : one)),
      replaced: describeReading(replaced),
    };
  const place = way === "back" ? readings.length : placeOf(readings, pulseUs);
  return { readings: [...readings.slice(0, place), next, ...readings.slice(place)] };
}

/** The readings without those at a pulse; undefined where there is none. */
export function dropReading({ readings = [] }: Bench, pulseUs: number): readonly Reading[] | undefined {
  const left = readings.filter(([pulse]) => Math.abs(pulse - pulseUs) > samePulseUs);
  return left.length === readings.length ? undefined : left;
}

/** "1857 us, 0.2 deg, back" */
function describeReading([pulse, at, way]: Reading): string {
  const read = typeof at === "number" ? `${at} deg` : `${at.mm} mm`;
  return [`${pulse} us`, read, ...(way === undefined ? [] : [way])].join(", ");
}

/** Millimetres are an extension on a bench that has been read so, and a throw on any other. */
function measuredAs(
  at: { readonly deg: number } | { readonly mm: number },
  { readings = [] }: Bench,
): Reading[1] {
  if ("deg" in at) return deg(at.deg);
  const isTrack = readings.some(([, one]) => typeof one === "object" && one.kind === "extension");
  return { kind: isTrack ? "extension" : "throw", mm: mm(at.mm) };
}

function placeOf(readings: readonly Reading[], pulseUs: number): number {
  const pulses = readings.map(([pulse]): number => pulse);
  const goes = (sign: 1 | -1) =>
    pulses.length > 1 && pulses.every((pulse, i) => i === 0 || sign * (pulse - (pulses[i - 1] ?? pulse)) > 0);
  if (readings.some(([, , way]) => way === "back")) return readings.length;
  const sign = goes(1) ? 1 : goes(-1) ? -1 : 0;
  const place = sign === 0 ? -1 : pulses.findIndex((pulse) => sign * (pulse - pulseUs) > 0);
  return place < 0 ? readings.length : place;
}
