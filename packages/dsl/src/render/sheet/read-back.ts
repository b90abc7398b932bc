import {
  type AsBuilt,
  type ChannelPlace,
  type DeflectionVerdict,
  type LineVerdict,
  type MatchVerdict,
  type Model,
  type PulseVerdict,
  type SetupPlan,
  type Verification,
  verify,
} from "@hingeline/core";
import { measuredDeflection } from "../measured-deflection.ts";
import { type SheetServo, settingKey } from "./servo-on-sheet.ts";

/** What belongs at every line of the plan, and where an as-built file was given what was read there and how it came out. */
export interface ReadBack {
  readonly verification: Verification;
  /** Absent on a sheet that is still to be filled in by hand. */
  readonly asBuilt?: AsBuilt;
  /** The verdicts on channels by where they belong; a setting stands under its key. */
  readonly pulses: ReadonlyMap<string, PulseVerdict>;
  readonly deflections: ReadonlyMap<string, DeflectionVerdict>;
}

const asBuiltHead = { format: "hingeline/as-built", version: 1 } as const;

/** A line of a channel: one that every channel has, or the key of a setting. */
export type LineName = ChannelPlace["kind"] | { readonly setting: string };

/** Holds the readings against the plan; without readings only what belongs where, all of it not measured. */
export function readBackOf(model: Model, plan: SetupPlan, asBuilt?: AsBuilt): ReadBack {
  const nothing: AsBuilt = { ...asBuiltHead, model: plan.model, plan: "", channels: [] };
  const verification =
    asBuilt === undefined
      ? verify(plan, nothing)
      : verify(plan, asBuilt, { deflectionAt: measuredDeflection(model) });
  const pulses = new Map<string, PulseVerdict>();
  const deflections = new Map<string, DeflectionVerdict>();
  for (const verdict of verification.verdicts) {
    if (verdict.quantity === "pulse") pulses.set(keyOf(verdict), verdict);
    if (verdict.quantity === "deflection") deflections.set(keyOf(verdict), verdict);
  }
  return { verification, pulses, deflections, ...(asBuilt === undefined ? {} : { asBuilt }) };
}

/** The verdicts on one line of a servo's channel; no deflection where no degrees are known. */
export function verdictsAt(
  { pulses, deflections }: ReadBack,
  { channel, described }: SheetServo,
  line: LineName,
): { readonly pulse?: PulseVerdict; readonly deflection?: DeflectionVerdict } {
  const key = lineKey(channel.channel, described.surface, line);
  const [pulse, deflection] = [pulses.get(key), deflections.get(key)];
  return { ...(pulse === undefined ? {} : { pulse }), ...(deflection === undefined ? {} : { deflection }) };
}

/** Everything that was judged about these servos: their channels' lines and, of two surfaces, left against right. */
export function verdictsOf(
  { verification }: ReadBack,
  servos: readonly SheetServo[],
): readonly LineVerdict[] {
  return verification.verdicts.filter((verdict) =>
    verdict.quantity === "match"
      ? isBetween(verdict, servos)
      : servos.some(({ channel }) => channel.channel === verdict.channel),
  );
}

function isBetween({ surfaces }: MatchVerdict, servos: readonly SheetServo[]): boolean {
  return surfaces.every((surface) => servos.some(({ described }) => described.surface === surface));
}

function keyOf({ channel, place }: PulseVerdict | DeflectionVerdict): string {
  return place.kind === "setting"
    ? lineKey(channel, place.surface, { setting: settingKey(place) })
    : lineKey(channel, "", place.kind);
}

function lineKey(channel: number, surface: string, line: LineName): string {
  return JSON.stringify(typeof line === "string" ? [channel, line] : [channel, surface, line.setting]);
}
