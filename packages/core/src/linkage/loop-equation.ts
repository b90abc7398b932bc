import { turnOf } from "../numeric/sine.ts";
import { type Circle, offsetOf } from "./circle.ts";
import { solveAngle } from "./solve-angle.ts";
import { dot } from "./vector.ts";

/** What a rotation makes of the loop's equation p cos d + q sin d = r in the deflection d, square millimetres. */
export interface LoopTerms {
  readonly p: number;
  readonly q: number;
  readonly r: number;
}

/**
 * The squared distance between the balls, less the squared rod, is linear in the cosine and sine of the rotation (c, s) and
 * of the deflection (C, S), so that where the rod fits
 * (p0 + p1 c + p2 s) C + (q0 + q1 c + q2 s) S = r0 + r1 c + r2 s: trade's C11 with its products taken once.
 */
export interface LoopEquation {
  termsAt(rotationRad: number): LoopTerms;
  /** The squared distance less the squared rod: 0 where the rod fits. And how it grows with either angle. */
  excessAt(rotationRad: number, deflectionRad: number): number;
  byRotation(rotationRad: number, deflectionRad: number): number;
  byDeflection(rotationRad: number, deflectionRad: number): number;
  /** The two solutions, +1 and -1, as `solveAngle` counts them. */
  deflectionAt(rotationRad: number, side: number): number | undefined;
  rotationAt(deflectionRad: number, side: number): number | undefined;
}

/** The equation of a rod between two balls that turn about their axes. */
export function loopEquation(arm: Circle, horn: Circle, rodMm: number): LoopEquation {
  const offset = offsetOf(arm, horn);
  const p0 = 2 * dot(offset, horn.level);
  const p1 = 2 * dot(arm.level, horn.level);
  const p2 = 2 * dot(arm.quarter, horn.level);
  const q0 = 2 * dot(offset, horn.quarter);
  const q1 = 2 * dot(arm.level, horn.quarter);
  const q2 = 2 * dot(arm.quarter, horn.quarter);
  const r0 = dot(offset, offset) + arm.radiusMm ** 2 + horn.radiusMm ** 2 - rodMm ** 2;
  const r1 = 2 * dot(offset, arm.level);
  const r2 = 2 * dot(offset, arm.quarter);

  const termsAt = (rotationRad: number): LoopTerms => {
    const { cos: c, sin: s } = turnOf(rotationRad);
    return { p: p0 + p1 * c + p2 * s, q: q0 + q1 * c + q2 * s, r: r0 + r1 * c + r2 * s };
  };
  return {
    termsAt,
    excessAt: (rotationRad, deflectionRad) => {
      const { p, q, r } = termsAt(rotationRad);
      const { cos: C, sin: S } = turnOf(deflectionRad);
      return r - p * C - q * S;
    },
    byRotation: (rotationRad, deflectionRad) => {
      const { cos: c, sin: s } = turnOf(rotationRad);
      const { cos: C, sin: S } = turnOf(deflectionRad);
      return r2 * c - r1 * s - ((p2 * c - p1 * s) * C + (q2 * c - q1 * s) * S);
    },
    byDeflection: (rotationRad, deflectionRad) => {
      const { p, q } = termsAt(rotationRad);
      const { cos: C, sin: S } = turnOf(deflectionRad);
      return p * S - q * C;
    },
    deflectionAt: (rotationRad, side) => {
      const { p, q, r } = termsAt(rotationRad);
      return solveAngle(p, q, r, side);
    },
    rotationAt: (deflectionRad, side) => {
      const { cos: c, sin: s } = turnOf(deflectionRad);
      return solveAngle(p1 * c + q1 * s - r1, p2 * c + q2 * s - r2, r0 - p0 * c - q0 * s, side);
    },
  };
}
