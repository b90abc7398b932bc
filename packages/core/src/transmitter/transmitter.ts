import type { SignalScale } from "../signal/signal-scale.ts";

/**
 * How the limits of an output act on the sum of its contributions. `clamp`: they cut the sum, shift included. `clampAboutShift`:
 * they cut it before the shift is added, so that they move with it. `scale`: the sum is a share of the way between them (-100 at
 * the low one, +100 at the high one), and nothing holds a sum of more than 100.
 */
export type EndPoints = "clamp" | "clampAboutShift" | "scale";

/** One model memory of a transmitter with its receiver, as plain data: the least machine that has the trade's common settings. */
export interface Transmitter {
  readonly scale: SignalScale;
  readonly endPoints: EndPoints;
  /** Largest trim of each stick, percent of its travel to one side; none for a stick not named. */
  readonly trims: Readonly<Record<string, number>>;
  /** Where each stick rests: 0 at its centre, where not named too; a lever at the end -1 or +1. */
  readonly rests: Readonly<Record<string, -1 | 0 | 1>>;
  readonly outputs: Readonly<Record<number, OutputMemory>>;
}

/** What is set for one output. Percents are on the signal scale; where end points scale, sums are shares between the limits. */
export interface OutputMemory {
  /** The sum with every control at rest: a position, which the limits cut or scale. */
  readonly restPercent: number;
  readonly contributions: readonly ControlContribution[];
  /** Applied to the sum of rest and contributions; without one the sum passes as it is. */
  readonly curve?: readonly CurveKnot[];
  /** Centre shift. */
  readonly shiftPercent: number;
  readonly lowPercent: number;
  readonly highPercent: number;
  /** Mirrors the pulse about the scale's centre, after the limits: what was safe below is then above. */
  readonly reversed: boolean;
  /** Seconds in which a control's contribution goes from one value to another, by control; not named: at once. */
  readonly transits: Readonly<Record<string, number>>;
  /**
   * What the receiver sends when it loses the signal: the pulse that it has stored, which no limit of the transmitter holds. It keeps
   * it, off or on, until it is on and hears another.
   */
  readonly failsafeUs: number;
  /** What the receiver sends before it first hears the transmitter; absent: no pulses. */
  readonly powerUpUs?: number;
  /** Devices between receiver and servo, in the order in which the pulse passes them. */
  readonly chain: readonly Device[];
}

/**
 * What a control adds to the sum at one of its positions. A selector adds the value of its detent, nothing at a detent without
 * one; a stick goes from nothing at its centre straight to its value at -1 or +1, a lever straight from its value at one end to that
 * at the other; both on as far as their trim.
 */
export interface ControlContribution {
  readonly control: string;
  readonly position: string | -1 | 1;
  /** Detents of selectors at which it counts. Of a control's contributions whose detents stand, those that name most count. */
  readonly when: Readonly<Record<string, string>>;
  readonly percent: number;
}

/** One point of an output's curve: percent in, percent out. */
export interface CurveKnot {
  readonly inputPercent: number;
  readonly percent: number;
}

/** `adds`: may add any pulse span from low to high. `stops`: lets no pulse past; where it is the last, it owns the stops. */
export type Device =
  | { readonly kind: "adds"; readonly spanUs: readonly [low: number, high: number] }
  | { readonly kind: "stops"; readonly pulseUs: readonly [low: number, high: number] };

/** Where controls stand: a selector's detent, a stick's position with its trim added. A control not named is at rest. */
export type ControlPositions = Readonly<Record<string, string | number>>;

/** The contributions of one control that count, given which detents stand. */
export function countingContributions<One extends Pick<ControlContribution, "when">>(
  contributions: readonly One[],
  stands: (selector: string, detent: string) => boolean,
): readonly One[] {
  let most = 0;
  let counting: One[] = [];
  for (const one of contributions) {
    const conditions = Object.entries(one.when);
    if (conditions.length < most || !conditions.every(([selector, detent]) => stands(selector, detent)))
      continue;
    if (conditions.length > most) counting = [];
    most = conditions.length;
    counting.push(one);
  }
  return counting;
}

/** The contributions of each control that has any, in the order in which the controls first come. */
export function contributionsByControl({
  contributions,
}: OutputMemory): ReadonlyMap<string, readonly ControlContribution[]> {
  const grouped = new Map<string, ControlContribution[]>();
  for (const one of contributions) {
    const own = grouped.get(one.control);
    if (own === undefined) grouped.set(one.control, [one]);
    else own.push(one);
  }
  return grouped;
}

/** The largest position of a stick, its trim added: 1 without trim. */
export function furthestPosition({ trims }: Transmitter, stick: string): number {
  return 1 + (Object.hasOwn(trims, stick) ? (trims[stick] ?? 0) : 0) / 100;
}

/** Where a stick rests; a selector, whose detents have names, at 0. */
export function restPosition({ rests }: Transmitter, stick: string): -1 | 0 | 1 {
  return Object.hasOwn(rests, stick) ? (rests[stick] ?? 0) : 0;
}

/** What a stick adds at a position, percent: from its values at -1 and +1. */
export function stickShare(
  transmitter: Transmitter,
  stick: string,
  [low, high]: readonly [number, number],
  position: number,
): number {
  if (restPosition(transmitter, stick) !== 0) return (low * (1 - position) + high * (1 + position)) / 2;
  return position < 0 ? -position * low : position * high;
}
