import type { Model, Radio } from "../model/model.ts";
import { halfPulse } from "../response/half-pulse.ts";
import { roundPercent } from "../signal/grid.ts";
import { toPercent, toPulse } from "../signal/percent.ts";
import { us } from "../units/quantity.ts";
import type { ExactWish } from "./enter-wishes.ts";
import { describeWish } from "./list-wishes.ts";
import type { Motion, Output } from "./output.ts";
import type { Report } from "./report.ts";

// Below this the guess would have been good enough to need no mention.
const worthMentionDeg = 0.5;

/** Step 10: what is worth knowing about a plan that is otherwise right. */
export function remark(
  motions: readonly Motion[],
  exact: ReadonlyMap<Output, readonly ExactWish[]>,
  model: Model,
  report: Report,
): void {
  for (const [output, wishes] of exact) {
    remarkLimits(output, model.radio, report);
    remarkHalfPulse(output, wishes, report);
  }
  for (const group of Object.values(model.groups ?? {}))
    if (group.kind === "matched")
      remarkMirrored(
        motions.filter(({ name }) => group.surfaces.includes(name)),
        report,
      );
}

/** Limits that end before what is safe, and limits that a careless rounding would put past a stop. */
function remarkLimits(
  { grid, safeUs, stopsUs, members: [{ rig }], travel }: Output,
  radio: Radio,
  report: Report,
): void {
  for (const end of [0, 1] as const) {
    const limit = end === 0 ? grid.limits.low : grid.limits.high;
    const stop = (end === 1) === travel.rising ? "down" : "up";
    const at = [...rig.named.address, "bench", stop];
    const inward = end === 0 ? 1 : -1;
    const next = limit.percent - inward * radio.step;
    const nearest = roundPercent(radio, toPercent(radio, us(safeUs[end])), "nearest");
    const name = end === 0 ? "low" : "high";
    if (Math.abs(next) > radio.reach)
      report("limit-short", at, {
        end: name,
        safeUs: safeUs[end],
        reachUs: limit.pulseUs,
        reachPercent: limit.percent,
      });
    else if (nearest !== undefined && inward * (toPulse(radio, nearest) - stopsUs[end]) < 0)
      report("limit-would-pass", at, {
        end: name,
        percent: limit.percent,
        nearestPercent: nearest,
        nearestUs: toPulse(radio, nearest),
        stopUs: stopsUs[end],
      });
  }
}

/** What half the pulses between the two detents furthest apart would have given. */
function remarkHalfPulse(
  { members: [{ rig }], motion }: Output,
  wishes: readonly ExactWish[],
  report: Report,
): void {
  const detents = wishes.filter(({ wish }) => wish.detent !== undefined && wish.when === undefined);
  const byPlace = detents.toSorted((a, b) => a.wish.place - b.wish.place);
  const [first, last] = [byPlace.at(0), byPlace.at(-1)];
  if (rig.response === undefined || first === undefined || last === undefined) return;
  const half = halfPulse(rig.response, us(first.exactUs), us(last.exactUs));
  if (half === undefined || Math.abs(half.errorDeg) < worthMentionDeg) return;
  report("half-the-pulses", rig.named.address, {
    surface: motion.name,
    from: describeWish(first.wish),
    to: describeWish(last.wish),
    halfUs: half.pulseUs,
    halfDeg: half.deflectionDeg,
    wantedDeg: half.wantedDeg,
  });
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
