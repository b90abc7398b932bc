import { longestTransits } from "../plan/longest-transits.ts";
import type { PlanChannel, PlanControl, PlanInTheMaking, PlanRadio, Setting } from "../plan/setup-plan.ts";
import { typedPercent } from "../plan/typed-percent.ts";
import { countingContributions } from "../transmitter/transmitter.ts";
import { roundToStep } from "../units/decimals.ts";

/** What one channel of a plan asks to enter. Positions are percents where limits clamp, shares between them where they scale. */
export interface ChannelEntries {
  readonly channel: number;
  readonly servos: readonly string[];
  readonly labels: Readonly<Record<string, string>>;
  readonly safeUs: readonly [number, number];
  readonly lowPercent: number;
  readonly highPercent: number;
  readonly restPercent: number;
  /** The detent at which each selector that moves the channel rests. */
  readonly restsAt: Readonly<Record<string, string>>;
  /** Detents and stick ends, those that others build on first. */
  readonly places: readonly PlaceEntry[];
  readonly transits: readonly { readonly control: string; readonly seconds: number }[];
  readonly failsafePercent: number;
}

export interface PlaceEntry {
  /** One for a control's position under its conditions. */
  readonly key: string;
  readonly control: string;
  readonly position: string | -1 | 1;
  readonly when: Readonly<Record<string, string>>;
  /** With every other control at rest. */
  readonly percent: number;
  readonly addPercent: number;
}

/** Where every control rests: a selector at its first detent, a stick at its centre (0) or a lever at its end. */
type AtRest = ReadonlyMap<string, string | number>;

/** The entries of every channel of a plan. Without a procedure it may be a plan in the making. */
export function entriesOf({ channels, controls, radio }: PlanInTheMaking): readonly ChannelEntries[] {
  const atRest: AtRest = new Map(controls.map((one) => [one.control, restOf(one)]));
  return channels.map((channel) => channelEntries(channel, atRest, radio));
}

function restOf(control: PlanControl): string | number {
  return control.kind === "selector" ? (control.detents[0] ?? "") : control.rests;
}

function channelEntries(channel: PlanChannel, atRest: AtRest, radio: PlanRadio): ChannelEntries {
  const settings = readSettings(channel, radio);
  const resting = settings.filter((place) => isEmpty(place.when) && isAtRest(place, atRest));
  const restPercent = typedPercent(channel.neutral, radio);
  const detents = resting.filter(({ position }) => isDetent(position));
  return {
    channel: channel.channel,
    servos: channel.servos,
    labels: channel.labels ?? {},
    safeUs: channel.safeUs,
    lowPercent: channel.limits.low.percent,
    highPercent: channel.limits.high.percent,
    restPercent,
    restsAt: Object.fromEntries(detents.map(({ control, position }) => [control, String(position)])),
    places: buildPlaces(settings, atRest, restPercent, radio),
    transits: longestTransits(channel.transits).map(({ control, seconds }) => ({ control, seconds })),
    failsafePercent: typedPercent(channel.failsafe, radio),
  };
}

type Place = Omit<PlaceEntry, "addPercent">;

function readSettings({ settings }: PlanChannel, radio: PlanRadio): readonly Place[] {
  const places = settings.map((setting): Place => {
    const { control, when = {}, enter } = setting;
    const percent = typedPercent(enter, radio);
    const position = positionOf(setting);
    return { key: placeKey(control, position, when), control, position, when, percent };
  });
  // A Y lead states every value once for each of its surfaces.
  return [...new Map(places.map((place) => [place.key, place])).values()];
}

function positionOf({ detent, stick = 1 }: Setting): string | -1 | 1 {
  return detent ?? stick;
}

function placeKey(control: string, position: string | -1 | 1, when: PlaceEntry["when"]): string {
  const conditions = Object.entries(when);
  if (conditions.length > 1) conditions.sort(([a], [b]) => (a < b ? -1 : 1));
  return JSON.stringify([control, position, conditions]);
}

