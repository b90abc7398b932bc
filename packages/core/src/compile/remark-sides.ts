import type { Model } from "../model/model.ts";
import type { ExactWish } from "./enter-wishes.ts";
import { describeWish, type Wish, wishKey } from "./list-wishes.ts";
import type { Motion, Output } from "./output.ts";
import type { Report } from "./report.ts";
import { openPlaces } from "./yield-moves.ts";

// Below this a mirrored copy would have been good enough to need no mention.
const worthMentionDeg = 0.5;

/** What matched sides do not share: a reach that one has and the other has not, a pulse that cannot be had by mirroring. */
export function remarkSides(
  motions: readonly Motion[],
  wishes: ReadonlyMap<Output, readonly Wish[]>,
  exact: ReadonlyMap<Output, readonly ExactWish[]>,
  model: Model,
  report: Report,
): void {
  for (const [group, declared] of Object.entries(model.groups ?? {})) {
    if (declared.kind !== "matched") continue;
    const members = motions.filter(({ name }) => declared.surfaces.includes(name));
    const outputs = [...wishes.keys()].filter(({ motion }) => declared.surfaces.includes(motion.name));
    remarkMirrored(members, report);
    remarkReach(group, members, outputs, wishes, exact, report);
    const [first, ...others] = outputs;
    if (first !== undefined)
      for (const other of others) remarkCopy(first, other, exact, model.radio.centre, report);
  }
}

/** Two sides declared to turn opposite ways with the same sense of pulse contradict each other, unless a linkage crosses over. */
function remarkMirrored(members: readonly Motion[], report: Report): void {
  const [first, ...others] = members.map(({ rigs: [rig] }) => rig);
  for (const other of others) {
    if (first === undefined) return;
    const turns = [first.named.servo.turns, other.named.servo.turns];
    const declaredOpposite = turns[0] !== undefined && turns[1] !== undefined && turns[0] !== turns[1];
    const linked = first.named.servo.linkage !== undefined || other.named.servo.linkage !== undefined;
    if (!declaredOpposite || linked || first.travel.rising !== other.travel.rising) continue;
    report("not-mirrored", [...other.named.address, "turns"], {
      first: first.named.id,
      second: other.named.id,
      pulse: first.travel.rising ? "rising" : "falling",
    });
  }
}

function remarkReach(
  group: string,
  members: readonly Motion[],
  outputs: readonly Output[],
  wishes: ReadonlyMap<Output, readonly Wish[]>,
  exact: ReadonlyMap<Output, readonly ExactWish[]>,
  report: Report,
): void {
  const reached = (output: Output, key: string) =>
    exact.get(output)?.some(({ wish }) => wishKey(wish) === key) === true;
  const [first] = outputs;
  if (first?.travel.unit !== "deg") return;
  for (const wish of wishes.get(first) ?? []) {
    const key = wishKey(wish);
    const short = outputs.filter((output) => !reached(output, key));
    if (short.length === 0 || short.length === outputs.length) continue;
    const names = [...new Set(short.map(({ motion }) => motion.name))];
    const ranges = members.map(openPlaces);
    report("one-side-short", ["groups", group], {
      group,
      what: describeWish(wish),
      short: names.length === 1 ? `${names[0]} alone` : names.join(" and "),
      lowestDeg: Math.max(...ranges.map(([low]) => low)),
      highestDeg: Math.min(...ranges.map(([, high]) => high)),
    });
  }
}

/** The detent at which the second side, set by mirroring the first about the centre pulse, would be furthest off. */
function remarkCopy(
  first: Output,
  second: Output,
  exact: ReadonlyMap<Output, readonly ExactWish[]>,
  centreUs: number,
  report: Report,
): void {
  if (first.travel.rising === second.travel.rising || second.travel.unit !== "deg") return;
  const misses = (exact.get(first) ?? []).flatMap(({ wish, exactUs }) => {
    const mirroredUs = 2 * centreUs - exactUs;
    const givesDeg = second.travel.placeAt(mirroredUs);
    const own = exact
      .get(second)
      ?.find((twin) => wishKey(twin.wish) === wishKey(wish) && twin.wish.place === wish.place);
    return givesDeg === undefined || own === undefined
      ? []
      : [{ wish, mirroredUs, givesDeg, missDeg: Math.abs(givesDeg - wish.place) }];
  });
  const worst = misses.toSorted((a, b) => b.missDeg - a.missDeg)[0];
  if (worst === undefined || worst.missDeg < worthMentionDeg) return;
  report("mirror-differs", second.members[0].rig.named.address, {
    first: first.motion.name,
    second: second.motion.name,
    what: describeWish(worst.wish),
    mirroredUs: worst.mirroredUs,
    givesDeg: worst.givesDeg,
    wantedDeg: worst.wish.place,
  });
}
