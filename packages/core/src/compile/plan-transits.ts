import type { Model } from "../model/model.ts";
import type { Transit } from "../plan/setup-plan.ts";
import type { EnteredWish } from "./enter-wishes.ts";
import { detentsOf } from "./list-wishes.ts";
import type { Controls } from "./motion.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";

/**
 * Step 12: the timed travel of every selector that has one, channel by channel. All channels that it moves take the same time from the first
 * detent to the last, never less than the slowest servo needs; in between the time goes with the pulse span.
 */
export function planTransits(
  entered: ReadonlyMap<Output, readonly EnteredWish[]>,
  model: Model,
  controls: Controls,
  report: Report,
): ReadonlyMap<Output, readonly Transit[]> {
  const planned = new Map<Output, Transit[]>([...entered.keys()].map((output) => [output, []]));
  for (const [control, asked] of Object.entries(model.transit ?? {})) {
    const [first, ...later] = detentsOf(controls, control);
    const last = later.at(-1);
    if (first === undefined || last === undefined) continue;
    const ways = [...entered].flatMap(
      ([output, wishes]) => wayOf(output, wishes, control, first, last) ?? [],
    );
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
    for (const way of ways) planned.get(way.output)?.push(...legsOfWay(way, seconds, control, model));
  }
  return planned;
}

interface Way {
  readonly output: Output;
  /** Detent -> pulse, in the order of the detents. */
  readonly pulses: readonly (readonly [detent: string, pulseUs: number])[];
  readonly spanUs: number;
  readonly fastestSeconds: number | undefined;
}

function wayOf(
  output: Output,
  wishes: readonly EnteredWish[],
  control: string,
  first: string,
  last: string,
): Way | undefined {
  const own = wishes.filter(({ wish }) => wish.control === control && wish.when === undefined);
  const pulses = own.map(({ wish, entry }) => [wish.detent ?? "", entry.pulseUs] as const);
  const at = new Map(pulses);
  const [fromUs, toUs] = [at.get(first), at.get(last)];
  if (fromUs === undefined || toUs === undefined) return undefined;
  const longestUs = Math.max(...at.values()) - Math.min(...at.values());
  if (longestUs === 0) return undefined;
  return {
    output,
    pulses,
    spanUs: Math.abs(toUs - fromUs) || longestUs,
    fastestSeconds: fastest(output, longestUs),
  };
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
  { output, pulses, spanUs }: Way,
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
  const [first, last] = [pulses.at(0), pulses.at(-1)];
  return first === undefined || last === undefined || pulses.length <= 2
    ? neighbours
    : [...neighbours, leg(first, last)];
}
