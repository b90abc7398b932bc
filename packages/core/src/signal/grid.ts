import type { Percent, Us } from "../units/quantity.ts";
import { gridOf } from "./grid-multiples.ts";
import { toPercent, toPulse } from "./percent.ts";
import type { SignalScale } from "./signal-scale.ts";

/** Two pulses, the lower first, that no entered value may pass. */
export type PulseRange = readonly [low: Us, high: Us];

/** Lowest and highest of some percents. */
export interface PercentRange<Name extends string = string> {
  readonly low: Percent<Name>;
  readonly high: Percent<Name>;
}

/** Which way to round: to the nearest, a tie away from zero; or never down, or never up. */
export type Rounding = "nearest" | "up" | "down";

/**
 * A percent as the radio takes it: a whole multiple of the step, with the step's decimals (0.3, not 0.1 * 3), inside
 * the reach. Where the reach is no multiple of the step, the largest multiple inside it is the last. Undefined where
 * the percent is past the reach, or nothing inside the reach lies on the wanted side of it.
 */
export function roundPercent<Name extends string>(
  scale: SignalScale<Name>,
  percent: Percent<NoInfer<Name>>,
  rounding: Rounding,
): Percent<Name> | undefined {
  // The pulse at the reach comes back as a percent that may be past it in its last digits.
  if (Math.abs(percent) > scale.reach + scale.step * 1e-9) return undefined;
  const grid = gridOf(scale);
  const up = grid.first((multiple) => grid.percent(multiple) >= percent, percent);
  const down = grid.last((multiple) => grid.percent(multiple) <= percent, percent);
  const candidates = { up: [up], down: [down], nearest: [down, up] }[rounding].filter((n) => n !== undefined);
  return nearest(candidates.map(grid.percent), (value) => Math.abs(value - percent));
}

/**
 * The lowest and the highest percent that can be entered without leaving the range or the reach, both pulses really
 * inside as toPulse computes them. They are one and the same where only one value fits; undefined where none does.
 */
export function roundInward<Name extends string>(
  scale: SignalScale<Name>,
  range: PulseRange,
): PercentRange<Name> | undefined {
  const inside = multiplesInside(scale, range);
  if (inside === undefined) return undefined;
  const grid = gridOf(scale);
  return { low: grid.percent(inside.low), high: grid.percent(inside.high) };
}

/**
 * The percents that can be entered on either side of a pulse without leaving the range or the reach, in rising order:
 * two, or one where the pulse is on the grid or only one side has a value, or none. For a pulse outside the range or
 * the reach it is the one value at that end: whoever asks has to say so.
 */
export function gridNeighbours<Name extends string>(
  scale: SignalScale<Name>,
  pulse: Us,
  range: PulseRange,
): readonly Percent<Name>[] {
  const inside = multiplesInside(scale, range);
  if (inside === undefined) return [];
  const grid = gridOf(scale);
  const percent = toPercent(scale, pulse);
  const below = grid.last((multiple) => grid.pulseUs(multiple) <= pulse, percent) ?? inside.low;
  const above = grid.first((multiple) => grid.pulseUs(multiple) >= pulse, percent) ?? inside.high;
  const low = Math.max(inside.low, Math.min(inside.high, below));
  const high = Math.max(inside.low, Math.min(inside.high, above));
  // Where a step is too fine for the pulses to differ, below and above may change places.
  return low < high ? [grid.percent(low), grid.percent(high)] : [grid.percent(low)];
}

/**
 * The percent on the grid whose pulse is nearest to this one without leaving the range or the reach; a tie goes away
 * from zero. For a pulse outside the range it is the value at that end: whoever asks has to say so. Undefined where no
 * value fits into the range.
 */
export function roundInside<Name extends string>(
  scale: SignalScale<Name>,
  pulse: Us,
  range: PulseRange,
): Percent<Name> | undefined {
  return nearest(gridNeighbours(scale, pulse, range), (value) => Math.abs(toPulse(scale, value) - pulse));
}

/** The lowest and the highest multiple whose pulses are inside the range; undefined where none is. */
function multiplesInside<Name extends string>(
  scale: SignalScale<Name>,
  [lowUs, highUs]: PulseRange,
): { readonly low: number; readonly high: number } | undefined {
  const grid = gridOf(scale);
  const low = grid.first((multiple) => grid.pulseUs(multiple) >= lowUs, toPercent(scale, lowUs));
  const high = grid.last((multiple) => grid.pulseUs(multiple) <= highUs, toPercent(scale, highUs));
  return low === undefined || high === undefined || low > high ? undefined : { low, high };
}

/** The value of least distance, of equal ones the one further from zero. */
function nearest<Value extends number>(
  values: readonly Value[],
  distance: (value: Value) => number,
): Value | undefined {
  const ranked = values.toSorted((a, b) => distance(a) - distance(b) || Math.abs(b) - Math.abs(a));
  return ranked[0];
}
