import { cosOf, sinOf } from "../numeric/sine.ts";
import { type Branch, isBetween } from "./branch.ts";
import type { DriveEndKind, LinkageProblem } from "./drive.ts";
import { firstRoot } from "./roots.ts";
import { solveAngle } from "./solve-angle.ts";
import { cross, dot, length, minus, plus, times, type Vector } from "./vector.ts";

/** A ball that turns about an axis, millimetres: centre of its circle, where it stands at level, a quarter turn on. */
export interface Circle {
  readonly centre: Vector;
  readonly level: Vector;
  readonly quarter: Vector;
  readonly radiusMm: number;
}

/** A rod between two turning balls: its branch and its levers. */
export interface RodLoop extends Branch {
  readonly arm: Circle;
  readonly horn: Circle;
  readonly rodMm: number;
  readonly levelRad: number;
  /** d(deflection)/d(rotation); undefined off the branch and at a dead centre. */
  ratioAt(rotationRad: number): number | undefined;
  /** Levers of the rod, about the shaft and about the hinge, at a rotation and the deflection that goes with it. */
  shaftLeverAt(rotationRad: number, deflectionRad: number): number;
  hornLeverAt(rotationRad: number, deflectionRad: number): number;
  /** Squared distance of the balls, at any rotation and deflection, less the squared rod: 0 on a branch. */
  excessAt(rotationRad: number, deflectionRad: number): number;
}

/** The circle of a ball about the line through `pivot` along `axis` (any length but zero). */
export function circleOf(pivot: Vector, axis: Vector, ball: Vector): Circle {
  const along = times(axis, 1 / length(axis));
  const centre = plus(pivot, times(along, dot(along, minus(ball, pivot))));
  const level = minus(ball, centre);
  return { centre, level, quarter: cross(along, level), radiusMm: length(level) };
}

/** The point of a circle after a right-handed turn. */
export function pointOn(circle: Circle, turnRad: number): Vector {
  const turned = plus(times(circle.level, cosOf(turnRad)), times(circle.quarter, sinOf(turnRad)));
  return plus(circle.centre, turned);
}

/**
 * The branch of arm, rod and horn on the side of the level layout. The squared distance between the balls is linear in
 * the cosine and sine of the rotation (c, s) and of the deflection (C, S), so that on a branch
 * (p0 + p1 c + p2 s) C + (q0 + q1 c + q2 s) S = r0 + r1 c + r2 s: trade's C11 with its products taken once.
 */
