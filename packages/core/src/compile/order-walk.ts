import type { ChannelPulses, Edit, ProcedureStep } from "../plan/setup-plan.ts";
import { applyEdit } from "../transmitter/apply-edit.ts";
import { type Interval, isInside, joinIntervals } from "../transmitter/interval.ts";
import { outputs } from "../transmitter/outputs.ts";
import { reach } from "../transmitter/reach.ts";
import type { ControlPositions, Transmitter } from "../transmitter/transmitter.ts";
import { toTransmitterEdit } from "./order-edits.ts";

/** A step without what the simulated transmitter knows of it. */
export interface Draft extends Omit<ProcedureStep, "expect" | "reach"> {
  /** What must show on these channels; left out: nothing is read. */
  readonly read?: { readonly channels: readonly number[]; readonly show: Shown };
}

/** The pulses with the controls there, what the receiver does without a signal, everything the channel can emit, or safe pulses. */
export type Shown = { readonly positions: ControlPositions } | "failsafe" | "reach" | "safe";

/** What one channel must never leave. */
export interface Bounds {
  /** With its linkage on. */
  readonly safeUs: Interval;
  /** With its servo alone. */
  readonly servoUs: Interval;
  /** How far a reading may be from what is expected: half a step and 1 us of the meter. */
  readonly readingUs: number;
}

// Pulses of values on the grid differ from the safe end by rounding errors only.
const slackUs = 1e-9;

/**
 * The drafts as steps, executed one by one on the simulated transmitter. Undefined where powered outputs could leave their bounds
 * before, after or while an edit is typed: with a linkage on the safe pulses, with none what a bare servo takes.
 */
export function walkOrder(
  drafts: readonly Draft[],
  start: Transmitter,
  bounds: ReadonlyMap<number, Bounds>,
): readonly ProcedureStep[] | undefined {
  const steps: ProcedureStep[] = [];
  let state = start;
  let shown = new Map<number, Interval>();
  for (const draft of drafts) {
    for (const edit of draft.edits) {
      const next = applyEdit(state, toTransmitterEdit(edit));
      if (!allInside(whileTyped(state, next, edit, bounds), draft, bounds)) return undefined;
      state = next;
    }
    const now = reachOfAll(state, bounds);
    if (!allInside(now, draft, bounds)) return undefined;
    const { read, ...rest } = draft;
    const expect = read === undefined ? [] : read.channels.flatMap((channel) => expectOf(state, channel, read.show, bounds));
    steps.push({ ...rest, expect, reach: changesOf(shown, now) });
    shown = now;
  }
  return steps;
}

/** What all channels can emit. */
export function reachOfAll(
  state: Transmitter,
  channels: ReadonlyMap<number, unknown>,
): Map<number, Interval> {
  return new Map(
    [...channels.keys()].flatMap((channel) => {
      const interval = reach(state, channel);
      return interval === undefined ? [] : [[channel, interval] as const];
    }),
  );
}

/** What the edited channel can emit at any value between the old and the new one, and where a new value starts at 0. */
function whileTyped(
  before: Transmitter,
  after: Transmitter,
  edit: Edit,
  bounds: ReadonlyMap<number, Bounds>,
): Map<number, Interval> {
  const empty = edit.addPercent === undefined ? after : applyEdit(before, toTransmitterEdit({ ...edit, addPercent: 0 }));
  const typed = new Map<number, Interval>();
  for (const state of [before, empty, after])
    for (const [channel, interval] of reachOfAll(state, bounds))
      typed.set(channel, joinIntervals(interval, typed.get(channel) ?? interval));
  return typed;
}

function allInside(
  reaches: ReadonlyMap<number, Interval>,
  { supply, linkage }: Draft,
  bounds: ReadonlyMap<number, Bounds>,
): boolean {
  if (supply === "off") return true;
  return [...bounds].every(([channel, { safeUs, servoUs }]) => {
    const interval = reaches.get(channel);
    return interval === undefined || isInside(interval, linkage === "on" ? safeUs : servoUs, slackUs);
  });
}

function expectOf(
  state: Transmitter,
  channel: number,
  show: Shown,
  bounds: ReadonlyMap<number, Bounds>,
): ChannelPulses[] {
  const bound = bounds.get(channel);
  const pulses = reach(state, channel);
  if (bound === undefined || pulses === undefined) return [];
  const { safeUs, readingUs } = bound;
  if (show === "safe") return [{ channel, pulseUs: safeUs }];
  const pulseUs = show === "failsafe" ? state.outputs[channel]?.failsafeUs : show === "reach" ? undefined : outputs(state, show.positions)[channel];
  const [lowUs, highUs] = pulseUs === undefined ? pulses : [pulseUs, pulseUs];
  // A reading past a safe pulse is wrong however near it is.
  return [
    {
      channel,
      pulseUs: [Math.max(lowUs - readingUs, Math.min(lowUs, safeUs[0])), Math.min(highUs + readingUs, Math.max(highUs, safeUs[1]))],
    },
  ];
}

function changesOf(before: ReadonlyMap<number, Interval>, now: ReadonlyMap<number, Interval>): ChannelPulses[] {
  return [...now].flatMap(([channel, pulseUs]) => {
    const old = before.get(channel);
    return old !== undefined && old[0] === pulseUs[0] && old[1] === pulseUs[1] ? [] : [{ channel, pulseUs }];
  });
}
