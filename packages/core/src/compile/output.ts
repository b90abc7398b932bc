import type { Radio, Surface } from "../model/model.ts";
import { type EntryGrid, entryGrid } from "./entry-grid.ts";
import type { Move } from "./motion.ts";
import type { Report } from "./report.ts";
import { largestStepUs } from "./resolve-bench.ts";
import type { Rig } from "./rig-servos.ts";
import type { Travel } from "./travel.ts";

/** A surface with its servos and what its controls add to it. */
export interface Motion {
  readonly name: string;
  readonly surface: Surface;
  readonly rigs: readonly [Rig, ...Rig[]];
  readonly moves: readonly Move[];
}

/** One channel: the motion that it drives, the pulses it may send and the values that can be entered for them. */
export interface Output {
  readonly channel: number;
  readonly motion: Motion;
  readonly rigs: readonly [Rig, ...Rig[]];
  readonly travel: Travel;
  readonly safeUs: readonly [number, number];
  readonly guardUs: readonly [number, number];
  readonly stopsUs: readonly [number, number];
  /** Pulses that are safe and measured: what a setting may be rounded to. */
  readonly openUs: readonly [number, number];
  /** The places of `openUs`, lowest and highest. */
  readonly openPlaces: readonly [number, number];
  readonly grid: EntryGrid;
}

/** Step 5: one output a channel, in the order of the channels; a channel that cannot be used is reported and left out. */
export function makeOutputs(motions: readonly Motion[], radio: Radio, report: Report): Output[] {
  const byChannel = new Map<number, { motion: Motion; rig: Rig }[]>();
  for (const motion of motions)
    for (const rig of motion.rigs) {
      const { channel } = rig.named.servo;
      byChannel.set(channel, [...(byChannel.get(channel) ?? []), { motion, rig }]);
    }
  return [...byChannel]
    .sort(([a], [b]) => a - b)
    .flatMap(([channel, members]) => {
      const [first, second] = members;
      if (first === undefined) return [];
      if (second !== undefined) {
        const both = members.every(({ rig }) => rig.named.servo.yLead === true);
        const at = [...second.rig.named.address, "channel"];
        if (both) report("not-handled", at, { what: "A Y lead" });
        else report("channel-twice", at, { channel, first: first.rig.named.id, second: second.rig.named.id });
        return [];
      }
      return makeOutput(channel, first.motion, first.rig, radio, report) ?? [];
    });
}

function makeOutput(
  channel: number,
  motion: Motion,
  rig: Rig,
  radio: Radio,
  report: Report,
): Output | undefined {
  const { bench, travel, named } = rig;
  const { safeUs, guardUs, stopsUs } = bench;
  const openUs = [Math.max(safeUs[0], travel.pulsesUs[0]), Math.min(safeUs[1], travel.pulsesUs[1])] as const;
  const grid = entryGrid(radio, safeUs);
  const lowPlace = travel.placeAt(openUs[0]);
  const highPlace = travel.placeAt(openUs[1]);
  if (grid === undefined || lowPlace === undefined || highPlace === undefined) {
    report("grid-empty", [...named.address, "bench"], {
      lowUs: safeUs[0],
      highUs: safeUs[1],
      stepUs: largestStepUs(radio),
    });
    return undefined;
  }
  const openPlaces = [Math.min(lowPlace, highPlace), Math.max(lowPlace, highPlace)] as const;
  return { channel, motion, rigs: [rig], travel, safeUs, guardUs, stopsUs, openUs, openPlaces, grid };
}
