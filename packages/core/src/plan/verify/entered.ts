import { toPercent, toPulse } from "../../signal/percent.ts";
import { pulseToShare, shareToPulse } from "../../signal/share.ts";
import type { SignalScale } from "../../signal/signal-scale.ts";
import { pct, us } from "../../units/quantity.ts";
import { scaleOf } from "../scale-of.ts";
import type { PlanChannel, PlanRadio, Setting, SetupPlan } from "../setup-plan.ts";
import { restUs } from "./rest-pulse.ts";

/** What is typed for one channel: a fault is a change to it. Values are percents where limits clamp, shares between them where they scale. */
export interface Entered {
  readonly channel: number;
  readonly scale: SignalScale;
  readonly scaling: boolean;
  readonly lowPercent: number;
  readonly highPercent: number;
  /** The value of every control state that the plan states, by `stateKey`. */
  readonly values: ReadonlyMap<string, number>;
  readonly failsafe: number;
  /** Microseconds added to every position before the limits cut it. */
  readonly shiftUs: number;
  /** The output is turned about the centre after everything else. */
  readonly mirrored: boolean;
}

/** Pulses at the receiver, microseconds. */
export interface Sent {
  readonly lowUs: number;
  readonly highUs: number;
  readonly failsafeUs: number;
  readonly byState: ReadonlyMap<string, number>;
}

/** The key of the state in which every control is at rest. */
export const restKey = "rest";

/** Names the control state of a setting: the same text for settings that are read with all controls in the same place. */
export type StateKey = (setting: Omit<Setting, "exact" | "enter">) => string;

/** Channels as they are typed by someone who makes no slip. */
export function enteredOf(plan: SetupPlan): readonly Entered[] {
  const keyOf = stateKeys(plan);
  return plan.channels.map((channel) => enteredChannel(channel, plan.radio, keyOf));
}

/** Every selector's first detent is where it rests, so that it can be left out of a state. */
export function stateKeys({ channels }: SetupPlan): StateKey {
  const first = new Map<string, string>();
  for (const { control, detent, when } of channels.flatMap(({ settings }) => settings))
    if (detent !== undefined && when === undefined && !first.has(control)) first.set(control, detent);
  return ({ control, detent, stick, when = {} }) => {
    const moved = Object.entries({ ...when, [control]: detent ?? stick ?? 0 }).filter(
      ([name, at]) => first.get(name) !== at,
    );
    if (moved.length === 0) return restKey;
    return JSON.stringify(moved.sort(([a], [b]) => (a < b ? -1 : 1)));
  };
}

/** The pulses that these entries give. */
export function send(entered: Entered): Sent {
  const { scale, scaling, shiftUs, mirrored } = entered;
  const pulse = (percent: number): number => toPulse(scale, pct(percent));
  const turn = (pulseUs: number) => (mirrored ? pulse(-toPercent(scale, us(pulseUs))) : pulseUs);
  const ends = [pulse(entered.lowPercent), pulse(entered.highPercent)] as const;
  const [lowUs, highUs] = [Math.min(...ends), Math.max(...ends)];
  const position = (value: number) => {
    const shifted = (scaling ? shareToPulse(ends, value) : pulse(value)) + shiftUs;
    return turn(Math.min(Math.max(shifted, lowUs), highUs));
  };
  const turned = [turn(lowUs), turn(highUs)];
  return {
    lowUs: Math.min(...turned),
    highUs: Math.max(...turned),
    failsafeUs: turn(scaling ? shareToPulse(ends, entered.failsafe) : pulse(entered.failsafe)),
    byState: new Map([...entered.values].map(([key, value]) => [key, position(value)])),
  };
}

/** The value that gives a pulse between the limits as typed. */
export function valueAt({ scale, scaling, lowPercent, highPercent }: Entered, pulseUs: number): number {
  if (!scaling) return toPercent(scale, us(pulseUs));
  const limits = [toPulse(scale, pct(lowPercent)), toPulse(scale, pct(highPercent))] as const;
  // Limits that are one give every position the same pulse, whatever is typed.
  return pulseToShare(limits, pulseUs) ?? 0;
}

function enteredChannel(channel: PlanChannel, radio: PlanRadio, keyOf: StateKey): Entered {
  const { limits, settings, failsafe } = channel;
  const scaling = radio.endPoints === "scale";
  const blank: Entered = {
    channel: channel.channel,
    scale: scaleOf(radio),
    scaling,
    lowPercent: limits.low.percent,
    highPercent: limits.high.percent,
    values: new Map(),
    failsafe: 0,
    shiftUs: 0,
    mirrored: false,
  };
  const values = new Map([[restKey, valueAt(blank, restUs(channel))]]);
  for (const setting of settings) {
    const key = keyOf(setting);
    if (key !== restKey) values.set(key, scaling ? setting.enter.sharePercent : setting.enter.percent);
  }
  return { ...blank, values, failsafe: valueAt(blank, failsafe.pulseUs) };
}
