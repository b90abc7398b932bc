import { radians } from "../numeric/angle.ts";
import { type Deg, deg, mm } from "../units/quantity.ts";
import { circleOf, pointOn } from "./circle.ts";
import type { Drive, DriveEnd, LinkageProblem } from "./drive.ts";
import { isLinkageProblem } from "./drive.ts";
import { findNonLength } from "./find-non-length.ts";
import type { Cables } from "./linkage.ts";
import { rodDrive } from "./rod-drive.ts";
import { type RodLoop, rodLoop } from "./rod-loop.ts";
import { toPoint, toStarboard, type Vector } from "./vector.ts";

/**
 * Two cables. The one that pulls acts as a rod, the other hangs; level is symmetric, so that negative rotations mirror
 * positive ones. Shaft at the origin, hinge aft of it; the cables lie in the plane of the view.
 */
export function cablesDrive(cables: Cables): Drive | LinkageProblem {
  const { arm, horn, base } = cables;
  const problem = findNonLength({ arm, horn, base });
  if (problem !== undefined) return problem;
  // Positive rotation takes the pin below the shaft forward: its cable pulls.
  const hornUpMm = cables.crossed === true ? horn : -horn;
  const armCircle = circleOf([0, 0, 0], toStarboard, [cables.armAft ?? 0, 0, -arm]);
  const hornCircle = circleOf([base, 0, 0], toStarboard, [base + (cables.hornAft ?? 0), 0, hornUpMm]);
  const pulling = rodLoop(armCircle, hornCircle);
  if (isLinkageProblem(pulling)) return pulling;
  if (!(pulling.shaftLeverAt(0, 0) < -1e-12 * arm)) return { kind: "deadCentreAtLevel" };
  return mirrored(pulling);
}

function mirrored(pulling: RodLoop): Drive {
  const drive = rodDrive(pulling);
  const end = drive.range.high;
  const mirror: DriveEnd = { ...end, rotation: negative(end.rotation), deflection: negative(end.deflection) };
  const fallsWithRotation = end.deflection < 0;
  const rotationAt = (deflection: Deg) => {
    const rotation = drive.rotationAt(deflection);
    // Beside level rounding carries a rotation a hair to the other side.
    return rotation === undefined ? undefined : deg(Math.max(0, rotation));
  };
  return {
    range: { low: mirror, high: end },
    deflectionAt: (rotation) => flip(drive.deflectionAt(positive(rotation)), rotation < 0),
    rotationAt: (deflection) =>
      deflection === 0
        ? deg(0)
        : deflection < 0 === fallsWithRotation
          ? rotationAt(deflection)
          : flip(rotationAt(negative(deflection)), true),
    rotationsAt: (deflection) => {
      if (deflection === 0) return [deg(0)];
      const ahead = drive.rotationsAt(deflection).filter((rotation) => rotation > 0);
      const back = drive.rotationsAt(negative(deflection)).filter((rotation) => rotation > 0);
      return [...back.map(negative).reverse(), ...ahead];
    },
    ratioAt: (rotation) => drive.ratioAt(positive(rotation)),
    rodsAt: (rotation) => {
      const rods = drive.rodsAt(positive(rotation));
      if (rods === undefined || rotation >= 0) return rods;
      return rods.map((rod) => ({
        ...rod,
        shaftLever: mm(-rod.shaftLever),
        surfaceLever: mm(-rod.surfaceLever),
      }));
    },
    slackAt: (rotation) => {
      const rotationRad = radians(positive(rotation));
      const deflectionRad = pulling.deflectionAt(rotationRad);
      if (deflectionRad === undefined) return undefined;
      // The hanging cable is the mirror image of the pulling one turned the other way.
      const excess = pulling.excessAt(-rotationRad, -deflectionRad);
      return mm(-excess / (pulling.rodMm + Math.sqrt(pulling.rodMm ** 2 + excess)));
    },
    drawingAt: (rotation) => {
      const deflection = flip(drive.deflectionAt(positive(rotation)), rotation < 0);
      return deflection === undefined
        ? undefined
        : drawingOf(pulling, radians(rotation), radians(deflection));
    },
  };
}

/** Pins of the cable that pulls at positive rotations, and their mirror images. */
function drawingOf(pulling: RodLoop, rotationRad: number, deflectionRad: number) {
  const reflect = ([aft, starboard, up]: Vector): Vector => [aft, starboard, -up];
  return {
    points: {
      shaft: toPoint(pulling.arm.centre),
      hinge: toPoint(pulling.horn.centre),
      armPin: toPoint(pointOn(pulling.arm, rotationRad)),
      hornPin: toPoint(pointOn(pulling.horn, deflectionRad)),
      otherArmPin: toPoint(reflect(pointOn(pulling.arm, -rotationRad))),
      otherHornPin: toPoint(reflect(pointOn(pulling.horn, -deflectionRad))),
    },
    segments: [
      { part: "arm", between: ["shaft", "armPin"] },
      { part: "arm", between: ["shaft", "otherArmPin"] },
      { part: "cable", between: ["armPin", "hornPin"] },
      { part: "cable", between: ["otherArmPin", "otherHornPin"] },
      { part: "horn", between: ["hinge", "hornPin"] },
      { part: "horn", between: ["hinge", "otherHornPin"] },
    ],
    from: "shaft",
    to: "hinge",
  } as const;
}

const negative = (angle: Deg): Deg => deg(angle === 0 ? 0 : -angle);
const positive = (angle: Deg): Deg => deg(Math.abs(angle));
const flip = (angle: Deg | undefined, turned: boolean) =>
  angle === undefined || !turned ? angle : negative(angle);
