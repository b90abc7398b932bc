import { degrees } from "../numeric/angle.ts";
import { deg } from "../units/quantity.ts";
import type { DriveEndKind, DriveRange } from "./drive.ts";
import { firstRoot } from "./roots.ts";

/** One branch of a linkage, in radians: what a drive is made from. */
export interface Branch {
  /** Rotations between which it can be assembled, around 0; infinite where the shaft can turn for ever. */
  readonly lowRad: number;
  readonly highRad: number;
  /** What ends it at either side. */
  readonly lowKind: DriveEndKind;
  readonly highKind: DriveEndKind;
  /** Rotation -> deflection, continuous; undefined outside. */
  deflectionAt(rotationRad: number): number | undefined;
  /** Deflection and +1 or -1 -> one of the two rotations within a turn, on this branch or not. */
  candidateAt(deflectionRad: number, side: number): number | undefined;
  /** Rotation -> a number that is zero where the branch turns back; any scale. */
  turnAt(rotationRad: number): number;
}

/** The part of a branch, around level, over which deflection is strictly monotone. */
export interface Monotone {
  readonly lowRad: number;
  readonly highRad: number;
  readonly range: DriveRange;
}

/** A turning point this near a dead centre, radians, is rounding: arm, rod and horn are in line there all at once. */
const changePoint = 1e-6;
/** A rotation this far outside, radians, is an end that rounding moved. */
const slack = 1e-12;
/** What degrees and back can add to an end of a branch, radians. */
const endRounding = 1e-14;

/** Whether a rotation lies on a branch that runs from `lowRad` to `highRad`, both ends included. */
export function isBetween(rotationRad: number, lowRad: number, highRad: number): boolean {
  return rotationRad >= lowRad - endRounding && rotationRad <= highRad + endRounding;
}

/**
 * The monotone part of a branch around the rotation of level, radians. Where level itself is a turning point (a rod
 * locked over the shaft) it is the part of the rotations above it.
 */
export function findMonotone(branch: Branch, levelRad = 0): Monotone {
  const low = Math.max(branch.lowRad, -Math.PI);
  const high = Math.min(branch.highRad, Math.PI);
  const turn = (rotationRad: number) => branch.turnAt(rotationRad);
  const locked =
    Math.abs(turn(levelRad)) <= 1e-9 * Math.max(Math.abs(turn(low / 2)), Math.abs(turn(high / 2)));
  const lowTurn = locked ? levelRad : firstRoot(turn, levelRad, low);
  const highTurn = firstRoot(turn, locked ? levelRad + (high - levelRad) / 1000 : levelRad, high);
  const turnsLow = lowTurn !== undefined && Math.abs(lowTurn - low) > changePoint;
  const turnsHigh = highTurn !== undefined && Math.abs(highTurn - high) > changePoint;
  const lowRad = turnsLow ? lowTurn : low;
  const highRad = turnsHigh ? highTurn : high;
  const end = (rotationRad: number, kind: DriveEndKind) => ({
    rotation: deg(degrees(rotationRad)),
    deflection: deg(degrees(branch.deflectionAt(rotationRad) ?? 0)),
    kind,
  });
  return {
    lowRad,
    highRad,
    range: {
      low: end(lowRad, turnsLow ? "turnsBack" : low === branch.lowRad ? branch.lowKind : "full"),
      high: end(highRad, turnsHigh ? "turnsBack" : high === branch.highRad ? branch.highKind : "full"),
    },
  };
}

/** The rotation inside the monotone part that gives a deflection, radians. */
export function rotationInside(branch: Branch, part: Monotone, deflectionRad: number): number | undefined {
  const atLow = branch.deflectionAt(part.lowRad);
  const atHigh = branch.deflectionAt(part.highRad);
  if (atLow === undefined || atHigh === undefined) return undefined;
  // Ends come back exactly: near a turning point a rounded deflection can lie a hair beyond the last one reached.
  if (Math.abs(deflectionRad - atLow) <= 1e-14) return part.lowRad;
  if (Math.abs(deflectionRad - atHigh) <= 1e-14) return part.highRad;
  if (deflectionRad > atLow === deflectionRad > atHigh) return undefined;
  const middle = (part.lowRad + part.highRad) / 2;
  const first = onBranch(branch, deflectionRad, 1, middle);
  const second = onBranch(branch, deflectionRad, -1, middle);
  const firstFar = outside(part, first);
  const secondFar = outside(part, second);
  const nearest = firstFar <= secondFar ? first : second;
  if (nearest === undefined || Math.min(firstFar, secondFar) > changePoint) return undefined;
  return Math.min(part.highRad, Math.max(part.lowRad, nearest));
}

/** Every rotation of the branch within a turn around level that gives a deflection, radians, rising. */
export function rotationsOn(branch: Branch, deflectionRad: number): readonly number[] {
  const found: number[] = [];
  const full = branch.lowRad === -Infinity;
  const low = full ? -Math.PI : branch.lowRad;
  const high = full ? Math.PI : branch.highRad;
  for (const side of [1, -1]) {
    for (const turnRad of [-2 * Math.PI, 0, 2 * Math.PI]) {
      const rotation = onBranch(branch, deflectionRad, side, turnRad);
      if (rotation === undefined || rotation < low || rotation > high) continue;
      if (!found.some((other) => Math.abs(other - rotation) < slack)) found.push(rotation);
    }
  }
  return found.sort((a, b) => a - b);
}

/** The candidate of one side, brought within half a turn of `aroundRad`, where it lies on the branch. */
function onBranch(
  branch: Branch,
  deflectionRad: number,
  side: number,
  aroundRad: number,
): number | undefined {
  const candidate = branch.candidateAt(deflectionRad, side);
  if (candidate === undefined) return undefined;
  const near = candidate - 2 * Math.PI * Math.round((candidate - aroundRad) / (2 * Math.PI));
  const rotation = settle(branch, near);
  const back = branch.deflectionAt(rotation);
  // Another branch or another turn is far off; near a dead centre rounding alone moves the way back by some 1e-8.
  return back !== undefined && Math.abs(back - deflectionRad) < 1e-6 ? rotation : undefined;
}

function settle(branch: Branch, rotationRad: number): number {
  if (rotationRad < branch.lowRad && rotationRad > branch.lowRad - slack) return branch.lowRad;
  if (rotationRad > branch.highRad && rotationRad < branch.highRad + slack) return branch.highRad;
  return rotationRad;
}

/** How far a rotation lies outside the monotone part, radians. */
function outside(part: Monotone, rotationRad: number | undefined): number {
  if (rotationRad === undefined) return Number.POSITIVE_INFINITY;
  return Math.max(0, part.lowRad - rotationRad, rotationRad - part.highRad);
}
