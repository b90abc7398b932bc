import { addIntervals, hullOf, type Interval, joinIntervals } from "./interval.ts";
import { bend, passDevice, sendPulse } from "./shape-pulse.ts";
import {
  type ControlContribution,
  contributionsByControl,
  countingContributions,
  furthestPosition,
  type OutputMemory,
  restPosition,
  stickShare,
  type Transmitter,
} from "./transmitter.ts";

/**
 * The lowest and highest pulse, microseconds, between which an output stays whatever is done: all sticks with their trims, all
 * detents, all moments of a transit, power-up and failsafe, through the whole chain. Undefined for an output that the memory has not.
 */
export function reach(transmitter: Transmitter, output: number): Interval | undefined {
  const memory = transmitter.outputs[output];
  return memory === undefined ? undefined : reachOf(transmitter, memory);
}

/** The reach of an output for which this is set. */
export function reachOf(transmitter: Transmitter, memory: OutputMemory): Interval {
  const [low, high] = bendInterval(memory, sumInterval(transmitter, memory));
  // The pulse is monotone in the percent, rising or falling, so that its ends are at the ends.
  const sent = hullOf(sendPulse(transmitter, memory, low), sendPulse(transmitter, memory, high));
  const { failsafeUs, powerUpUs = failsafeUs } = memory;
  const received = joinIntervals(sent, hullOf(failsafeUs, powerUpUs));
  return memory.chain.reduce<Interval>((pulses, device) => {
    const [leastUs, mostUs] = device.kind === "adds" ? device.spanUs : [0, 0];
    return [passDevice(pulses[0], device, leastUs), passDevice(pulses[1], device, mostUs)];
  }, received);
}

/** Every sum of rest and contributions: for every standing of the selectors on which contributions depend, the sum of the hulls. */
function sumInterval(transmitter: Transmitter, memory: OutputMemory): Interval {
  const controls = [...contributionsByControl(memory)];
  return standings(memory)
    .map((standing) =>
      controls
        .map(([control, own]) => shareInterval(transmitter, memory, control, own, standing))
        .reduce(addIntervals, [memory.restPercent, memory.restPercent]),
    )
    .reduce(joinIntervals);
}

/** Selectors by the detent at which they stand; undefined: at one that no contribution names. */
type Standing = ReadonlyMap<string, string | undefined>;

function standings({ contributions }: OutputMemory): readonly Standing[] {
  const selectors = new Set<string>();
  for (const { when } of contributions) for (const selector of Object.keys(when)) selectors.add(selector);
  return [...selectors].reduce<readonly Standing[]>(
    (all, selector) => {
      const detents = new Set<string | undefined>([undefined]);
      for (const { control, position, when } of contributions) {
        if (control === selector && typeof position === "string") detents.add(position);
        if (Object.hasOwn(when, selector)) detents.add(when[selector]);
      }
      return all.flatMap((standing) => [...detents].map((detent) => new Map(standing).set(selector, detent)));
    },
    [new Map()],
  );
}

function shareInterval(
  transmitter: Transmitter,
  memory: OutputMemory,
  control: string,
  own: readonly ControlContribution[],
  standing: Standing,
): Interval {
  // On its way a share may come from any place at which a condition, since changed, had put it.
  if ((memory.transits[control] ?? 0) > 0)
    return wholeTravel(transmitter, control, own, (position) => [0, ...percentsAt(own, position)]);
  const counting = countingContributions(own, (selector, detent) => standing.get(selector) === detent);
  const values = (position: string | number | undefined) => {
    const found = percentsAt(counting, position);
    return found.length === 0 ? [0] : found;
  };
  if (!standing.has(control)) return wholeTravel(transmitter, control, counting, values);
  const [share = 0] = values(standing.get(control));
  return [share, share];
}

function percentsAt(
  contributions: readonly ControlContribution[],
  position: string | number | undefined,
): readonly number[] {
  return contributions.filter((one) => one.position === position).map(({ percent }) => percent);
}

/** Every share of a control that may stand anywhere; `valuesAt` -1 and +1 are all that its ends may give. */
function wholeTravel(
  transmitter: Transmitter,
  control: string,
  contributions: readonly ControlContribution[],
  valuesAt: (end: -1 | 1) => readonly number[],
): Interval {
  const detents = contributions.filter(({ position }) => typeof position === "string");
  // A selector is at no end of a stick: it adds what a detent does, or nothing.
  if (detents.length === contributions.length) return hullOf(0, ...detents.map(({ percent }) => percent));
  const furthest = furthestPosition(transmitter, control);
  const shares = valuesAt(-1).flatMap((low) =>
    valuesAt(1).flatMap((high) =>
      // In between a lever goes straight, and a stick bends at its centre.
      [-furthest, restPosition(transmitter, control), furthest].map((position) =>
        stickShare(transmitter, control, [low, high], position),
      ),
    ),
  );
  const [first = 0, ...others] = [...shares, ...detents.map(({ percent }) => percent)];
  return hullOf(first, ...others);
}

/** Of a line with bends the extremes lie at the ends or at the bends. */
function bendInterval(memory: OutputMemory, [low, high]: Interval): Interval {
  const bends = (memory.curve ?? []).filter(({ inputPercent }) => inputPercent > low && inputPercent < high);
  return hullOf(bend(memory, low), bend(memory, high), ...bends.map(({ percent }) => percent));
}
