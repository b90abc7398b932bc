import { listWords, nameChannel } from "../plan/name-channel.ts";
import type { Edit, PlanRadio } from "../plan/setup-plan.ts";
import type { ControlPositions } from "../transmitter/transmitter.ts";
import {
  type Change,
  type Changes,
  limitChanges,
  narrowLimits,
  placeChanges,
  transitChanges,
} from "./order-changes.ts";
import { failsafeEdit, limitEdits, restEdit } from "./order-edits.ts";
import type { ChannelEntries, PlaceEntry } from "./order-entries.ts";
import type { Draft } from "./order-walk.ts";
import { nameChannels, namePlace } from "./order-words.ts";

export interface OrderFacts {
  readonly radio: PlanRadio;
  readonly changes: Changes;
  /** The linkages stay on. */
  readonly inPlace: boolean;
}

/** Make safe, and everything that is entered with the receiver off: until the limits are in, nothing holds an output. */
export function prepareSteps(facts: OrderFacts): Draft[] {
  const { radio, changes, inPlace } = facts;
  const { changed, gone } = changes;
  const linkage = inPlace ? "on" : "off";
  const all = changed.map(({ to }) => to);
  const fresh = changed.filter(({ from }) => from === undefined).map(({ to }) => to);
  const step = off("prepare", linkage);
  const forFresh = (phase: string, text: string, edits: (channel: number) => readonly Edit[]): Draft[] =>
    fresh.length === 0
      ? []
      : [{ ...off(phase, linkage), text, edits: fresh.flatMap(({ channel }) => edits(channel)) }];
  return [
    {
      ...step,
      text: "Switch the receiver off. Make the motor safe: propeller off or motor lead out, fuel off, model held.",
    },
    ...(all.length === 0
      ? []
      : [
          {
            ...step,
            text: inPlace
              ? `Join a pulse meter to ${nameChannels(all)} by a Y lead, beside the servos. Linkages stay on.`
              : `Unplug the servos of ${nameChannels(all)} from the receiver, or take their linkages off. Put a pulse meter in their place.`,
          },
        ]),
    ...gone.map((entries) => ({
      ...step,
      text: `Unplug ${nameChannel(entries)}: the plan no longer uses it.`,
    })),
    ...forFresh(
      "clear",
      fresh.length === changed.length && changes.kept.length === 0
        ? "Start a new, empty model memory: trims at zero, no mixes, curves straight, no transits."
        : `Empty ${nameChannels(fresh)}: trims at zero, no mixes, curves straight, no transits.`,
      (channel) => [{ channel, set: "clear" }],
    ),
    // Where limits scale, an empty output already stands at the middle of any limits.
    ...(radio.endPoints === "scale"
      ? []
      : forFresh(
          "collapse",
          `Set both limits of ${nameChannels(fresh)} to zero, or to the least that the radio takes.`,
          (channel) => limitEdits(channel, 0, 0),
        )),
    ...forFresh(
      "direction",
      `Set the direction of ${nameChannels(fresh)} so that a larger percent gives a longer pulse. Never change it after this.`,
      (channel) => [{ channel, set: "direction" }],
    ),
    ...changed.flatMap((change) => limitSteps(change, facts)),
  ];
}

/** What is entered with the receiver on, the limits holding: rest, then the places near rest before those further out. */
export function entrySteps(facts: OrderFacts): Draft[] {
  const { changes, inPlace } = facts;
  const { changed } = changes;
  if (changed.length === 0) return [];
  const linkage = inPlace ? "on" : "off";
  const channels = changed.map(({ to }) => to.channel);
  const step = { supply: "on", linkage } as const;
  const rest = changed.filter(({ to, from }) => from?.restPercent !== to.restPercent).map(({ to }) => to);
  const transits = changed.flatMap(transitChanges);
  const failsafe = changed.filter((change) => changesFailsafe(change, facts)).map(({ to }) => to);
  return [
    {
      ...step,
      phase: "power",
      text: "Switch the transmitter on with every control at rest, then the receiver. If a reading is not as stated, here or later: receiver off, and find out why.",
      edits: [],
      read: { channels, show: { positions: {} } },
    },
    ...(rest.length === 0
      ? []
      : [
          {
            ...step,
            phase: "rest",
            text: `With every control at rest${restingDetents(rest)}, enter each channel's value at rest.`,
            edits: rest.map(restEdit),
            read: { channels, show: { positions: {} } },
          },
        ]),
    ...placeSteps(changed).map(({ place, edits }) => ({
      ...step,
      phase: "positions",
      text: `Put ${namePlace(place)}, everything else at rest. Enter the value of each channel.`,
      edits,
      read: { channels: edits.map(({ channel }) => channel), show: { positions: positionsOf(place) } },
    })),
    ...(transits.length === 0
      ? []
      : [
          {
            ...step,
            phase: "transit",
            text: "Enter the transits, how slowly selectors move. They protect nothing: the limits do.",
            edits: transits,
          },
        ]),
    ...changed.flatMap((change) => widenSteps(change, facts)),
    ...(failsafe.length === 0
      ? []
      : [
          {
            ...step,
            phase: "failsafe",
            text: "Enter the failsafe of each channel.",
            edits: failsafe.map(failsafeEdit),
          },
        ]),
  ];
}

