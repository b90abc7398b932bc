import type { Instruments, Model, Radio } from "../model/model.ts";
import { halfPulse } from "../response/half-pulse.ts";
import { nextReading } from "../response/next-reading.ts";
import { roundPercent } from "../signal/grid.ts";
import { toPercent, toPulse } from "../signal/percent.ts";
import { expand } from "../uncertainty/expand.ts";
import { pct, us } from "../units/quantity.ts";
import { doubtBetween } from "./doubt-between.ts";
import { readingDoubt } from "./doubts.ts";
import type { ExactWish } from "./enter-wishes.ts";
import { describeWish } from "./list-wishes.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";

// Below this the guess would have been good enough to need no mention.
const worthMentionDeg = 0.5;

/** What is worth knowing about a plan that is otherwise right. */
export function remark(exact: ReadonlyMap<Output, readonly ExactWish[]>, model: Model, report: Report): void {
  for (const [output, wishes] of exact) {
    remarkLimits(output, model.radio, report);
    remarkHalfPulse(output, wishes, report);
    remarkNextReading(output, wishes, model.instruments, report);
    remarkYLead(output, wishes, report);
  }
  if (model.failsafe === undefined && exact.size > 0) report("failsafe-missing", [], {});
}

/** The reading to take next, where the gaps between the readings cost more than the doubt of one. */
function remarkNextReading(
  { members: [{ rig }], motion: { surface } }: Output,
  wishes: readonly ExactWish[],
  instruments: Instruments | undefined,
  report: Report,
): void {
  // A fitted linkage knows the shape between the readings.
  if (rig.points === undefined || rig.linked?.response !== undefined) return;
  const doubt = readingDoubt(surface, instruments, rig.named.servo.bench.readings);
  const next = nextReading(
    rig.points,
    wishes.map(({ wish }) => wish.place),
    doubt,
  );
  if (next?.kind !== "gap") return;
  const {
    wantedDeg,
    gapDeg,
    readingDeg,
    pulseUs,
    betweenUs: [lowUs, highUs],
  } = next;
  report("read-more", [...rig.named.address, "bench", "readings"], {
    servo: rig.named.id,
    wantedDeg,
    gapDeg,
    readingDeg,
    lowUs,
    highUs,
    pulseUs,
  });
}

/** How far the surfaces of a Y lead stand apart at the setting where they differ most. */
function remarkYLead({ members, channel }: Output, wishes: readonly ExactWish[], report: Report): void {
  const [first, ...others] = members;
  if (others.length === 0 || first.rig.travel.unit !== "deg") return;
  const apart = wishes.flatMap(({ wish, nearest: { pulseUs } }) => {
    const places = members
      .flatMap(({ rig }) => {
        const place = rig.travel.placeAt(pulseUs);
        return place === undefined ? [] : [{ sent: [rig, pulseUs] as const, place }];
      })
      .sort((a, b) => a.place - b.place);
    const [lowest, highest] = [places[0], places.at(-1)];
    return lowest && highest ? [{ wish, lowest, highest, apartDeg: highest.place - lowest.place }] : [];
  });
  const worst = apart.toSorted((a, b) => b.apartDeg - a.apartDeg)[0];
  if (worst === undefined) return;
  const doubtDeg = expand(doubtBetween(worst.lowest.sent, worst.highest.sent, "yLead")?.standard ?? 0);
  if (worst.apartDeg > doubtDeg)
    report("y-lead-off", [...first.rig.named.address, "channel"], {
      channel,
      what: describeWish(worst.wish),
      apartDeg: worst.apartDeg,
      doubtDeg,
    });
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
    const reachUs = toPulse(radio, pct(-inward * radio.reach));
    const nearest = roundPercent(radio, toPercent(radio, us(safeUs[end])), "nearest");
    const name = end === 0 ? "low" : "high";
    // A hair's breadth, so that a reach that ends at the safe pulse is not short for a rounding error.
    if (inward * (reachUs - safeUs[end]) > 1e-9)
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
