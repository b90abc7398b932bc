import type { Model } from "../model/model.ts";
import type { PlanMatch } from "../plan/setup-plan.ts";
import { expand } from "../uncertainty/expand.ts";
import { doubtBetween } from "./doubt-between.ts";
import { type Apart, furthestPair, type Side } from "./legs.ts";
import type { Report } from "./report.ts";

/**
 * How far the surfaces of each matched group differ, at the detents and anywhere on the way between them, on the pulses
 * that are entered: exact for responses from readings.
 */
export function compareSides(sides: readonly Side[], model: Model, report: Report): PlanMatch[] {
  return Object.entries(model.groups ?? {}).flatMap(([group, declared]) => {
    if (declared.kind !== "matched") return [];
    const members = declared.surfaces.flatMap((name) =>
      sides.filter(({ member: { motion, rig } }) => motion.name === name && rig.travel.unit === "deg"),
    );
    // Servos of one surface are compared by compareServos.
    const worst = furthestPair(members, (one, other) => one.member.motion.name !== other.member.motion.name);
    if (worst === undefined) return [];
    const surfaces = [worst.sides[0].member.motion.name, worst.sides[1].member.motion.name] as const;
    const worstDeg = Math.abs(worst.value);
    const uncertaintyDeg = expand(doubtBetweenSides(worst));
    const between = [worst.leg.from, worst.leg.to] as const;
    if (worstDeg > declared.within)
      report("sides-differ", ["groups", group], {
        first: surfaces[0],
        second: surfaces[1],
        worstDeg,
        withinDeg: declared.within,
        from: between[0],
        to: between[1],
        at: worst.at,
        placeDeg: worst.leg.places[0] * (1 - worst.at) + worst.leg.places[1] * worst.at,
      });
    else if (uncertaintyDeg > declared.within)
      report("match-unproven", ["groups", group], {
        first: surfaces[0],
        second: surfaces[1],
        withinDeg: declared.within,
        uncertaintyDeg,
      });
    return [{ group, withinDeg: declared.within, worstDeg, between, surfaces, at: worst.at, uncertaintyDeg }];
  });
}

function doubtBetweenSides({ sides: [one, other], pulsesUs: [oneUs, otherUs] }: Apart): number {
  return doubtBetween([one.member.rig, oneUs], [other.member.rig, otherUs], "channels")?.standard ?? 0;
}
