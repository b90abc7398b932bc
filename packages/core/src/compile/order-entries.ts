import type { PlanChannel, PlanInTheMaking, PlanRadio, Setting } from "../plan/setup-plan.ts";
import { typedPercent } from "../plan/typed-percent.ts";
import { decimalsOf } from "../units/decimals.ts";

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

/** The entries of every channel of a plan. Without a procedure it may be a plan in the making. */
export function entriesOf({ channels, radio }: PlanInTheMaking): readonly ChannelEntries[] {
  return channels.map((channel) => channelEntries(channel, radio));
}

function channelEntries(channel: PlanChannel, radio: PlanRadio): ChannelEntries {
  const settings = readSettings(channel, radio);
  // A matched side may have been rounded with its twin: what its first detent says goes before the nearest value.
  const restsAt = firstDetents(settings);
  const resting = settings.filter((place) => isEmpty(place.when) && restsAt.has(place.key));
  const restPercent = resting[0]?.percent ?? typedPercent(channel.neutral, radio);
  return {
    channel: channel.channel,
    servos: channel.servos,
    labels: channel.labels ?? {},
    safeUs: channel.safeUs,
    lowPercent: channel.limits.low.percent,
    highPercent: channel.limits.high.percent,
    restPercent,
    restsAt: Object.fromEntries(resting.map(({ control, position }) => [control, String(position)])),
    places: buildPlaces(settings, restsAt, restPercent, radio),
    transits: longestTransits(channel),
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
 * Every place with what it adds to the places on which it builds: a place that needs a detent of another selector adds to what
 * that detent gives. A selector's first detent is where it rests and adds nothing.
 */
function buildPlaces(
  settings: readonly Place[],
  restsAt: ReadonlySet<string>,
  restPercent: number,
  radio: PlanRadio,
): readonly PlaceEntry[] {
  const built: PlaceEntry[] = [];
  const add = (place: Place) => {
    const base = Object.entries(place.when).reduce(
      (sum, [control, position]) =>
        sum + (built.find((one) => one.control === control && one.position === position)?.addPercent ?? 0),
      restPercent,
    );
    built.push({ ...place, addPercent: onStep(place.percent - base, radio) });
  };
  const plain = settings.filter(({ when }) => isEmpty(when));
  const conditional = settings.filter(({ when }) => !isEmpty(when));
  const detentsFirst = (a: Place, b: Place) => Number(!isDetent(a.position)) - Number(!isDetent(b.position));
  for (const place of plain.filter(({ key }) => !restsAt.has(key)).toSorted(detentsFirst)) add(place);
  for (const place of impliedPlaces(conditional, plain, restsAt)) add(place);
  for (const place of conditional.toSorted(detentsFirst)) add(place);
  // Under a condition even a zero counts: it stands in for the value without the condition.
  return built.filter((place) => place.addPercent !== 0 || (!isEmpty(place.when) && !restsAt.has(place.key)));
}

/** Detents that no setting states, but at which another selector, itself at rest, no longer gives what it gives at rest. */
function impliedPlaces(
  conditional: readonly Place[],
  plain: readonly Place[],
  restsAt: ReadonlySet<string>,
): readonly Place[] {
  const implied = new Map<string, Place>();
  for (const place of conditional) {
    const [needed, ...others] = Object.entries(place.when);
    if (needed === undefined || others.length > 0 || !restsAt.has(place.key)) continue;
    const [control, position] = needed;
    const stated = plain.some((one) => one.control === control && one.position === position);
    const key = placeKey(control, position, {});
    if (!stated) implied.set(key, { key, control, position, when: {}, percent: place.percent });
  }
  return [...implied.values()];
}

/** The keys of the first detent of every selector, under each of its conditions. */
function firstDetents(settings: readonly Place[]): ReadonlySet<string> {
  const first = new Map<string, string>();
  for (const place of settings) {
    if (!isDetent(place.position)) continue;
    const group = placeKey(place.control, "", place.when);
    if (!first.has(group)) first.set(group, place.key);
  }
  return new Set(first.values());
}

/** The longest transit of each control: what is typed is the time of its whole travel. */
function longestTransits({ transits = [] }: PlanChannel): ChannelEntries["transits"] {
  const longest = new Map<string, number>();
  for (const { control, seconds } of transits)
    longest.set(control, Math.max(seconds, longest.get(control) ?? 0));
  return [...longest].map(([control, seconds]) => ({ control, seconds }));
}

// The values are on the grid but for rounding errors of their difference.
function onStep(percent: number, { stepPercent }: PlanRadio): number {
  return Number(percent.toFixed(decimalsOf(stepPercent))) + 0;
}

function isDetent(position: string | -1 | 1): position is string {
  return typeof position === "string";
}

function isEmpty(when: Readonly<Record<string, string>>): boolean {
  return Object.keys(when).length === 0;
}
