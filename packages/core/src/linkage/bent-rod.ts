import { radians } from "../numeric/angle.ts";
import { atan2Of } from "../numeric/arc.ts";
import { cosOf, sinOf } from "../numeric/sine.ts";
import { type Branch, findMonotone } from "./branch.ts";
import { branchDrive, toDeg } from "./branch-drive.ts";
import type { Drive, LinkageProblem } from "./drive.ts";
import type { BentRod } from "./linkage.ts";
import { solveAngle } from "./solve-angle.ts";
import { toPoint } from "./vector.ts";

/** Lengths of the wire and its tip in the picture, millimetres: the declaration has none. */
const drawnMm = 30;
const drawnTipMm = 20;

/**
 * Degrees that the tip must keep from the hinge line. Nearer than that, rounding decides where the surface turns back;
 * who measures a wire finds it on the line or far more than that off it.
 */
const leastOffHingeDeg = 1e-9;

/** A bent rod as sines and cosines. */
interface Bent {
  /** +1 for a tip to port, -1 for one to starboard. */
  readonly sense: number;
  readonly bendSine: number;
  readonly bendCosine: number;
  readonly skewSine: number;
  readonly skewCosine: number;
}

/**
 * With bend a, skew k and rotation f: tan(deflection) = sin a sin f / (cos a cos k - sin a sin k cos f); without skew
 * tan(deflection) = tan a sin f. Derived from the tip that stays in the pocket's plane, which holds the hinge line.
 */
export function bentRodDrive(bentRod: BentRod): Drive | LinkageProblem {
  const { bend, skew = 0, tipTo } = bentRod;
  const isWire = bend > 0 && bend <= 90 && Math.abs(skew) <= 90;
  // The tip's angle from square to the hinge: at level below a right angle, half a turn on anything but one.
  const isOffHinge =
    Math.abs(bend + skew) <= 90 - leastOffHingeDeg && Math.abs(bend - skew - 90) >= leastOffHingeDeg;
  if (!(isWire && isOffHinge)) return { kind: "bendOutOfRange", bendDeg: bend, skewDeg: skew };
  const bent: Bent = {
    sense: tipTo === "port" ? 1 : -1,
    bendSine: sinOf(radians(bend)),
    bendCosine: cosOf(radians(bend)),
    skewSine: sinOf(radians(skew)),
    skewCosine: cosOf(radians(skew)),
  };
  const branch = branchOf(bent);
  return {
    ...branchDrive(branch, findMonotone(branch)),
    deflectionAt: (rotation) => toDeg(branch.deflectionAt(wrap(rotation))),
    ratioAt: (rotation) => {
      const rotationRad = radians(rotation);
      const aft = aftAt(bent, rotationRad);
      return (bent.sense * branch.turnAt(rotationRad)) / (aft ** 2 + downAt(bent, rotationRad) ** 2);
    },
    rodsAt: () => [],
    drawingAt: (rotation) => drawingOf(bent, radians(rotation)),
  };
}

/** Without limit of its own, but past half a turn it only comes again. */
function branchOf(bent: Bent): Branch {
  const { sense, bendSine, bendCosine, skewSine, skewCosine } = bent;
  return {
    lowRad: -Math.PI,
    highRad: Math.PI,
    lowKind: "full",
    highKind: "full",
    deflectionAt: (rotationRad) => sense * atan2Of(downAt(bent, rotationRad), aftAt(bent, rotationRad)),
    candidateAt: (deflectionRad, side) => {
      const sine = sense * sinOf(deflectionRad);
      const cosine = cosOf(deflectionRad);
      return solveAngle(bendSine * skewSine * sine, bendSine * cosine, bendCosine * skewCosine * sine, side);
    },
    turnAt: (rotationRad) => bendSine * (bendCosine * skewCosine * cosOf(rotationRad) - bendSine * skewSine),
  };
}

/** How far the tip reaches aft, per unit of its length. */
function aftAt({ bendSine, bendCosine, skewSine, skewCosine }: Bent, rotationRad: number): number {
  return bendCosine * skewCosine - bendSine * skewSine * cosOf(rotationRad);
}

/** How far a tip to port reaches down, per unit of its length. */
function downAt({ bendSine }: Bent, rotationRad: number): number {
  return bendSine * sinOf(rotationRad);
}

function drawingOf(bent: Bent, rotationRad: number) {
  const { sense, bendSine, bendCosine, skewSine, skewCosine } = bent;
  const across = bendSine * cosOf(rotationRad) * skewCosine + bendCosine * skewSine;
  return {
    points: {
      wire: toPoint([-drawnMm * skewCosine, sense * drawnMm * skewSine, 0]),
      bend: toPoint([0, 0, 0]),
      tip: toPoint([
        drawnTipMm * aftAt(bent, rotationRad),
        drawnTipMm * (-sense * across),
        drawnTipMm * (-sense * downAt(bent, rotationRad)),
      ]),
    },
    segments: [
      { part: "wire", between: ["wire", "bend"] },
      { part: "horn", between: ["bend", "tip"] },
    ],
    from: "wire",
    to: "bend",
  } as const;
}

/** Degrees -> radians within half a turn; half a turn either way as it is given. */
const wrap = (angleDeg: number) =>
  radians(Math.abs(angleDeg) <= 180 ? angleDeg : angleDeg - 360 * Math.round(angleDeg / 360));
