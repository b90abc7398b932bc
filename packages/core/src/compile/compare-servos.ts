import type { PlanGang } from "../plan/setup-plan.ts";
import { fightingTorque } from "../surface/fighting-torque.ts";
import { servoStiffness } from "../surface/stiffness.ts";
import { deg } from "../units/quantity.ts";
import { type Apart, furthestPair, type Side } from "./legs.ts";
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
    const own = sides.filter(({ member }) => member.motion.name === motion.name);
    if (own.length < 2 || motion.rigs[0].travel.unit !== "deg") return [];
    const worst = furthestPair(own);
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

/**
 * The torque with which two servos strain against each other there; undefined where their types do not tell. Of the angles by which
 * either shaft would have to turn to stand as the other wants it, the larger that is known.
 */
function fightOf({ sides: [one, other], pulsesUs: [oneUs, otherUs] }: Apart): number | undefined {
  const [torque, otherTorque] = [one, other].map(({ member }) => member.rig.named.servo.type?.torque);
  const turns = [turnTo(one, oneUs, other, otherUs), turnTo(other, otherUs, one, oneUs)];
  const known = turns.filter((turn) => turn !== undefined);
  if (torque === undefined || otherTorque === undefined || known.length === 0) return undefined;
  const mismatch = deg(Math.max(...known.map(Math.abs)));
  return fightingTorque(mismatch, [servoStiffness(torque), servoStiffness(otherTorque)]);
}

/** How far the shaft of `one` would turn to put the surface where `other` wants it, degrees. */
function turnTo(one: Side, oneUs: number, other: Side, otherUs: number): number | undefined {
  const { named, travel } = one.member.rig;
  const rotation = named.servo.type?.rotation;
  const place = other.member.rig.travel.placeAt(otherUs);
  const wantedUs = place === undefined ? undefined : travel.pulseAt(place);
  return rotation === undefined || wantedUs === undefined ? undefined : (wantedUs - oneUs) * rotation;
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
