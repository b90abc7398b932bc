import { radians } from "../numeric/angle.ts";
import { hypotOf } from "../numeric/hypotenuse.ts";
import { cosOf, sinOf } from "../numeric/sine.ts";
import type { LinkageProblem } from "./drive.ts";
import type { Track } from "./linkage.ts";
import { solveAngle } from "./solve-angle.ts";

/** The carriage of a track as a function of the shaft, in radians and millimetres. */
export interface Carriage {
  readonly rodMm: number;
  /** What is left of the squared rod across the track's square; below zero it does not reach. */
  reachAt(rotationRad: number): number;
  /** From fully in, on the branch of the level layout, off the track too; undefined where the rod does not reach. */
  extensionAt(rotationRad: number): number | undefined;
  rotationAt(extensionMm: number, side: number): number | undefined;
  /** Component of rod along the track, and of the arm pin's motion along the rod times the rod, squared millimetres. */
  alongAt(rotationRad: number): number;
  pushAt(rotationRad: number): number;
}

/** The carriage on the side of its rod that the level layout has, or why it has none. */
export function carriageOf(track: Track): Carriage | LinkageProblem {
  const { arm, base, rise } = track;
  const asideMm = track.aside ?? 0;
  const armAtRad = radians(track.armAt);
  const wayAft = cosOf(radians(track.trackAt));
  const wayUp = sinOf(radians(track.trackAt));
  // From the arm's pin to the carriage's when fully in: along the track and square to it, in the plane.
  const alongAt = (rotationRad: number) =>
    (base - arm * cosOf(armAtRad - rotationRad)) * wayAft +
    (rise - arm * sinOf(armAtRad - rotationRad)) * wayUp;
  const squareAt = (rotationRad: number) =>
    (base - arm * cosOf(armAtRad - rotationRad)) * wayUp -
    (rise - arm * sinOf(armAtRad - rotationRad)) * wayAft;

  const rodMm = track.rod ?? hypotOf(alongAt(0), squareAt(0), asideMm);
  const flat = rodMm ** 2 - asideMm ** 2;
  const reachAt = (rotationRad: number) => flat - squareAt(rotationRad) ** 2;
  const side = Math.sign(alongAt(0));
  if (reachAt(0) < 0) {
    const farthestMm = Math.max(Math.abs(alongAt(0)), Math.abs(alongAt(0) + track.travel));
    const shortestMm = hypotOf(squareAt(0), asideMm);
    return { kind: "cannotAssemble", rodMm, shortestMm, longestMm: hypotOf(shortestMm, farthestMm) };
  }
  if (Math.abs(alongAt(0)) <= 1e-12 * rodMm || reachAt(0) <= 1e-12 * rodMm ** 2)
    return { kind: "deadCentreAtLevel" };
  const rodAlongAt = (rotationRad: number) => side * Math.sqrt(Math.max(0, reachAt(rotationRad)));

  return {
    rodMm,
    reachAt,
    extensionAt: (rotationRad) =>
      reachAt(rotationRad) < -1e-12 * flat ? undefined : rodAlongAt(rotationRad) - alongAt(rotationRad),
    rotationAt: (extensionMm, candidateSide) => {
      const pinAft = base + extensionMm * wayAft;
      const pinUp = rise + extensionMm * wayUp;
      const along = (arm ** 2 + pinAft ** 2 + pinUp ** 2 - flat) / 2;
      const armRad = solveAngle(arm * pinAft, arm * pinUp, along, candidateSide);
      return armRad === undefined ? undefined : armAtRad - armRad;
    },
    alongAt: rodAlongAt,
    pushAt: (rotationRad) => {
      const armRad = armAtRad - rotationRad;
      const pinAlong = arm * (sinOf(armRad) * wayAft - cosOf(armRad) * wayUp);
      const pinSquare = arm * (sinOf(armRad) * wayUp + cosOf(armRad) * wayAft);
      return rodAlongAt(rotationRad) * pinAlong + squareAt(rotationRad) * pinSquare;
    },
  };
}
