import type { ChannelPulses, Edit, ProcedureStep } from "../plan/setup-plan.ts";
import { editMemory } from "../transmitter/apply-edits.ts";
import { type Interval, isInside, joinIntervals } from "../transmitter/interval.ts";
import { pulseAt } from "../transmitter/outputs.ts";
import { reachOf } from "../transmitter/reach.ts";
import type { ControlPositions, OutputMemory, Transmitter } from "../transmitter/transmitter.ts";
import { toTransmitterEdit } from "./order-edits.ts";

/** A step without what the simulated transmitter knows of it. */
export interface Draft extends Omit<ProcedureStep, "expect" | "reach"> {
  /** What must show on these channels at the end; left out: nothing is read. */
  readonly read?: { readonly channels: readonly number[]; readonly show: Shown };
}

/** The pulse with the controls there, the failsafe's, any that the channel can emit or is asked for, or any that is safe. */
export type Shown = { readonly positions: ControlPositions } | "failsafe" | "reach" | "safe";

/** What one channel must never leave. */
export interface Bounds {
  /** With its linkage on. */
  readonly safeUs: Interval;
  /** With its servo alone. */
  readonly servoUs: Interval;
  /** What the plan's extremes ask: where a transmitter adds up in degrees, the ends of a sweep. */
  readonly askedUs: Interval;
  /** How far a reading may be from what is expected. */
  readonly readingUs: number;
}

// The pulses of values on the grid differ from a safe end by rounding errors only.
const slackUs = 1e-9;

/** One channel on its way through the steps. */
interface Walked {
  readonly channel: number;
  readonly bounds: Bounds;
  /** What is set for it now, and what it can emit with that. */
  memory: OutputMemory;
  reachUs: Interval;
  /** The reach that a step listed last. */
  listedUs?: Interval;
}

/**
 * The drafts as steps, executed one by one on the simulated transmitter. Undefined where a powered output could leave its bounds
 * before, after or during an edit: with linkages on the safe pulses, with none what a bare servo takes.
 */
export function walkOrder(
  drafts: readonly Draft[],
  start: Transmitter,
  bounds: ReadonlyMap<number, Bounds>,
): readonly ProcedureStep[] | undefined {
  const channels = startChannels(start, bounds);
  // Channels whose reach is to be listed, or proved with the linkages on or off, since they were edited: no step looks at the others.
  const unlisted = new Set(channels.values());
  const unproved = { on: new Set(channels.values()), off: new Set(channels.values()) };
  const steps: ProcedureStep[] = [];
  let unheard: readonly Edit[] = [];
  for (const step of drafts) {
    const { phase, supply, linkage, text, edits, read } = step;
    // A receiver that is off hears no failsafe: it keeps the one that it has stored until it is on.
    const isHeard = ({ set }: Edit) => supply === "on" || set !== "failsafe";
    const entered = [...unheard, ...edits];
    unheard = entered.filter((edit) => !isHeard(edit));
    for (const edit of entered.filter(isHeard)) {
      const own = channels.get(edit.channel);
      if (own === undefined) continue;
      if (!mayEmit(own, enter(start, own, edit), step)) return undefined;
      unlisted.add(own);
      unproved.on.add(own);
      unproved.off.add(own);
    }
    if (supply === "on") {
      for (const own of unproved[linkage]) if (!mayEmit(own, own.reachUs, step)) return undefined;
      unproved[linkage].clear();
    }
    const expect = (read?.channels ?? []).flatMap((channel) => {
      const own = channels.get(channel);
      return own === undefined || read === undefined
        ? []
        : [{ channel, pulseUs: readable(showing(start, own, read.show), own.bounds) }];
    });
    steps.push({ phase, supply, linkage, text, edits, expect, reach: listReach(unlisted) });
    unlisted.clear();
  }
  return steps;
}

function startChannels(start: Transmitter, bounds: ReadonlyMap<number, Bounds>): ReadonlyMap<number, Walked> {
  const channels = new Map<number, Walked>();
  for (const [channel, own] of bounds) {
    const memory = start.outputs[channel];
    if (memory !== undefined)
      channels.set(channel, { channel, bounds: own, memory, reachUs: reachOf(start, memory) });
  }
  return channels;
}

/** Makes the edit. All that the channel can emit before it, after it and while it is typed. */
function enter(transmitter: Transmitter, own: Walked, edit: Edit): Interval {
  const edited = (one: Edit) => editMemory(transmitter, own.memory, toTransmitterEdit(one));
  const before = own.reachUs;
  // A value of a control that had none may start at nothing; every other is typed from the old one.
  const emptied =
    edit.addPercent === undefined ? before : reachOf(transmitter, edited({ ...edit, addPercent: 0 }));
  own.memory = edited(edit);
  own.reachUs = reachOf(transmitter, own.memory);
  return joinIntervals(joinIntervals(before, own.reachUs), emptied);
}

function mayEmit(
  { bounds }: Walked,
  pulseUs: Interval,
  { supply, linkage }: Pick<Draft, "supply" | "linkage">,
): boolean {
  return supply === "off" || isInside(pulseUs, linkage === "on" ? bounds.safeUs : bounds.servoUs, slackUs);
}

function showing(
  transmitter: Transmitter,
  { memory, reachUs, bounds }: Walked,
  show: Shown,
): Interval | "safe" {
  if (show === "safe") return "safe";
  if (show === "reach") return joinIntervals(reachUs, bounds.askedUs);
  const pulseUs = show === "failsafe" ? memory.failsafeUs : pulseAt(transmitter, memory, show.positions);
  return [pulseUs, pulseUs];
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

/** The channels whose reach is another than the one last listed, as listed now. */
function listReach(channels: Iterable<Walked>): readonly ChannelPulses[] {
  const reach: ChannelPulses[] = [];
  for (const own of channels) {
    const { channel, reachUs, listedUs } = own;
    if (listedUs?.[0] === reachUs[0] && listedUs[1] === reachUs[1]) continue;
    own.listedUs = reachUs;
    reach.push({ channel, pulseUs: reachUs });
  }
  return reach;
}
