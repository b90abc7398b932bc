import { radians } from "../numeric/angle.ts";
import { mm } from "../units/quantity.ts";
import { findMonotone } from "./branch.ts";
import { branchDrive } from "./branch-drive.ts";
import { pointOn } from "./circle.ts";
import type { Drive } from "./drive.ts";
import type { RodLoop } from "./rod-loop.ts";
import { toPoint } from "./vector.ts";

/** A rod between two balls as a drive. Planar and spatial kinds share it. */
export function rodDrive(loop: RodLoop): Drive {
  return {
    ...branchDrive(loop, findMonotone(loop)),
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
