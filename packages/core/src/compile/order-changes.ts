import { canonicalJson } from "../plan/canonical-json.ts";
import type { Edit, PlanInTheMaking, SetupPlan } from "../plan/setup-plan.ts";
import { limitEdits, placeEdit, transitEdits } from "./order-edits.ts";
import { type ChannelEntries, entriesOf, type PlaceEntry } from "./order-entries.ts";

/** A channel that has something to enter. */
export interface Change {
  readonly to: ChannelEntries;
  /** What is entered now; absent where the channel is entered from nothing. */
  readonly from?: ChannelEntries;
}

export interface Changes {
  readonly changed: readonly Change[];
  /** Channels of the old plan that the new one does not use. */
  readonly gone: readonly ChannelEntries[];
  /** Channels that stay as they are. */
  readonly kept: readonly ChannelEntries[];
}

/** What differs between what is entered and what is to be entered; without an old plan of the same radio, everything is new. */
export function listChanges(plan: PlanInTheMaking, from: SetupPlan | undefined): Changes {
  const sameRadio = from !== undefined && canonicalJson(from.radio) === canonicalJson(plan.radio);
  const old = new Map(sameRadio ? entriesOf(from).map((entries) => [entries.channel, entries]) : []);
  const changed: Change[] = [];
  const kept: ChannelEntries[] = [];
  for (const to of entriesOf(plan)) {
    const present = old.get(to.channel);
    old.delete(to.channel);
    if (present !== undefined && canonicalJson(present) === canonicalJson(to)) kept.push(to);
    else changed.push(present === undefined || !canChange(present, to) ? { to } : { to, from: present });
  }
  return { changed, gone: [...old.values()], kept };
}

/** Limits that both the old and the new plan allow. */
export function narrowLimits({ to, from = to }: Change): readonly [low: number, high: number] {
  return [Math.max(to.lowPercent, from.lowPercent), Math.min(to.highPercent, from.highPercent)];
}

/** The limits to these values, as far as they are not there already. */
export function limitChanges(
  channel: number,
  now: readonly [number, number],
  [low, high]: readonly [number, number],
): readonly Edit[] {
  return limitEdits(channel, low, high).filter(({ percent }, index, edits) => {
    const isLow = edits[index]?.set === "limitLow";
    return percent !== now[isLow ? 0 : 1];
  });
}

/** The edits of detents and stick ends, each with the place it belongs to; places that are no more add nothing from now on. */
export function placeChanges({
  to,
  from,
}: Change): readonly { readonly place: PlaceEntry; readonly edit: Edit }[] {
  const wanted = new Set(to.places.map(({ key }) => key));
  const old = new Map((from?.places ?? []).map((place) => [place.key, place]));
  const gone = [...old.values()]
    .filter(({ key }) => !wanted.has(key))
    .map((place) => ({ ...place, percent: to.restPercent, addPercent: 0 }));
  return [...gone, ...to.places]
    .filter((place) => {
      const present = old.get(place.key);
      return present === undefined || canonicalJson(present) !== canonicalJson(place);
    })
    .map((place) => ({ place, edit: placeEdit(to.channel, place) }));
}

/** The transits that differ; one that is no more takes no time from now on. */
export function transitChanges({ to, from }: Change): readonly Edit[] {
  const old = new Map((from?.transits ?? []).map(({ control, seconds }) => [control, seconds]));
  const wanted = new Set(to.transits.map(({ control }) => control));
  const gone = [...old.keys()]
    .filter((control) => !wanted.has(control))
    .map((control): Edit => ({ channel: to.channel, set: "transit", control, seconds: 0 }));
  const edits = transitEdits(to).filter(({ control = "", seconds }) => old.get(control) !== seconds);
  return [...gone, ...edits];
}

/**
 * Only the same servos can be changed in place, and only through limits that both plans allow. A value under a condition that is
 * no more cannot just be zero: without it the value without the condition would count again.
 */
function canChange(from: ChannelEntries, to: ChannelEntries): boolean {
  const [low, high] = narrowLimits({ to, from });
  const wanted = new Set(to.places.map(({ key }) => key));
  return (
    low < high &&
    canonicalJson([from.servos, from.labels]) === canonicalJson([to.servos, to.labels]) &&
    from.places.every((place) => Object.keys(place.when).length === 0 || wanted.has(place.key))
  );
}