/** " (flap at level)", or nothing where no selector is known. */
function restingDetents(entries: readonly ChannelEntries[]): string {
  const detents = Object.assign({}, ...entries.map(({ restsAt }) => restsAt)) as Record<string, string>;
  const names = Object.entries(detents).map(([control, detent]) => `${control} at ${detent}`);
  return names.length === 0 ? "" : ` (${listWords(names)})`;
}

function off(phase: string, linkage: "on" | "off") {
  return { phase, supply: "off", linkage, edits: [] as readonly Edit[] } as const;
}

function limitSteps(change: Change, { radio, inPlace }: OrderFacts): Draft[] {
  const { to, from } = change;
  const scaling = radio.endPoints === "scale";
  const narrowing = from !== undefined && !scaling;
  const target = narrowing ? narrowLimits(change) : limitsOf(to);
  const edits =
    from === undefined ? limitEdits(to.channel, ...target) : limitChanges(to.channel, limitsOf(from), target);
  const text = narrowing
    ? `Narrow the limits of ${nameChannel(to)} to what both the old and the new plan allow.`
    : `Enter the limits of ${nameChannel(to)}.`;
  const after = scaling
    ? " Never change them after this: every position would move."
    : " They hold whatever is typed after this.";
  return edits.length === 0 ? [] : [{ ...off("limits", inPlace ? "on" : "off"), text: text + after, edits }];
}

function widenSteps(change: Change, { radio, inPlace }: OrderFacts): Draft[] {
  const { to, from } = change;
  if (from === undefined || radio.endPoints === "scale") return [];
  const edits = limitChanges(to.channel, narrowLimits(change), limitsOf(to));
  const step = { supply: "on", linkage: inPlace ? "on" : "off", phase: "limits" } as const;
  return edits.length === 0
    ? []
    : [{ ...step, text: `Widen the limits of ${nameChannel(to)} to those of the new plan.`, edits }];
}

function changesFailsafe({ to, from }: Change, { radio }: OrderFacts): boolean {
  // Where limits scale, the receiver's stored pulse is another share once they have changed.
  return from?.failsafePercent !== to.failsafePercent || radio.endPoints === "scale";
}

function limitsOf({
  lowPercent,
  highPercent,
}: {
  readonly lowPercent: number;
  readonly highPercent: number;
}) {
  return [lowPercent, highPercent] as const;
}

interface PlaceStep {
  readonly place: PlaceEntry;
  readonly edits: readonly Edit[];
}

/** One step for each position of a control, over all channels: detents before sticks, near ones before far ones. */
function placeSteps(changed: readonly Change[]): readonly PlaceStep[] {
  const steps = new Map<string, { place: PlaceEntry; edits: Edit[]; furthest: number }>();
  for (const change of changed)
    for (const { place, edit } of placeChanges(change)) {
      const step = steps.get(place.key) ?? { place, edits: [], furthest: 0 };
      step.edits.push(edit);
      step.furthest = Math.max(step.furthest, Math.abs(place.addPercent));
      steps.set(place.key, step);
    }
  const rank = ({ place: { position, when } }: PlaceStep) =>
    (typeof position === "string" ? 0 : 2) + (Object.keys(when).length === 0 ? 0 : 1);
  return [...steps.values()].sort((a, b) => rank(a) - rank(b) || a.furthest - b.furthest);
}

function positionsOf({ control, position, when }: PlaceEntry): ControlPositions {
  return { ...when, [control]: position };
}
