import { powerOf } from "../numeric/power.ts";
import { decimalsOf } from "../units/decimals.ts";
import { type Percent, pct } from "../units/quantity.ts";
import { toPulse } from "./percent.ts";
import type { SignalScale } from "./signal-scale.ts";

/** The grid of a scale by whole numbers: multiple n is n steps, from -most to most, all inside the reach. */
export interface Grid<Name extends string> {
  /** The percent of a multiple, with the step's decimals: 0.3, not 0.1 * 3. */
  percent(multiple: number): Percent<Name>;
  /** The pulse of that percent, microseconds, exactly as toPulse computes it. */
  pulseUs(multiple: number): number;
  /** The lowest multiple for which `holds`; it has to hold from some percent on, that is about `nearPercent`. */
  first(holds: (multiple: number) => boolean, nearPercent: number): number | undefined;
  /** The highest multiple for which `holds`; it has to hold up to some percent, that is about `nearPercent`. */
  last(holds: (multiple: number) => boolean, nearPercent: number): number | undefined;
}

// A scale's grid never changes and is asked for at every rounding.
const grids = new WeakMap<SignalScale, Grid<never>>();

/** The grid of a scale without problems. */
export function gridOf<Name extends string>(scale: SignalScale<Name>): Grid<Name> {
  const known = grids.get(scale);
  if (known !== undefined) return known;
  const grid = makeGrid(scale);
  grids.set(scale, grid as Grid<never>);
  return grid;
}

function makeGrid<Name extends string>(scale: SignalScale<Name>): Grid<Name> {
  // One division of two whole numbers is rounded once, to the double that the decimal text stands for.
  const parts = powerOf(10, decimalsOf(scale.step));
  const partsPerStep = Math.round(scale.step * parts);
  // Adding 0 turns -0 into 0.
  const percent = (multiple: number): Percent<Name> => pct((multiple * partsPerStep) / parts + 0);
  const most = around(scale.reach / scale.step).findLast((multiple) => percent(multiple) <= scale.reach) ?? 0;
  const about = (nearPercent: number) =>
    around(Math.max(-most, Math.min(most, nearPercent / scale.step))).filter((n) => Math.abs(n) <= most);
  return {
    percent,
    pulseUs: (multiple) => toPulse(scale, percent(multiple)),
    first: (holds, nearPercent) => about(nearPercent).find(holds),
    last: (holds, nearPercent) => about(nearPercent).findLast(holds),
  };
}

/** The whole numbers about a quotient: floating point may put it past one of them, never past two. */
function around(quotient: number): readonly number[] {
  const middle = Math.round(quotient);
  return [middle - 2, middle - 1, middle, middle + 1, middle + 2];
}
