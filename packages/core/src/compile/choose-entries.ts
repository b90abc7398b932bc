import type { Group } from "../model/model.ts";
import { roundJointly } from "../signal/round-jointly.ts";
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
    [...exact].map(([output, wishes]) => [
      output,
      wishes.map((wish) => ({ ...wish, entry: chosen.get(wish) ?? wish.nearest })),
    ]),
  );
}

function chooseJointly(
  exact: ReadonlyMap<Output, readonly ExactWish[]>,
  surfaces: readonly string[],
  chosen: Map<ExactWish, Entry>,
): void {
  const outputs = [...exact.keys()].filter(
    ({ motion, travel }) => surfaces.includes(motion.name) && travel.unit === "deg",
  );
  const twins = new Map<string, { output: Output; wish: ExactWish }[]>();
  for (const output of outputs)
    for (const wish of exact.get(output) ?? []) {
      // Only what asks the same of all sides must agree; a roll, which moves them apart, must not.
      const key = `${wishKey(wish.wish)} ${wish.wish.place}`;
      twins.set(key, [...(twins.get(key) ?? []), { output, wish }]);
    }
  for (const together of twins.values()) {
    const wanted = together[0]?.wish.wish.place;
    if (together.length < 2 || wanted === undefined) continue;
    const candidates = together.map(({ output, wish }) =>
      wish.around.map((entry) => ({
        entry,
        percent: pct(entry.percent),
        deflectionDeg: output.travel.placeAt(entry.pulseUs) ?? wanted,
      })),
    );
    roundJointly(candidates, wanted)?.chosen.forEach(({ entry }, index) => {
      const twin = together[index];
      if (twin !== undefined) chosen.set(twin.wish, entry);
    });
  }
}
