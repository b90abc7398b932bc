import type { EnteredWish } from "./enter-wishes.ts";
import type { Wish } from "./list-wishes.ts";
import type { Member, Output } from "./output.ts";
import { doubtAt } from "./plan-doubt.ts";
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
  /** Standard doubt of either side there. */
  readonly doubts: readonly [number, number];
}

/** The sides of a channel, one for each of its servos. */
export function sidesOf(output: Output, entered: readonly EnteredWish[]): Side[] {
  const legs = legsOf(output, entered);
  return output.members.map((member) => ({ output, member, legs }));
}

/** The furthest that two sides come apart on any way on which both are asked for the same; undefined where there is none. */
export function furthestApart(one: Side, other: Side): Apart | undefined {
  const others = new Map(other.legs.map((leg) => [legKey(leg), leg]));
  let furthest: Apart | undefined;
  for (const leg of one.legs) {
    const twin = others.get(legKey(leg));
    if (twin === undefined) continue;
    const worst = worstDifference(
      (at) => placeOn(one, leg, at) - placeOn(other, twin, at),
      [...breaksOf(one, leg), ...breaksOf(other, twin)],
    );
    if (furthest === undefined || Math.abs(worst.value) > Math.abs(furthest.value))
      furthest = {
        ...worst,
        leg,
        sides: [one, other],
        doubts: [standardOn(one, leg, worst.at), standardOn(other, twin, worst.at)],
      };
  }
  return furthest;
}

function placeOn({ member }: Side, { pulsesUs: [fromUs, toUs] }: Leg, at: number): number {
  // Entered pulses lie inside the travel, and so does all between them.
  return member.rig.travel.placeAt(fromUs * (1 - at) + toUs * at) ?? 0;
}

function standardOn({ member }: Side, { pulsesUs: [fromUs, toUs] }: Leg, at: number): number {
  return doubtAt(member.rig, fromUs * (1 - at) + toUs * at)?.standard ?? 0;
}

function breaksOf({ member }: Side, { pulsesUs: [fromUs, toUs] }: Leg): number[] {
  return fromUs === toUs
    ? []
    : member.rig.travel.knotsUs.map((pulseUs) => (pulseUs - fromUs) / (toUs - fromUs));
}

/** From every detent to every later one, from a stick's rest to either end, from one end of a lever to the other. */
function legsOf(output: Output, entered: readonly EnteredWish[]): Leg[] {
  const stops = new Map<string, { name: string; place: number; pulseUs: number }[]>();
  for (const { wish, entry } of entered) {
    if (wish.together !== undefined) continue;
    const key = `${wish.control} ${JSON.stringify(wish.when ?? {})}`;
    const list = stops.get(key) ?? [];
    if (list.length === 0 && wish.stick !== undefined) {
      const restUs = output.travel.pulseAt(wish.restPlace);
      const rest = restUs === undefined ? undefined : output.grid.nearest(restUs, output.openUs);
      if (rest !== undefined)
        list.push({ name: `${wish.control} at rest`, place: wish.restPlace, pulseUs: rest.pulseUs });
    }
    list.push({ name: nameOf(wish), place: wish.place, pulseUs: entry.pulseUs });
    stops.set(key, list);
  }
  return [...stops.values()].flatMap((list) =>
    list.flatMap((from, index) =>
      list.slice(index).map((to) => ({
        from: from.name,
        to: to.name,
        places: [from.place, to.place] as const,
        pulsesUs: [from.pulseUs, to.pulseUs] as const,
      })),
    ),
  );
}

function nameOf({ control, detent, stick, when }: Wish): string {
  const others = Object.entries(when ?? {}).map(([name, value]) => `, ${name} ${value}`);
  return `${control} ${detent ?? (stick === 1 ? "+1" : "-1")}${others.join("")}`;
}

function legKey({ from, to, places }: Leg): string {
  return JSON.stringify([from, to, places]);
}
