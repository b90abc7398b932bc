import { angleOfSine, radians } from "../numeric/angle.ts";
import { sinOf } from "../numeric/sine.ts";
import { rodForce } from "../surface/rod-force.ts";
import { bucklingForce } from "../surface/rod-strength.ts";
import { findWeakestPart } from "../surface/weakest-part.ts";
import { mm, newtons } from "../units/quantity.ts";
import type { EnteredWish } from "./enter-wishes.ts";
import { type Leverage, leverageAt } from "./leverage.ts";
import { describeWish } from "./list-wishes.ts";
import type { Output } from "./output.ts";
import type { MemberLoad } from "./plan-load.ts";
import type { Report } from "./report.ts";
import type { Rig } from "./rig-servos.ts";

/** Rod and arm, or rod and horn, should stand at least this far from a dead centre. (assumption of experience) */
const leastDeg = 20;
/** A ratio that grows by less than this is not worth a note. (assumption of experience) */
const worthNote = 1.25;

/** How the rods of a channel stand at every setting, and whether they and their parts hold. */
export function checkLeverage(
  output: Output,
  wishes: readonly EnteredWish[],
  loads: readonly MemberLoad[],
  report: Report,
): void {
  for (const { rig } of output.members) {
    if (rig.linked === undefined) continue;
    const stands = wishes.flatMap((entered) => {
      const leverage = leverageAt(rig, entered.entry.pulseUs);
      return leverage === undefined ? [] : [{ entered, leverage }];
    });
    reportNearest(rig, stands, report);
    reportFalling(rig, stands, report);
    checkStrength(rig, stands, loads, report);
  }
}

type Stand = { readonly entered: EnteredWish; readonly leverage: Leverage };

/** The setting at which rod and arm, or rod and horn, come nearest to one line. */
function reportNearest(rig: Rig, stands: readonly Stand[], report: Report): void {
  for (const [part, sine] of [
    ["arm", "sineAtArm"],
    ["horn", "sineAtHorn"],
  ] as const) {
    const [worst] = stands.toSorted((a, b) => (a.leverage.rod?.[sine] ?? 1) - (b.leverage.rod?.[sine] ?? 1));
    const least = worst?.leverage.rod?.[sine];
    if (worst === undefined || least === undefined || least >= sinOf(radians(leastDeg))) continue;
    report("near-dead-centre", [...rig.named.address, "linkage"], {
      servo: rig.named.id,
      what: describeWish(worst.entered.wish),
      angleDeg: angleOfSine(least),
      leastDeg,
      part,
    });
  }
}

/** The leverage at the place furthest from rest against that at rest. */
function reportFalling(rig: Rig, stands: readonly Stand[], report: Report): void {
  const rest = stands.find(({ entered }) => entered.wish.together === "rest");
  const [furthest] = stands.toSorted(
    (a, b) => Math.abs(b.entered.wish.place) - Math.abs(a.entered.wish.place),
  );
  const [restRod, furthestRod] = [rest?.leverage.rod, furthest?.leverage.rod];
  if (rest === undefined || furthest === undefined || restRod === undefined || furthestRod === undefined)
    return;
  if (
    furthest.leverage.ratio < worthNote * rest.leverage.ratio ||
    furthestRod.sineAtHorn >= restRod.sineAtHorn
  )
    return;
  report("leverage-falls", [...rig.named.address, "linkage"], {
    servo: rig.named.id,
    what: describeWish(furthest.entered.wish),
    levelDeg: angleOfSine(restRod.sineAtHorn),
    thereDeg: angleOfSine(furthestRod.sineAtHorn),
    levelRatio: rest.leverage.ratio,
    thereRatio: furthest.leverage.ratio,
  });
}

/** The largest force in flight and that of the stalled servo, against what rod and parts hold. */
function checkStrength(
  rig: Rig,
  stands: readonly Stand[],
  loads: readonly MemberLoad[],
  report: Report,
): void {
  const { rod, holds, type } = rig.named.servo;
  if (type?.torque === undefined || (rod === undefined && holds === undefined)) return;
  const torque = type.torque;
  const stalls = stands.map(({ leverage }) =>
    leverage.rod === undefined ? 0 : (rodForce(torque, mm(leverage.rod.shaftMm)) ?? 0),
  );
  const stallN = Math.max(0, ...stalls);
  const needsN = Math.max(
    0,
    ...loads.filter(({ member }) => member.rig === rig).map(({ load }) => load.rodN ?? 0),
  );
  if (rod !== undefined) {
    const bucklesN = bucklingForce(rod);
    if (bucklesN !== undefined && (stallN > bucklesN || needsN > bucklesN))
      report("rod-buckles", [...rig.named.address, "rod"], { servo: rig.named.id, bucklesN, stallN, needsN });
  }
  const parts = Object.entries(holds ?? {}).map(([name, holdsN]) => ({ name, holds: holdsN }));
  const weakest = findWeakestPart(newtons(Math.max(stallN, needsN)), parts);
  if (weakest !== undefined && weakest.share > 1)
    report("part-weak", [...rig.named.address, "holds", weakest.name], {
      servo: rig.named.id,
      part: weakest.name,
      holdsN: weakest.holds,
      stallN,
      needsN,
    });
}
