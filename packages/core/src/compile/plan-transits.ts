import type { Model } from "../model/model.ts";
import type { Transit } from "../plan/setup-plan.ts";
import type { EnteredWish } from "./enter-wishes.ts";
import { detentsOf } from "./list-wishes.ts";
import type { Controls } from "./motion.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";

/**
 * The timed travel of every selector that has one, channel by channel. All channels that it moves take the stated time for the
 * longest way between two detents, never less than the slowest servo needs; for shorter ways the time goes with the pulse span. A
 * selector whose ways depend on the detent of another has no one longest way: it gets no transit, and a finding says so.
 */
export function planTransits(
  entered: ReadonlyMap<Output, readonly EnteredWish[]>,
  model: Model,
  controls: Controls,
  report: Report,
): ReadonlyMap<Output, readonly Transit[]> {
  const planned = new Map<Output, Transit[]>([...entered.keys()].map((output) => [output, []]));
  for (const [control, asked] of Object.entries(model.transit ?? {})) {
    const pulses = new Map([...entered].map(([output, wishes]) => [output, pulsesOf(wishes, control)]));
    const longest = longestWay(detentsOf(controls, control), [...pulses.values()]);
    if (longest === undefined) {
      const [per] = Object.keys(findConditional(entered, control)?.when ?? {});
      if (per !== undefined) report("transit-depends", ["transit", control], { control, per });
      continue;
    }
    const ways = [...pulses].flatMap(([output, own]) => wayOf(output, own, longest) ?? []);
    const slowest = ways.reduce<Way | undefined>(
      (a, b) => ((b.fastestSeconds ?? 0) > (a?.fastestSeconds ?? 0) ? b : a),
      undefined,
    );
    const seconds = Math.max(asked, slowest?.fastestSeconds ?? 0);
    if (seconds > asked && slowest !== undefined)
      report("transit-too-fast", ["transit", control], {
        control,
        askedSeconds: asked,
        fastestSeconds: seconds,
        servo: slowest.output.members[0].rig.named.id,
      });
    for (const way of ways)
      planned
        .get(way.output)
        ?.push(...legsOfWay(way, seconds, control, model).filter((leg) => leg.seconds > 0));
  }
  return planned;
}

interface Way {
  readonly output: Output;
  /** Detent -> pulse, in the order of the detents. */
  readonly pulses: readonly (readonly [detent: string, pulseUs: number])[];
  /** The common longest way, and what this channel goes on it. */
  readonly longest: readonly [string, string];
  readonly spanUs: number;
  readonly fastestSeconds: number | undefined;
}

/** Detent -> pulse, for a selector that moves the channel whatever the others do. */
function pulsesOf(wishes: readonly EnteredWish[], control: string): ReadonlyMap<string, number> {
  const own = wishes.filter(({ wish }) => wish.control === control && wish.when === undefined);
  return new Map(own.map(({ wish, entry }) => [wish.detent ?? "", entry.pulseUs]));
}

/** A wish of the selector that needs a detent of another one; undefined where the model has none. */
function findConditional(entered: ReadonlyMap<Output, readonly EnteredWish[]>, control: string) {
  const wishes = [...entered.values()].flat().map(({ wish }) => wish);
  return wishes.find(({ control: moved, when }) => moved === control && when !== undefined);
}

/** The two detents between which the channels have furthest to go together. */
function longestWay(
  detents: readonly string[],
  channels: readonly ReadonlyMap<string, number>[],
): readonly [string, string] | undefined {
  let longest: { readonly way: readonly [string, string]; readonly spanUs: number } | undefined;
  detents.forEach((from, index) => {
    for (const to of detents.slice(index + 1)) {
      const spanUs = channels.reduce((sum, pulses) => sum + spanOf(pulses, [from, to]), 0);
      if (spanUs > (longest?.spanUs ?? 0)) longest = { way: [from, to], spanUs };
    }
  });
  return longest?.way;
}

function spanOf(pulses: ReadonlyMap<string, number>, [from, to]: readonly [string, string]): number {
  const [fromUs, toUs] = [pulses.get(from), pulses.get(to)];
  return fromUs === undefined || toUs === undefined ? 0 : Math.abs(toUs - fromUs);
}

function wayOf(
  output: Output,
  pulses: ReadonlyMap<string, number>,
  longest: readonly [string, string],
): Way | undefined {
  const ownLongestUs = Math.max(...pulses.values()) - Math.min(...pulses.values());
  if (pulses.size < 2 || ownLongestUs === 0) return undefined;
  // A channel that stands still on the common longest way is timed by its own.
  const spanUs = spanOf(pulses, longest) || ownLongestUs;
  return { output, pulses: [...pulses], longest, spanUs, fastestSeconds: fastest(output, spanUs) };
}

/** The time that the slowest servo of a channel needs for a pulse span; undefined where its type does not tell. */
function fastest(output: Output, spanUs: number): number | undefined {
  const times = output.members.flatMap(({ rig }) => {
    const { rotation, speed } = rig.named.servo.type ?? {};
    return rotation === undefined || speed === undefined ? [] : [(spanUs * rotation) / speed];
  });
  return times.length === 0 ? undefined : Math.max(...times);
}

function legsOfWay(
  { output, pulses, longest, spanUs }: Way,
  seconds: number,
  control: string,
  { radio }: Model,
): Transit[] {
  const { per100 } = radio;
  const fullScaleUs = typeof per100 === "number" ? 2 * per100 : per100.below + per100.above;
  const usPerSecond = spanUs / seconds;
  const leg = (from: readonly [string, number], to: readonly [string, number]): Transit => {
    const legUs = Math.abs(to[1] - from[1]);
    const fastestSeconds = fastest(output, legUs);
    return {
      control,
      from: from[0],
      to: to[0],
      seconds: legUs / usPerSecond,
      secondsPerFullScale: fullScaleUs / usPerSecond,
      ...(fastestSeconds === undefined ? {} : { fastestSeconds }),
    };
  };
  const neighbours = pulses.slice(1).flatMap((to, index) => {
    const from = pulses[index];
    return from === undefined ? [] : [leg(from, to)];
  });
  const ends = longest.map((detent) => pulses.find(([name]) => name === detent));
  const [first, last] = ends;
  const isListed = pulses.some((one, index) => one === first && pulses[index + 1] === last);
  return first === undefined || last === undefined || isListed
    ? neighbours
    : [...neighbours, leg(first, last)];
}
