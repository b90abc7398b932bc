import type { Radio } from "../model/model.ts";
import type { PercentPulse } from "../plan/setup-plan.ts";
import { gridNeighbours, roundInward, roundPercent } from "../signal/grid.ts";
import { toPercent, toPulse } from "../signal/percent.ts";
import { shareScale } from "../signal/share-scale.ts";
import type { SignalScale } from "../signal/signal-scale.ts";
import { pct, us } from "../units/quantity.ts";

/** A value that can be entered, and the pulse it gives. */
export interface Entry extends PercentPulse {
  /** Between the channel's low limit (-100) and high limit (+100). */
  readonly sharePercent: number;
}

/** What can be entered on one channel: its limits, and the values between them. */
export interface EntryGrid {
  readonly limits: { readonly low: PercentPulse; readonly high: PercentPulse };
  /** The value nearest to the pulse among those whose own pulse stays in the range; undefined where there is none. */
  nearest(pulseUs: number, rangeUs: readonly [number, number]): Entry | undefined;
  /** The values on either side of the pulse, inside the range: what joint rounding chooses from. */
  around(pulseUs: number, rangeUs: readonly [number, number]): readonly Entry[];
}

/**
 * The grid of one channel. Where limits clamp, an absolute percent is entered; where they scale, the share of the way
 * between the two limits; either in steps of the radio. Undefined where fewer than two values lie inside the safe pulses.
 */
export function entryGrid(radio: Radio, safeUs: readonly [number, number]): EntryGrid | undefined {
  const inside = roundInward(radio, [us(safeUs[0]), us(safeUs[1])]);
  if (inside === undefined || inside.low >= inside.high) return undefined;
  const limits = { low: withPulse(radio, inside.low), high: withPulse(radio, inside.high) };
  const lowUs = limits.low.pulseUs;
  const highUs = limits.high.pulseUs;
  const share: SignalScale = shareScale([lowUs, highUs], radio);
  const scaling = radio.endPoints === "scale";
  const dial = scaling ? share : radio;
  // At its ends a share is a limit, but its pulse as computed may be past it by a rounding error: it can be entered all the same.
  const endsUs = scaling ? ([toPulse(share, pct(-100)), toPulse(share, pct(100))] as const) : [lowUs, highUs];

  const entryAt = (value: number): Entry => {
    const pulseUs = us(Math.min(highUs, Math.max(lowUs, toPulse(dial, pct(value)))));
    if (scaling) return { percent: toPercent(radio, pulseUs), pulseUs, sharePercent: value };
    const exactShare = Math.min(100, Math.max(-100, toPercent(share, pulseUs)));
    return {
      percent: value,
      pulseUs,
      sharePercent: roundPercent(share, pct(exactShare), "nearest") ?? exactShare,
    };
  };
  const around = (pulseUs: number, rangeUs: readonly [number, number]): Entry[] => {
    const low = us(rangeUs[0] <= lowUs ? endsUs[0] : rangeUs[0]);
    const high = us(rangeUs[1] >= highUs ? endsUs[1] : rangeUs[1]);
    return low <= high ? gridNeighbours(dial, us(pulseUs), [low, high]).map(entryAt) : [];
  };
  const nearest = (pulseUs: number, rangeUs: readonly [number, number]): Entry | undefined => {
    const miss = (entry: Entry) => Math.abs(entry.pulseUs - pulseUs);
    const [first, second] = around(pulseUs, rangeUs);
    return first !== undefined && second !== undefined && miss(second) < miss(first) ? second : first;
  };
  return { limits, around, nearest };
}

function withPulse(radio: Radio, percent: number): PercentPulse {
  return { percent, pulseUs: toPulse(radio, pct(percent)) };
}