export function rodLoop(arm: Circle, horn: Circle, givenRodMm?: number): RodLoop | LinkageProblem {
  const offset = minus(arm.centre, horn.centre);
  const p0 = 2 * dot(offset, horn.level);
  const p1 = 2 * dot(arm.level, horn.level);
  const p2 = 2 * dot(arm.quarter, horn.level);
  const q0 = 2 * dot(offset, horn.quarter);
  const q1 = 2 * dot(arm.level, horn.quarter);
  const q2 = 2 * dot(arm.quarter, horn.quarter);
  const rodMm = givenRodMm ?? length(minus(plus(offset, arm.level), horn.level));
  const r0 = dot(offset, offset) + arm.radiusMm ** 2 + horn.radiusMm ** 2 - rodMm ** 2;
  const r1 = 2 * dot(offset, arm.level);
  const r2 = 2 * dot(offset, arm.quarter);

  const levelReach = Math.hypot(p0 + p1, q0 + q1);
  const side = -Math.sign(q0 + q1);
  if (!(rodMm > 0) || Math.abs(q0 + q1) <= 1e-12 * levelReach) return { kind: "deadCentreAtLevel" };
  const level = solveAngle(p0 + p1, q0 + q1, r0 + r1, side);
  if (level === undefined) {
    const middle = r0 + r1 + rodMm ** 2;
    const shortestMm = Math.sqrt(Math.max(0, middle - levelReach));
    return { kind: "cannotAssemble", rodMm, shortestMm, longestMm: Math.sqrt(middle + levelReach) };
  }
  const levelRad = givenRodMm === undefined ? 0 : level;

  const assemblyAt = (rotationRad: number) => {
    const c = cosOf(rotationRad);
    const s = sinOf(rotationRad);
    return (p0 + p1 * c + p2 * s) ** 2 + (q0 + q1 * c + q2 * s) ** 2 - (r0 + r1 * c + r2 * s) ** 2;
  };
  // A touch: arm, rod and horn all in line at once, where the two branches meet and nothing says which one goes on.
  const touch = 1e-13 * levelReach ** 2;
  const lowRad = firstRoot(assemblyAt, 0, -2 * Math.PI, touch) ?? -Infinity;
  const highRad = firstRoot(assemblyAt, 0, 2 * Math.PI, touch) ?? Infinity;

  const rawAt = (rotationRad: number) => {
    const c = cosOf(rotationRad);
    const s = sinOf(rotationRad);
    return solveAngle(p0 + p1 * c + p2 * s, q0 + q1 * c + q2 * s, r0 + r1 * c + r2 * s, side);
  };
  const { turns, centreRad } = unwind(rawAt, levelRad, lowRad, highRad);

  const deflectionAt = (rotationRad: number) => {
    if (!isBetween(rotationRad, lowRad, highRad)) return undefined;
    const raw = rawAt(rotationRad);
    if (raw === undefined) return undefined;
    return raw - 2 * Math.PI * Math.round((raw - turns * rotationRad - centreRad) / (2 * Math.PI));
  };
  const byRotation = (rotationRad: number, deflectionRad: number) => {
    const c = cosOf(rotationRad);
    const s = sinOf(rotationRad);
    const towards = (p2 * c - p1 * s) * cosOf(deflectionRad) + (q2 * c - q1 * s) * sinOf(deflectionRad);
    return r2 * c - r1 * s - towards;
  };
  const byDeflection = (rotationRad: number, deflectionRad: number) => {
    const c = cosOf(rotationRad);
    const s = sinOf(rotationRad);
    return (p0 + p1 * c + p2 * s) * sinOf(deflectionRad) - (q0 + q1 * c + q2 * s) * cosOf(deflectionRad);
  };
  const endKind: DriveEndKind = "deadCentreHorn";

  return {
    arm,
    horn,
    rodMm,
    levelRad,
    lowRad,
    highRad,
    lowKind: lowRad === -Infinity ? "full" : endKind,
    highKind: highRad === Infinity ? "full" : endKind,
    deflectionAt,
    candidateAt: (deflectionRad, candidateSide) => {
      const c = cosOf(deflectionRad);
      const s = sinOf(deflectionRad);
      return solveAngle(p1 * c + q1 * s - r1, p2 * c + q2 * s - r2, r0 - p0 * c - q0 * s, candidateSide);
    },
    turnAt: (rotationRad) => byRotation(rotationRad, deflectionAt(rotationRad) ?? 0),
    ratioAt: (rotationRad) => {
      const deflectionRad = deflectionAt(rotationRad);
      if (deflectionRad === undefined) return undefined;
      const ratio = -byRotation(rotationRad, deflectionRad) / byDeflection(rotationRad, deflectionRad);
      return Number.isFinite(ratio) ? ratio : undefined;
    },
    shaftLeverAt: (rotationRad, deflectionRad) => -byRotation(rotationRad, deflectionRad) / (2 * rodMm),
    hornLeverAt: (rotationRad, deflectionRad) => byDeflection(rotationRad, deflectionRad) / (2 * rodMm),
    excessAt: (rotationRad, deflectionRad) => {
      const c = cosOf(rotationRad);
      const s = sinOf(rotationRad);
      const p = p0 + p1 * c + p2 * s;
      const q = q0 + q1 * c + q2 * s;
      return r0 + r1 * c + r2 * s - p * cosOf(deflectionRad) - q * sinOf(deflectionRad);
    },
  };
}

/** How a branch's deflection goes round: turns of the horn for one of the shaft, and the middle of what is left over. */
function unwind(
  rawAt: (rotationRad: number) => number | undefined,
  levelRad: number,
  lowRad: number,
  highRad: number,
): { turns: number; centreRad: number } {
  const walk = (to: number): number[] => {
    const count = Math.ceil(Math.abs(to) / (Math.PI / 90));
    const path = [levelRad];
    for (let i = 1; i <= count; i++) {
      const last = path[i - 1] ?? levelRad;
      const raw = rawAt((to * i) / count) ?? last;
      path.push(raw - 2 * Math.PI * Math.round((raw - last) / (2 * Math.PI)));
    }
    return path;
  };
  if (highRad < Infinity) {
    const path = [...walk(lowRad), ...walk(highRad)];
    return { turns: 0, centreRad: (Math.min(...path) + Math.max(...path)) / 2 };
  }
  const path = walk(2 * Math.PI);
  const turns = Math.round(((path.at(-1) ?? levelRad) - levelRad) / (2 * Math.PI));
  const rest = path.map((deflectionRad, i) => deflectionRad - (turns * 2 * Math.PI * i) / (path.length - 1));
  return { turns, centreRad: (Math.min(...rest) + Math.max(...rest)) / 2 };
}
