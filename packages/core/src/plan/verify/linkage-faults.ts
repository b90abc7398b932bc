import { hypotOf } from "../../numeric/hypotenuse.ts";
import { nameChannel } from "../name-channel.ts";
import { type CauseFacts, medianOf, type Suspect } from "./hypothesis.ts";
import type { Observed } from "./observed.ts";
import { namePlace, settingKey } from "./place-words.ts";
import type { CauseKind } from "./verification.ts";

/** A fault behind the receiver: its pulses are right, the deflections are not. */
export interface LinkageFault extends CauseFacts {
  readonly kind: CauseKind;
  readonly channels: readonly number[];
}

type Line = Observed["deflections"][number];

/** One tooth of a spline of 20 to 26 teeth at 0.08 to 0.11 degrees per microsecond, as a pulse span. (common practice, no source) */
const toothUs = [125, 225] as const;
/** Below this a deflection says nothing about a ratio, degrees. */
const leastDeg = 3;

/** What would explain wrong deflections of a channel whose pulses are right, as far as they were read. */
export function linkageFaults(suspect: Suspect): readonly LinkageFault[] {
  const { plan, observed } = suspect;
  const { pulses, deflections } = observed;
  if (pulses.some(({ outcome }) => outcome === "differs")) return [];
  const differs = ({ outcome }: Line) => outcome === "differs";
  const [surface, ...more] = new Set(deflections.filter(differs).map(({ place }) => place.surface));
  if (surface === undefined || more.length > 0) return [];
  const lines = deflections.filter(
    ({ place, withinDeg }) => place.surface === surface && withinDeg !== undefined,
  );
  const facts = { channels: [plan.channel], where: nameChannel(plan) };
  return [
    ...reversed(lines),
    ...signLost(lines),
    ...toothOut(suspect, lines),
    ...zeroOff(lines),
    ...leverOther(lines),
    ...swapped(lines),
  ].map((fault) => ({ ...fault, ...facts }));
}

type Found = Omit<LinkageFault, "channels">;

function reversed(lines: readonly Line[]): readonly Found[] {
  return lines.every((line) => isNear(line, -line.expectedDeg)) ? [{ kind: "linkageReversed" }] : [];
}

/** One deflection written down with the other sign, all others right. */
function signLost(lines: readonly Line[]): readonly Found[] {
  const [wrong, ...more] = lines.filter(({ outcome }) => outcome === "differs");
  if (wrong === undefined || more.length > 0 || !isNear(wrong, -wrong.expectedDeg)) return [];
  return [{ kind: "readingSign", place: namePlace(wrong.place) }];
}

function zeroOff(lines: readonly Line[]): readonly Found[] {
  const offDeg = medianOf(lines.map(({ byDeg = 0 }) => byDeg));
  if (offDeg === undefined || lines.length < 2) return [];
  return lines.every((line) => isNear(line, line.expectedDeg + offDeg))
    ? [{ kind: "zeroOff", numbers: { offDeg } }]
    : [];
}

/** All deflections larger or smaller by one factor. */
function leverOther(lines: readonly Line[]): readonly Found[] {
  const large = lines.filter(({ expectedDeg }) => Math.abs(expectedDeg) >= leastDeg);
  const square = large.reduce((sum, { expectedDeg }) => sum + expectedDeg ** 2, 0);
  if (large.length === 0 || lines.length < 2) return [];
  const ratio = large.reduce((sum, { expectedDeg, readDeg }) => sum + expectedDeg * readDeg, 0) / square;
  if (ratio < 0.5 || ratio > 2) return [];
  return lines.every((line) => isNear(line, line.expectedDeg * ratio))
    ? [{ kind: "leverOther", numbers: { ratio } }]
    : [];
}

/** Two deflections of one surface written down in each other's place. */
function swapped(lines: readonly Line[]): readonly Found[] {
  const wrong = lines.filter(({ outcome }) => outcome === "differs");
  const [first, second] = wrong;
  if (first === undefined || second === undefined || wrong.length !== 2) return [];
  if (!isNear(first, second.expectedDeg) || !isNear(second, first.expectedDeg)) return [];
  return [{ kind: "readingsSwapped", place: namePlace(first.place), otherPlace: namePlace(second.place) }];
}

/** Every deflection is what the servo gives at a pulse off by the same span, about that of one tooth. */
function toothOut({ plan, observed }: Suspect, lines: readonly Line[]): readonly Found[] {
  const respond = observed.deflectionAt;
  if (respond === undefined) return [];
  const miss = (shiftUs: number): number | undefined => {
    const misses = lines.flatMap((line) => {
      const pulseUs = pulseOf(plan, line);
      const deg = pulseUs && respond(plan.channel, line.place.surface, pulseUs + shiftUs);
      return deg === undefined ? [] : [(line.readDeg - deg) / (line.withinDeg ?? 1)];
    });
    // Where the table ends nothing is known: such a setting neither speaks for the shift nor against it.
    if (misses.length === 0 || misses.some((one) => Math.abs(one) > 1)) return undefined;
    return hypotOf(...misses) / Math.sqrt(misses.length);
  };
  let best: { readonly shiftUs: number; readonly miss: number } | undefined;
  for (let sizeUs: number = toothUs[0]; sizeUs <= toothUs[1]; sizeUs++)
    for (const shiftUs of [sizeUs, -sizeUs]) {
      const found = miss(shiftUs);
      if (found !== undefined && found < (best?.miss ?? Infinity)) best = { shiftUs, miss: found };
    }
  return best === undefined ? [] : [{ kind: "armToothOut", numbers: { spanUs: best.shiftUs } }];
}

function pulseOf({ settings }: Suspect["plan"], { place }: Line): number | undefined {
  return settings.find((one) => settingKey(one) === settingKey(place))?.enter.pulseUs;
}

function isNear({ readDeg, withinDeg = 0 }: Line, expectedDeg: number): boolean {
  return Math.abs(readDeg - expectedDeg) <= withinDeg;
}
