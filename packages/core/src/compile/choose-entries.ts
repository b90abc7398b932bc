import type { Group } from "../model/model.ts";
import { INDISTINCT_DEG, roundJointly } from "../signal/round-jointly.ts";
import { pct } from "../units/quantity.ts";
import type { EnteredWish, ExactWish } from "./enter-wishes.ts";
import type { Entry } from "./entry-grid.ts";
import { wishKey } from "./list-wishes.ts";
import type { Output } from "./output.ts";

/**
 * The value to enter for every wish. Each is the nearest on the grid, but those of a matched group are chosen together,
 * so that left and right differ least.
 */
export function chooseEntries(
  exact: ReadonlyMap<Output, readonly ExactWish[]>,
  groups: Readonly<Record<string, Group>>,
): ReadonlyMap<Output, readonly EnteredWish[]> {
  const chosen = new Map<ExactWish, Entry>();
  for (const group of Object.values(groups))
    if (group.kind === "matched") chooseJointly(exact, group.surfaces, chosen);
  return new Map(
    [...exact].map(([output, wishes]) => {
      const atPlace = chosenAtPlaces(wishes, chosen);
      return [
        output,
        wishes.map((wish) => ({ ...wish, entry: atPlace.get(wish.wish.place) ?? wish.nearest })),
      ];
    }),
  );
}

/** Place -> value chosen there: a place that is asked for twice gets one value, even where the other side is asked for it once. */
function chosenAtPlaces(
  wishes: readonly ExactWish[],
  chosen: ReadonlyMap<ExactWish, Entry>,
): ReadonlyMap<number, Entry> {
  const entries = new Map<number, Entry>();
  for (const wish of wishes) {
    const entry = chosen.get(wish);
    if (entry !== undefined && !entries.has(wish.wish.place)) entries.set(wish.wish.place, entry);
  }
  return entries;
}

function chooseJointly(
  exact: ReadonlyMap<Output, readonly ExactWish[]>,
  surfaces: readonly string[],
  chosen: Map<ExactWish, Entry>,
): void {
  const outputs = [...exact.keys()].filter(
    ({ motion, travel }) => surfaces.includes(motion.name) && travel.unit === "deg",
  );
  for (const together of findTwins(outputs, exact)) {
    const [{ wish: first }] = together;
    const wanted = first.wish.place;
    const candidates = together.map(({ output, wish }) =>
      wish.around.map((entry) => ({
        entry,
        percent: pct(entry.percent),
        // Told from where each is wanted: two carriages that are as far out may differ by a hair in degrees.
        deflectionDeg: (output.travel.placeAt(entry.pulseUs) ?? wish.wish.place) - wish.wish.place + wanted,
      })),
    );
    roundJointly(candidates, wanted)?.chosen.forEach(({ entry }, index) => {
      const twin = together[index];
      if (twin !== undefined) chosen.set(twin.wish, entry);
    });
  }
}

interface Twin {
  readonly output: Output;
  readonly wish: ExactWish;
}

/** What the same control at the same place asks of several sides alike; a roll, which moves them apart, is none of it. */
function findTwins(
  outputs: readonly Output[],
  exact: ReadonlyMap<Output, readonly ExactWish[]>,
): readonly (readonly [Twin, ...Twin[]])[] {
  const found = new Map<string, [Twin, ...Twin[]][]>();
  for (const output of outputs)
    for (const wish of exact.get(output) ?? []) {
      const key = wishKey(wish.wish);
      const groups = found.get(key) ?? [];
      found.set(key, groups);
      const alike = groups.find(
        ([first]) => Math.abs(first.wish.wish.place - wish.wish.place) <= INDISTINCT_DEG,
      );
      if (alike === undefined) groups.push([{ output, wish }]);
      else alike.push({ output, wish });
    }
  return [...found.values()].flat().filter((together) => together.length > 1);
}
