import { degrees, radians } from "../numeric/angle.ts";
import { cosOf, sinOf } from "../numeric/sine.ts";
import { deg } from "../units/quantity.ts";
import { type Branch, findMonotone, rotationInside, rotationsOn } from "./branch.ts";
import type { Drive, LinkageProblem } from "./drive.ts";
import type { BentRod } from "./linkage.ts";
import { solveAngle } from "./solve-angle.ts";
import { toPoint } from "./vector.ts";

/** Lengths of the wire and its tip in the picture, millimetres: the declaration has none. */
const drawnMm = 30;
const drawnTipMm = 20;

/**
 * With bend a, skew k and rotation f: tan(deflection) = sin a sin f / (cos a cos k - sin a sin k cos f); without skew
 * tan(deflection) = tan a sin f. Derived from the tip that stays in the pocket's plane, which holds the hinge line.
 */
export function bentRodDrive(bentRod: BentRod): Drive | LinkageProblem {
  const skewDeg = bentRod.skew ?? 0;
  const leanDeg = Math.abs(bentRod.bend + skewDeg);
  if (!(bentRod.bend > 0 && bentRod.bend <= 90 && Math.abs(skewDeg) <= 90 && leanDeg < 90)) {
    return { kind: "bendOutOfRange", bendDeg: bentRod.bend, skewDeg };
  }
  const sense = bentRod.tipTo === "port" ? 1 : -1;
  const bendSine = sinOf(radians(bentRod.bend));
  const bendCosine = cosOf(radians(bentRod.bend));
  const skewSine = sinOf(radians(skewDeg));
  const skewCosine = cosOf(radians(skewDeg));

  /** How far the tip reaches aft and up, per unit of its length, before the sense of the tip. */
  const aftAt = (rotationRad: number) => bendCosine * skewCosine - bendSine * skewSine * cosOf(rotationRad);
  const turnAt = (rotationRad: number) =>
    bendSine * (bendCosine * skewCosine * cosOf(rotationRad) - bendSine * skewSine);

  // Without limit of its own, but past half a turn it only comes again.
  const branch: Branch = {
    lowRad: -Math.PI,
    highRad: Math.PI,
    lowKind: "full",
    highKind: "full",
    deflectionAt: (rotationRad) => sense * Math.atan2(bendSine * sinOf(rotationRad), aftAt(rotationRad)),
    candidateAt: (deflectionRad, side) => {
      const sine = sense * sinOf(deflectionRad);
      const cosine = cosOf(deflectionRad);
      return solveAngle(bendSine * skewSine * sine, bendSine * cosine, bendCosine * skewCosine * sine, side);
    },
    turnAt,
  };
  const monotone = findMonotone(branch);

  return {
    range: monotone.range,
    deflectionAt: (rotation) => toDeg(branch.deflectionAt(wrap(rotation))),
    rotationAt: (deflection) => toDeg(rotationInside(branch, monotone, radians(deflection))),
    rotationsAt: (deflection) =>
      rotationsOn(branch, radians(deflection)).map((rotationRad) => deg(degrees(rotationRad))),
    ratioAt: (rotation) => {
      const rotationRad = radians(rotation);
      const aft = aftAt(rotationRad);
      return (sense * turnAt(rotationRad)) / (aft ** 2 + (bendSine * sinOf(rotationRad)) ** 2);
    },
    rodsAt: () => [],
    drawingAt: (rotation) => {
      const rotationRad = radians(rotation);
      const across = bendSine * cosOf(rotationRad) * skewCosine + bendCosine * skewSine;
      const tip = [aftAt(rotationRad), -sense * across, -sense * bendSine * sinOf(rotationRad)] as const;
      return {
        points: {
          wire: toPoint([-drawnMm * skewCosine, sense * drawnMm * skewSine, 0]),
          bend: toPoint([0, 0, 0]),
          tip: toPoint([drawnTipMm * tip[0], drawnTipMm * tip[1], drawnTipMm * tip[2]]),
        },
        segments: [
          { part: "wire", between: ["wire", "bend"] },
          { part: "horn", between: ["bend", "tip"] },
        ],
        from: "wire",
        to: "bend",
      };
    },
  };
}

const toDeg = (angleRad: number | undefined) => (angleRad === undefined ? undefined : deg(degrees(angleRad)));

/** Degrees -> radians within half a turn. */
const wrap = (angleDeg: number) => radians(angleDeg - 360 * Math.round(angleDeg / 360));
