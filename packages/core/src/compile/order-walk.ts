import type { ChannelPulses, Edit, ProcedureStep } from "../plan/setup-plan.ts";
import { applyEdit } from "../transmitter/apply-edit.ts";
import { type Interval, isInside, joinIntervals } from "../transmitter/interval.ts";
import { outputs } from "../transmitter/outputs.ts";
import { reach } from "../transmitter/reach.ts";
import type { ControlPositions, Transmitter } from "../transmitter/transmitter.ts";
import { toTransmitterEdit } from "./order-edits.ts";

/** A step without what the simulated transmitter knows of it. */
export interface Draft extends Omit<ProcedureStep, "expect" | "reach"> {
  /** What must show on these channels at the end; left out: nothing is read. */
  readonly read?: { readonly channels: readonly number[]; readonly show: Shown };
}

/** The pulse with the controls there, the failsafe's, any that the channel can emit, or any that is safe. */
export type Shown = { readonly positions: ControlPositions } | "failsafe" | "reach" | "safe";

/** What one channel must never leave. */
export interface Bounds {
  /** With its linkage on. */
  readonly safeUs: Interval;
  /** With its servo alone. */
  readonly servoUs: Interval;
  /** How far a reading may be from what is expected. */
  readonly readingUs: number;
}

// The pulses of values on the grid differ from a safe end by rounding errors only.
const slackUs = 1e-9;

/**
 * The drafts as steps, executed one by one on the simulated transmitter. Undefined where a powered output could leave its bounds
 * before, after or during an edit: with linkages on the safe pulses, with none what a bare servo takes.
 */
export function walkOrder(
  drafts: readonly Draft[],
  start: Transmitter,
  bounds: ReadonlyMap<number, Bounds>,
): readonly ProcedureStep[] | undefined {
  const steps: ProcedureStep[] = [];
  let state = start;
  const now = new Map(reachOf(start, [...bounds.keys()]));
  let shown: ReadonlyMap<number, Interval> = new Map();
  for (const { read, ...step } of drafts) {
    for (const edit of step.edits) {
      const before = now.get(edit.channel);
      const after = reachAfter(state, edit);
      const emptied = edit.addPercent === undefined ? after : reachAfter(state, { ...edit, addPercent: 0 });
      state = applyEdit(state, toTransmitterEdit(edit));
      if (before === undefined || after === undefined || emptied === undefined) continue;
      now.set(edit.channel, after);
      // A value of a control that had none may start at nothing; every other is typed from the old one.
      const typed = joinIntervals(joinIntervals(before, after), emptied);
      if (!mayEmit(edit.channel, typed, step, bounds)) return undefined;
    }
    if (![...now].every(([channel, interval]) => mayEmit(channel, interval, step, bounds))) return undefined;
    const expect = (read?.channels ?? []).flatMap((channel) => {
      const bound = bounds.get(channel);
      const pulseUs = read === undefined ? undefined : showing(state, channel, read.show);
      return bound === undefined || pulseUs === undefined
        ? []
        : [{ channel, pulseUs: readable(pulseUs, bound) }];
    });
    steps.push({ ...step, expect, reach: changes(shown, now) });
    shown = new Map(now);
  }
  return steps;
}

/** What each of these channels can emit. */
export function reachOf(state: Transmitter, channels: readonly number[]): ReadonlyMap<number, Interval> {
  return new Map(
    channels.flatMap((channel) => {
      const interval = reach(state, channel);
      return interval === undefined ? [] : [[channel, interval] as const];
    }),
  );
}

function reachAfter(state: Transmitter, edit: Edit): Interval | undefined {
  return reach(applyEdit(state, toTransmitterEdit(edit)), edit.channel);
}

function mayEmit(
  channel: number,
  pulseUs: Interval,
  { supply, linkage }: Pick<Draft, "supply" | "linkage">,
  bounds: ReadonlyMap<number, Bounds>,
): boolean {
  const bound = bounds.get(channel);
  if (supply === "off" || bound === undefined) return true;
  return isInside(pulseUs, linkage === "on" ? bound.safeUs : bound.servoUs, slackUs);
}

function showing(state: Transmitter, channel: number, show: Shown): Interval | "safe" | undefined {
  if (show === "safe") return "safe";
  if (show === "reach") return reach(state, channel);
  const pulseUs =
    show === "failsafe" ? state.outputs[channel]?.failsafeUs : outputs(state, show.positions)[channel];
  return pulseUs === undefined ? undefined : [pulseUs, pulseUs];
}

/** What may be read of a pulse that is sent: as near as the meter tells, but however near, never past a safe pulse. */
function readable(pulseUs: Interval | "safe", { safeUs, readingUs }: Bounds): Interval {
  if (pulseUs === "safe") return safeUs;
  const [lowUs, highUs] = pulseUs;
  return [
    Math.max(lowUs - readingUs, Math.min(lowUs, safeUs[0])),
    Math.min(highUs + readingUs, Math.max(highUs, safeUs[1])),
  ];
}

function changes(
  before: ReadonlyMap<number, Interval>,
  now: ReadonlyMap<number, Interval>,
): readonly ChannelPulses[] {
  return [...now].flatMap(([channel, pulseUs]) => {
    const old = before.get(channel);
    return old?.[0] === pulseUs[0] && old[1] === pulseUs[1] ? [] : [{ channel, pulseUs }];
  });
}
