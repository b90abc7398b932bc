import { scaleOf } from "../plan/scale-of.ts";
import type { Edit, PlanInTheMaking } from "../plan/setup-plan.ts";
import { applyEdits, type TransmitterEdit } from "../transmitter/apply-edits.ts";
import { factoryState } from "../transmitter/factory-state.ts";
import type { Transmitter } from "../transmitter/transmitter.ts";
import { type ChannelEntries, entriesOf, type PlaceEntry } from "./order-entries.ts";

/** One edit of a plan's procedure as the simulated transmitter takes it. */
export function toTransmitterEdit(edit: Edit): TransmitterEdit {
  const { channel: output, set, percent = 0, addPercent = 0, control = "", when = {} } = edit;
  switch (set) {
    case "neutral":
      return { output, set: "rest", percent };
    case "direction":
      return { output, set, reversed: false };
    case "detent":
    case "stick":
      return {
        output,
        set: "contribution",
        control,
        position: edit.detent ?? edit.stick ?? 1,
        when,
        percent: addPercent,
      };
    case "transit":
      return { output, set, control, seconds: edit.seconds ?? 0 };
    case "clear":
      return { output, set };
    default:
      return { output, set, percent };
  }
}

export function limitEdits(channel: number, lowPercent: number, highPercent: number): readonly Edit[] {
  const low: Edit = { channel, set: "limitLow", percent: lowPercent };
  const high: Edit = { channel, set: "limitHigh", percent: highPercent };
  // From 0 and 0 the limits never cross on their way.
  return lowPercent > 0 ? [high, low] : [low, high];
}

export function placeEdit(
  channel: number,
  { control, position, when, percent, addPercent }: PlaceEntry,
): Edit {
  return {
    channel,
    set: typeof position === "string" ? "detent" : "stick",
    control,
    ...(typeof position === "string" ? { detent: position } : { stick: position }),
    ...(Object.keys(when).length === 0 ? {} : { when }),
    percent,
    addPercent,
  };
}

export function restEdit({ channel, restPercent }: ChannelEntries): Edit {
  return { channel, set: "neutral", percent: restPercent };
}

export function failsafeEdit({ channel, failsafePercent }: ChannelEntries): Edit {
  return { channel, set: "failsafe", percent: failsafePercent };
}

export function transitEdits({ channel, transits }: ChannelEntries): readonly Edit[] {
  return transits.map(({ control, seconds }) => ({ channel, set: "transit", control, seconds }));
}

/**
 * A transmitter that nobody has touched, for these plans: the outputs of all, each stick as the first plan that has it says, and as
 * much travel as the radio has.
 */
export function factoryFor(plan: PlanInTheMaking, ...others: readonly PlanInTheMaking[]): Transmitter {
  const plans = [plan, ...others];
  const controls = plans.toReversed().flatMap((one) => one.controls);
  const sticks = controls.filter((control) => control.kind === "stick");
  return factoryState({
    scale: scaleOf(plan.radio),
    endPoints: plan.radio.endPoints,
    outputs: plans.flatMap(({ channels }) => channels.map(({ channel }) => channel)),
    trims: Object.fromEntries(sticks.map(({ control, trimPercent }) => [control, trimPercent])),
    rests: Object.fromEntries(sticks.map(({ control, rests }) => [control, rests])),
  });
}

/** The transmitter with everything of the plan's channels entered. */
export function enterChannels(transmitter: Transmitter, entries: readonly ChannelEntries[]): Transmitter {
  const edits = entries.flatMap((entry): readonly Edit[] => [
    { channel: entry.channel, set: "clear" },
    ...limitEdits(entry.channel, entry.lowPercent, entry.highPercent),
    restEdit(entry),
    ...entry.places.map((place) => placeEdit(entry.channel, place)),
    ...transitEdits(entry),
    failsafeEdit(entry),
  ]);
  return applyEdits(transmitter, edits.map(toTransmitterEdit));
}

/** The transmitter of a plan with all of it entered. */
export function enteredState(plan: PlanInTheMaking): Transmitter {
  return enterChannels(factoryFor(plan), entriesOf(plan));
}
