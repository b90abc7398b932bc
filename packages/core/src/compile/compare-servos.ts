import type { PlanGang } from "../plan/setup-plan.ts";
import { fightingTorque } from "../surface/fighting-torque.ts";
import { servoStiffness } from "../surface/stiffness.ts";
import { deg } from "../units/quantity.ts";
import { type Apart, furthestApart, type Side } from "./legs.ts";
import type { Motion } from "./output.ts";
import type { Report } from "./report.ts";
import { openPlaces } from "./yield-moves.ts";

/** Servos of one surface may pull against each other by so many degrees of deflection before it is worth a warning. (assumption of experience) */
const fightDeg = 0.5;
/** Points at which the pulses that belong together are stated, both ends of the common travel and its middle among them. */
const points = 9;

/**
 * For each surface with several servos, the pulses that belong together over its common travel, and how far apart the servos would
 * pull it on the way between the pulses that are entered.
 */
export function compareServos(
  motions: readonly Motion[],
  sides: readonly Side[],
  report: Report,
): PlanGang[] {
  return motions.flatMap((motion) => {
    const [first, ...others] = sides.filter(({ member }) => member.motion.name === motion.name);
    if (first === undefined || others.length === 0 || first.member.rig.travel.unit !== "deg") return [];
    const worst = others
      .flatMap((other) => furthestApart(first, other) ?? [])
      .reduce<ReturnType<typeof furthestApart>>(
        (a, b) => (a === undefined || Math.abs(b.value) > Math.abs(a.value) ? b : a),
        undefined,
      );
    const worstDeg = Math.abs(worst?.value ?? 0);
    const fightNm = worst === undefined ? undefined : fightOf(worst);
    if (worst !== undefined && worstDeg > fightDeg)
      report("servos-fight", ["surfaces", motion.name, "servos"], {
        surface: motion.name,
        worstDeg,
        from: worst.leg.from,
        to: worst.leg.to,
        placeDeg: worst.leg.places[0] * (1 - worst.at) + worst.leg.places[1] * worst.at,
      });
    return [
      {
        surface: motion.name,
        servos: motion.rigs.map(({ named }) => named.id),
        points: pulseTable(motion),
        worstDeg,
        ...(fightNm === undefined ? {} : { fightNm }),
      },
    ];
  });
}

/** The torque with which two servos strain against each other there; undefined where their types do not tell. */
function fightOf({ sides: [one, other], pulsesUs }: Apart): number | undefined {
  const types = [one, other].map(({ member }) => member.rig.named.servo.type);
  const [torque, otherTorque] = types.map((type) => type?.torque);
  const rotation = types[1]?.rotation;
  const place = one.member.rig.travel.placeAt(pulsesUs[0]);
  const wantsUs = place === undefined ? undefined : other.member.rig.travel.pulseAt(place);
  if (torque === undefined || otherTorque === undefined || rotation === undefined || wantsUs === undefined)
    return undefined;
  const mismatch = deg((wantsUs - pulsesUs[1]) * rotation);
  return fightingTorque(mismatch, [servoStiffness(torque), servoStiffness(otherTorque)]);
}

function pulseTable(motion: Motion): PlanGang["points"] {
  const [lowest, highest] = openPlaces(motion);
  return Array.from({ length: points }, (_, index) => {
    const share = index / (points - 1);
    const deflectionDeg = lowest * (1 - share) + highest * share;
    return {
      deflectionDeg,
      pulsesUs: motion.rigs.flatMap(({ travel }) => travel.pulseAt(deflectionDeg) ?? []),
    };
  });
}
