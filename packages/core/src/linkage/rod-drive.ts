import { degrees, radians } from "../numeric/angle.ts";
import { deg, mm } from "../units/quantity.ts";
import { findMonotone, rotationInside, rotationsOn } from "./branch.ts";
import type { Drive } from "./drive.ts";
import { pointOn, type RodLoop } from "./rod-loop.ts";
import { toPoint } from "./vector.ts";

/** A rod between two balls as a drive. Planar and spatial kinds share it. */
export function rodDrive(loop: RodLoop): Drive {
  const monotone = findMonotone(loop);
  return {
    range: monotone.range,
    deflectionAt: (rotation) => {
      const deflectionRad = loop.deflectionAt(radians(rotation));
      return deflectionRad === undefined ? undefined : deg(degrees(deflectionRad));
    },
    rotationAt: (deflection) => {
      const rotationRad = rotationInside(loop, monotone, radians(deflection));
      return rotationRad === undefined ? undefined : deg(degrees(rotationRad));
    },
    rotationsAt: (deflection) =>
      rotationsOn(loop, radians(deflection)).map((rotationRad) => deg(degrees(rotationRad))),
    ratioAt: (rotation) => loop.ratioAt(radians(rotation)),
    rodsAt: (rotation) => {
      const rotationRad = radians(rotation);
      const deflectionRad = loop.deflectionAt(rotationRad);
      if (deflectionRad === undefined) return undefined;
      const shaftLeverMm = loop.shaftLeverAt(rotationRad, deflectionRad);
      const hornLeverMm = loop.hornLeverAt(rotationRad, deflectionRad);
      return [
        {
          shaftLever: mm(shaftLeverMm),
          surfaceLever: mm(hornLeverMm),
          sineAtArm: Math.min(1, Math.abs(shaftLeverMm) / loop.arm.radiusMm),
          sineAtHorn: Math.min(1, Math.abs(hornLeverMm) / loop.horn.radiusMm),
        },
      ];
    },
    drawingAt: (rotation) => {
      const rotationRad = radians(rotation);
      const deflectionRad = loop.deflectionAt(rotationRad);
      if (deflectionRad === undefined) return undefined;
      return {
        points: {
          shaft: toPoint(loop.arm.centre),
          armBall: toPoint(pointOn(loop.arm, rotationRad)),
          hornBall: toPoint(pointOn(loop.horn, deflectionRad)),
          hinge: toPoint(loop.horn.centre),
        },
        segments: [
          { part: "arm", between: ["shaft", "armBall"] },
          { part: "rod", between: ["armBall", "hornBall"] },
          { part: "horn", between: ["hinge", "hornBall"] },
        ],
        from: "shaft",
        to: "hinge",
      };
    },
  };
}