/**
 * Every place with what it adds to the places on which it builds: a place that needs a detent of another selector adds to what the
 * channel stands at there, every other control at rest. Where a control rests it adds nothing.
 */
function buildPlaces(
  settings: readonly Place[],
  atRest: AtRest,
  restPercent: number,
  radio: PlanRadio,
): readonly PlaceEntry[] {
  const built: PlaceEntry[] = [];
  const add = (place: Place) => {
    const others = built.filter(({ control }) => control !== place.control);
    const base = restPercent + sumAt(others, new Map([...atRest, ...Object.entries(place.when)]));
    built.push({ ...place, addPercent: roundToStep(place.percent - base, radio.stepPercent) });
  };
  const plain = settings.filter((place) => isEmpty(place.when) && !isAtRest(place, atRest));
  const conditional = settings.filter(({ when }) => !isEmpty(when));
  for (const place of plain.toSorted(detentsFirst)) add(place);
  for (const place of impliedPlaces(settings, atRest)) add(place);
  for (const place of byDepth(conditional, atRest)) add(place);
  // Under a condition even a zero counts: it stands in for the value without the condition.
  return built.filter(
    (place) => place.addPercent !== 0 || (!isEmpty(place.when) && !isAtRest(place, atRest)),
  );
}

/** What the controls add together where they stand, by the rule of the transmitter. */
function sumAt(places: readonly PlaceEntry[], stands: ReadonlyMap<string, string | number>): number {
  return [...new Set(places.map(({ control }) => control))].reduce((sum, control) => {
    const own = places.filter((place) => place.control === control);
    const counting = countingContributions(own, (selector, detent) => stands.get(selector) === detent);
    return sum + (counting.find(({ position }) => position === stands.get(control))?.addPercent ?? 0);
  }, 0);
}

/**
 * Detents that no setting states, but at which another control, itself at rest, no longer gives what it gives at rest.
 */
function impliedPlaces(settings: readonly Place[], atRest: AtRest): readonly Place[] {
  const implied = new Map<string, Place>();
  for (const place of settings) {
    const [needed, ...others] = Object.entries(place.when);
    if (needed === undefined || others.length > 0 || !isAtRest(place, atRest)) continue;
    const [control, position] = needed;
    const stated = settings.some(
      (one) =>
        one.control === control &&
        one.position === position &&
        Object.entries(one.when).every(([selector, detent]) => atRest.get(selector) === detent),
    );
    const key = placeKey(control, position, {});
    if (!stated && atRest.get(control) !== position)
      implied.set(key, { key, control, position, when: {}, percent: place.percent });
  }
  return [...implied.values()];
}

/** Each after the places of the selectors that it needs; of equal depth those at rest first, then detents before sticks. */
function byDepth(conditional: readonly Place[], atRest: AtRest): readonly Place[] {
  const needs = new Map(conditional.map(({ control, when }) => [control, Object.keys(when)]));
  // In a document from elsewhere two may need each other: then neither is deeper.
  const depth = (control: string, above: readonly string[] = []): number => {
    const selectors = (needs.get(control) ?? []).filter((selector) => !above.includes(selector));
    return 1 + Math.max(0, ...selectors.map((selector) => depth(selector, [...above, control])));
  };
  const restFirst = (a: Place, b: Place) => Number(!isAtRest(a, atRest)) - Number(!isAtRest(b, atRest));
  return conditional.toSorted(
    (a, b) => depth(a.control) - depth(b.control) || restFirst(a, b) || detentsFirst(a, b),
  );
}

function detentsFirst(a: Place, b: Place): number {
  return Number(!isDetent(a.position)) - Number(!isDetent(b.position));
}

function isAtRest({ control, position }: Place, atRest: AtRest): boolean {
  return atRest.get(control) === position;
}

function isDetent(position: string | -1 | 1): position is string {
  return typeof position === "string";
}

function isEmpty(when: Readonly<Record<string, string>>): boolean {
  return Object.keys(when).length === 0;
}
