import type { Radio, Surface } from "../model/model.ts";
import { type EntryGrid, entryGrid } from "./entry-grid.ts";
import type { Move } from "./motion.ts";
import type { Report } from "./report.ts";
import type { Rig } from "./rig-servos.ts";
import { largestStepUs } from "./step-span.ts";
import { type Travel, travelOfMean } from "./travel.ts";

/** A surface with its servos and what its controls add to it. */
export interface Motion {
  readonly name: string;
  readonly surface: Surface;
  readonly rigs: readonly [Rig, ...Rig[]];
  readonly moves: readonly Move[];
}

/** A servo on a channel and the surface that it moves. */
export interface Member {
  readonly motion: Motion;
  readonly rig: Rig;
}

/** One channel: what it drives, the pulses it may send and the values that can be entered for them. */
export interface Output {
  readonly channel: number;
  /** One servo, or all that a Y lead joins. */
  readonly members: readonly [Member, ...Member[]];
  /** What the controls add; the same for all members. */
  readonly motion: Motion;
  /** Of the one servo; for a Y lead the mean of its surfaces. */
  readonly travel: Travel;
  readonly safeUs: readonly [number, number];
  readonly guardUs: readonly [number, number];
  readonly stopsUs: readonly [number, number];
  /** Pulses that are safe and measured: what a setting may be rounded to. */
  readonly openUs: readonly [number, number];
  /** The places of `openUs`, lowest and highest. */
  readonly openPlaces: readonly [number, number];
  readonly grid: EntryGrid;
  /** The channel is claimed by servos that cannot share it: its findings count, but it has no place in the plan. */
  readonly refused?: true;
}

/** One output a channel, in the order of the channels; a channel that cannot be used is reported and left out. */
export function makeOutputs(motions: readonly Motion[], radio: Radio, report: Report): Output[] {
  const byChannel = new Map<number, [Member, ...Member[]]>();
  for (const motion of motions)
    for (const rig of motion.rigs) {
      const { channel } = rig.named.servo;
      const others = byChannel.get(channel);
      if (others === undefined) byChannel.set(channel, [{ motion, rig }]);
      else others.push({ motion, rig });
    }
  return [...byChannel]
    .sort(([a], [b]) => a - b)
    .flatMap(([channel, members]) => {
      if (maySharePulse(channel, members, report)) return makeOutput(channel, members, radio, report) ?? [];
      // Looked at one by one all the same, so that this mistake hides no other.
      return members.flatMap((member) => {
        const output = makeOutput(channel, [member], radio, report);
        return output === undefined ? [] : { ...output, refused: true as const };
      });
    });
}

/** Whether one pulse can serve all members: a declared Y lead, the same moves, the same sense. */
function maySharePulse(
  channel: number,
  [first, ...others]: readonly [Member, ...Member[]],
  report: Report,
): boolean {
  return others.every((other) => {
    const facts = { channel, first: first.rig.named.id, second: other.rig.named.id };
    const at = [...other.rig.named.address, "channel"];
    if (first.rig.named.servo.yLead !== true || other.rig.named.servo.yLead !== true)
      report("channel-twice", at, facts);
    else if (JSON.stringify(first.motion.moves) !== JSON.stringify(other.motion.moves))
      report("y-lead-moves-differ", at, facts);
    else if (first.rig.travel.rising !== other.rig.travel.rising) report("y-lead-opposed", at, facts);
    else if (first.rig.travel.unit !== other.rig.travel.unit) report("y-lead-not-measured", at, facts);
    else return true;
    return false;
  });
}

function makeOutput(
  channel: number,
  members: readonly [Member, ...Member[]],
  radio: Radio,
  report: Report,
): Output | undefined {
  const [{ motion, rig }] = members;
  const rigs = members.map((member) => member.rig);
  const inner = (ranges: readonly (readonly [number, number])[]): readonly [number, number] => [
    Math.max(...ranges.map(([low]) => low)),
    Math.min(...ranges.map(([, high]) => high)),
  ];
  const safeUs = inner(rigs.map((one) => one.safeUs));
  const stopsUs = inner(rigs.map(({ bench }) => bench.stopsUs));
  const openUs = inner(rigs.map((one) => one.openUs));
  if (openUs[0] >= openUs[1]) {
    reportApart(channel, rigs, report);
    return undefined;
  }
  const travel =
    rigs.length === 1
      ? rig.travel
      : travelOfMean(
          rigs.map((one) => one.travel),
          openUs,
        );
  const grid = entryGrid(radio, safeUs);
  const lowPlace = travel.placeAt(openUs[0]);
  const highPlace = travel.placeAt(openUs[1]);
  if (grid === undefined || lowPlace === undefined || highPlace === undefined) {
    report("grid-empty", [...rig.named.address, "bench"], {
      lowUs: safeUs[0],
      highUs: safeUs[1],
      stepUs: largestStepUs(radio),
    });
    return undefined;
  }
  const guardUs = [safeUs[0] - stopsUs[0], stopsUs[1] - safeUs[1]] as const;
  const openPlaces = [Math.min(lowPlace, highPlace), Math.max(lowPlace, highPlace)] as const;
  return { channel, members, motion, travel, safeUs, guardUs, stopsUs, openUs, openPlaces, grid };
}

/** A Y lead whose servos have no pulse in common. */
function reportApart(channel: number, rigs: readonly Rig[], report: Report): void {
  const [highest] = rigs.toSorted((a, b) => b.openUs[0] - a.openUs[0]);
  const [lowest] = rigs.toSorted((a, b) => a.openUs[1] - b.openUs[1]);
  if (highest === undefined || lowest === undefined) return;
  report("y-lead-apart", [...highest.named.address, "channel"], {
    channel,
    first: lowest.named.id,
    endsUs: lowest.openUs[1],
    second: highest.named.id,
    beginsUs: highest.openUs[0],
  });
}
