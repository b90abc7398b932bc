import { radians } from "../numeric/angle.ts";
import { deg, mm } from "../units/quantity.ts";
import type { Drive } from "./drive.ts";
import type { TorqueRod } from "./linkage.ts";
import { inView, toPoint } from "./vector.ts";

/** Length of the surface's chord in the picture, millimetres: the declaration has none. */
const drawnMm = 20;

/** Direct: degree for degree, half a turn either way. */
export function torqueRodDrive(torqueRod: TorqueRod): Drive {
  const ratio = torqueRod.sense === "same" ? 1 : -1;
  const turned = (angleDeg: number) => deg(angleDeg === 0 ? 0 : ratio * angleDeg);
  const within = (angleDeg: number) => Math.abs(angleDeg) <= 180;
  return {
    range: {
      low: { rotation: deg(-180), deflection: turned(-180), kind: "full" },
      high: { rotation: deg(180), deflection: turned(180), kind: "full" },
    },
    deflectionAt: turned,
    rotationAt: (deflection) => (within(deflection) ? turned(deflection) : undefined),
    rotationsAt: (deflection) => (within(deflection) ? [turned(deflection)] : []),
    ratioAt: () => ratio,
    rodsAt: () => [],
    drawingAt: (rotation) => ({
      points: {
        hinge: [mm(0), mm(0), mm(0)],
        trailingEdge: toPoint(inView(drawnMm, -radians(turned(rotation)))),
      },
      segments: [{ part: "surface", between: ["hinge", "trailingEdge"] }],
      from: "hinge",
      to: "hinge",
    }),
  };
}
