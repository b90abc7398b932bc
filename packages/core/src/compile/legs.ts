import { INDISTINCT_DEG } from "../signal/round-jointly.ts";
import type { EnteredWish } from "./enter-wishes.ts";
import { entryAt } from "./entry-at.ts";
import type { Wish } from "./list-wishes.ts";
import type { Member, Output } from "./output.ts";
import { type Worst, worstDifference } from "./worst-difference.ts";

/** The way of a channel from one setting to another, straight in pulse and in the same time on every channel. */
export interface Leg {
  readonly from: string;
  readonly to: string;
  readonly places: readonly [number, number];
  readonly pulsesUs: readonly [number, number];
}

/** A servo's member of a channel with the ways that the channel goes. */
export interface Side {
  readonly output: Output;
  readonly member: Member;
  readonly legs: readonly Leg[];
}

/** Where two sides are furthest apart, degrees. */
export interface Apart extends Worst {
  readonly leg: Leg;
  readonly sides: readonly [Side, Side];
  /** What either side is sent there. */
  readonly pulsesUs: readonly [number, number];
}

/** The sides of a channel, one for each of its servos. */
export function sidesOf(output: Output, entered: readonly EnteredWish[]): Side[] {
  const legs = legsOf(output, entered);
  return output.members.map((member) => ({ output, member, legs }));
}

/** The pair of sides that come furthest apart, of all pairs that `mayPair`; undefined where none is asked for the same. */
export function furthestPair(
  sides: readonly Side[],
  mayPair: (one: Side, other: Side) => boolean = () => true,
): Apart | undefined {
  let worst: Apart | undefined;
  sides.forEach((one, index) => {
    for (const other of sides.slice(index + 1)) {
      const apart = mayPair(one, other) ? furthestApart(one, other) : undefined;
      if (apart !== undefined && Math.abs(apart.value) > Math.abs(worst?.value ?? 0)) worst = apart;
      else worst ??= apart;
    }
  });
  return worst;
}

/** The furthest that two sides come apart on any way on which both are asked for the same; undefined where there is none. */
function furthestApart(one: Side, other: Side): Apart | undefined {
  const others = new Map(other.legs.map((leg) => [legKey(leg), leg]));
  let furthest: Apart | undefined;
  for (const leg of one.legs) {
    const twin = others.get(legKey(leg));
    if (twin === undefined || !asksSame(leg, twin)) continue;
    const worst = worstDifference(
      (at) => placeOn(one, leg, at) - placeOn(other, twin, at),
      [...breaksOf(one, leg), ...breaksOf(other, twin)],
    );
    if (furthest === undefined || Math.abs(worst.value) > Math.abs(furthest.value))
      furthest = {
        ...worst,
        leg,
        sides: [one, other],
        pulsesUs: [pulseOn(leg, worst.at), pulseOn(twin, worst.at)],
      };
  }
  return furthest;
}

function pulseOn({ pulsesUs: [fromUs, toUs] }: Leg, at: number): number {
  return fromUs * (1 - at) + toUs * at;
}

function placeOn({ member }: Side, leg: Leg, at: number): number {
  // Entered pulses lie inside the travel, and so does all between them.
  return member.rig.travel.placeAt(pulseOn(leg, at)) ?? 0;
}

function breaksOf({ member }: Side, { pulsesUs: [fromUs, toUs] }: Leg): number[] {
  return fromUs === toUs
    ? []
    : member.rig.travel.knotsUs.map((pulseUs) => (pulseUs - fromUs) / (toUs - fromUs));
}

/** A place on the way of a control: a detent, an end of a stick, or its rest. */
interface Halt {
  readonly name: string;
  readonly place: number;
  readonly pulseUs: number;
}

/** From every detent to every later one, from a stick's rest to either end, from one end of a lever to the other. */
function legsOf(output: Output, entered: readonly EnteredWish[]): Leg[] {
  const halts = new Map<string, { readonly wishes: EnteredWish[] }>();
  for (const one of entered) {
    if (one.wish.together !== undefined) continue;
    const key = `${one.wish.control} ${JSON.stringify(one.wish.when ?? {})}`;
    const known = halts.get(key);
    if (known === undefined) halts.set(key, { wishes: [one] });
    else known.wishes.push(one);
  }
  return [...halts.values()].flatMap(({ wishes }) => {
    const list = wishes.map(
      ({ wish, entry }): Halt => ({ name: nameOf(wish), place: wish.place, pulseUs: entry.pulseUs }),
    );
    const rest = restOf(output, wishes, entered);
    const pairs =
      rest === undefined
        ? list.flatMap((from, index) => list.slice(index).map((to) => [from, to] as const))
        : list.map((end) => [rest, end] as const);
    return pairs.map(([from, to]) => ({
      from: from.name,
      to: to.name,
      places: [from.place, to.place] as const,
      pulsesUs: [from.pulseUs, to.pulseUs] as const,
    }));
  });
}

/** Where a stick that centres rests; undefined for a selector, and for a lever, which rests at one of its ends. */
function restOf(
  output: Output,
  [first, second]: readonly EnteredWish[],
  entered: readonly EnteredWish[],
): Halt | undefined {
  const wish = first?.wish;
  if (wish?.stick === undefined) return undefined;
  if (wish.restPlace === wish.place || wish.restPlace === second?.wish.place) return undefined;
  const entry = entryAt(output, wish.restPlace, entered);
  return entry && { name: `${wish.control} at rest`, place: wish.restPlace, pulseUs: entry.pulseUs };
}

function nameOf({ control, detent, stick, when }: Wish): string {
  const others = Object.entries(when ?? {}).map(([name, value]) => `, ${name} ${value}`);
  return `${control} ${detent ?? (stick === 1 ? "+1" : "-1")}${others.join("")}`;
}

function legKey({ from, to }: Leg): string {
  return JSON.stringify([from, to]);
}

/** Two carriages that are as far out may differ by a hair in degrees. */
function asksSame({ places: [from, to] }: Leg, twin: Leg): boolean {
  const differences = [from - twin.places[0], to - twin.places[1]];
  return differences.every((difference) => Math.abs(difference) <= INDISTINCT_DEG);
}
