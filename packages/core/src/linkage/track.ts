import { degrees, radians } from "../numeric/angle.ts";
import { cosOf, sinOf } from "../numeric/sine.ts";
import { deg, mm } from "../units/quantity.ts";
import { type Branch, findMonotone, isBetween, rotationInside, rotationsOn } from "./branch.ts";
import { type CamCurve, camCurve } from "./cam.ts";
import { type Drive, type DriveEndKind, isLinkageProblem, type LinkageProblem } from "./drive.ts";
import { findNonLength } from "./find-non-length.ts";
import type { Track } from "./linkage.ts";
import { firstRoot } from "./roots.ts";
import { solveAngle } from "./solve-angle.ts";
import { inView, toPoint } from "./vector.ts";

/** A carriage this far past an end of its track, millimetres, stands at that end: rounding. */
const endSlackMm = 1e-9;

/** The carriage of a track as a function of the shaft, in radians and millimetres. */
interface Carriage {
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

/** A crank, a rod and a carriage on a straight track, the deflection following by a cam. */
export function trackDrive(track: Track, _make: unknown, levelDeg = 0): Drive | LinkageProblem {
  const { arm, travel, rod } = track;
  const problem = findNonLength({ arm, travel, ...(rod === undefined ? {} : { rod }) });
  if (problem !== undefined) return problem;
  const cam = camCurve(track.cam, travel);
  if (isLinkageProblem(cam)) return cam;
  const carriage = carriageOf(track);
  if (isLinkageProblem(carriage)) return carriage;
  const levelRad = radians(levelDeg);
  const levelMm = carriage.extensionAt(levelRad) ?? 0;
  if (levelMm < -endSlackMm || levelMm > travel + endSlackMm) {
    return { kind: "offTrackAtLevel", extensionMm: levelMm, travelMm: travel };
  }
  return driveOf(track, carriage, cam, levelRad);
}

function carriageOf(track: Track): Carriage | LinkageProblem {
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

  const rodMm = track.rod ?? Math.hypot(alongAt(0), squareAt(0), asideMm);
  const flat = rodMm ** 2 - asideMm ** 2;
  const reachAt = (rotationRad: number) => flat - squareAt(rotationRad) ** 2;
  const side = Math.sign(alongAt(0));
  if (reachAt(0) < 0) {
    const farthestMm = Math.max(Math.abs(alongAt(0)), Math.abs(alongAt(0) + track.travel));
    const shortestMm = Math.hypot(squareAt(0), asideMm);
    return { kind: "cannotAssemble", rodMm, shortestMm, longestMm: Math.hypot(shortestMm, farthestMm) };
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

/** Where the carriage leaves its track or the rod no longer reaches, on the way from level in one sense, +1 or -1. */
function endOf(
  carriage: Carriage,
  travelMm: number,
  levelRad: number,
  sense: number,
): readonly [number, DriveEndKind] {
  const turnRad = levelRad + sense * 2 * Math.PI;
  const unreached = firstRoot(carriage.reachAt, levelRad, turnRad);
  const lastRad = unreached ?? turnRad;
  const extensionAt = (rotationRad: number) => carriage.extensionAt(rotationRad) ?? 0;
  const past = [
    firstRoot((rotationRad) => extensionAt(rotationRad) + endSlackMm, levelRad, lastRad),
    firstRoot((rotationRad) => travelMm + endSlackMm - extensionAt(rotationRad), levelRad, lastRad),
  ];
  const ways = past.filter((rotationRad) => rotationRad !== undefined).map((end) => Math.abs(end - levelRad));
  const wayRad = Math.min(...ways);
  // The slack itself is no travel: a carriage that stands at its stop at level ends there.
  if (ways.length > 0) return [wayRad < 1e-8 ? levelRad : levelRad + sense * wayRad, "trackEnd"];
  return unreached === undefined ? [sense * Infinity, "full"] : [unreached, "cannotAssemble"];
}

function driveOf(track: Track, carriage: Carriage, cam: CamCurve, levelRad: number): Drive {
  const [lowRad, lowKind] = endOf(carriage, track.travel, levelRad, -1);
  const [highRad, highKind] = endOf(carriage, track.travel, levelRad, 1);
  const extensionAt = (rotationRad: number) => {
    if (!isBetween(rotationRad, lowRad, highRad)) return undefined;
    const extensionMm = carriage.extensionAt(rotationRad);
    return extensionMm === undefined ? undefined : Math.min(track.travel, Math.max(0, extensionMm));
  };
  const ends = { lowRad, highRad, lowKind, highKind, turnAt: carriage.pushAt };
  const branch: Branch = {
    ...ends,
    deflectionAt: (rotationRad) => {
      const extensionMm = extensionAt(rotationRad);
      return extensionMm === undefined ? undefined : radians(cam.deflectionAt(extensionMm));
    },
    candidateAt: (deflectionRad, side) => {
      const extensionMm = cam.extensionAt(degrees(deflectionRad));
      return extensionMm === undefined ? undefined : carriage.rotationAt(extensionMm, side);
    },
  };
  const extensionBranch: Branch = { ...ends, deflectionAt: extensionAt, candidateAt: carriage.rotationAt };
  const monotone = findMonotone(branch, levelRad);

  return {
    range: monotone.range,
    deflectionAt: (rotation) => toDeg(branch.deflectionAt(radians(rotation))),
    rotationAt: (deflection) => toDeg(rotationInside(branch, monotone, radians(deflection))),
    rotationsAt: (deflection) =>
      rotationsOn(branch, radians(deflection)).map((rotationRad) => deg(degrees(rotationRad))),
    ratioAt: (rotation) => {
      const rotationRad = radians(rotation);
      const extensionMm = extensionAt(rotationRad);
      if (extensionMm === undefined) return undefined;
      const rate = carriage.pushAt(rotationRad) / carriage.alongAt(rotationRad);
      const ratio = radians(cam.slopeAt(extensionMm)) * rate;
      return Number.isFinite(ratio) ? ratio : undefined;
    },
    rodsAt: (rotation) => {
      const rotationRad = radians(rotation);
      const extensionMm = extensionAt(rotationRad);
      if (extensionMm === undefined) return undefined;
      const shaftLeverMm = carriage.pushAt(rotationRad) / carriage.rodMm;
      const cosine = carriage.alongAt(rotationRad) / carriage.rodMm;
      return [
        {
          shaftLever: mm(shaftLeverMm),
          surfaceLever: mm(cosine / radians(cam.slopeAt(extensionMm))),
          sineAtArm: Math.min(1, Math.abs(shaftLeverMm) / track.arm),
          sineAtHorn: Math.min(1, Math.abs(cosine)),
        },
      ];
    },
    drawingAt: (rotation) => {
      const rotationRad = radians(rotation);
      const extensionMm = extensionAt(rotationRad);
      return extensionMm === undefined ? undefined : drawingOf(track, rotationRad, extensionMm);
    },
    extension: {
      extensionAt: (rotation) => {
        const extensionMm = extensionAt(radians(rotation));
        return extensionMm === undefined ? undefined : mm(extensionMm);
      },
      rotationAt: (extension) => toDeg(rotationInside(extensionBranch, monotone, extension)),
    },
  };
}

function drawingOf(track: Track, rotationRad: number, extensionMm: number) {
  const asideMm = track.aside ?? 0;
  const onTrack = (outMm: number) => {
    const [aft, , up] = inView(outMm, radians(track.trackAt));
    return toPoint([track.base + aft, asideMm, track.rise + up]);
  };
  return {
    points: {
      shaft: toPoint([0, 0, 0]),
      armPin: toPoint(inView(track.arm, radians(track.armAt) - rotationRad)),
      carriage: onTrack(extensionMm),
      trackIn: onTrack(0),
      trackOut: onTrack(track.travel),
    },
    segments: [
      { part: "arm", between: ["shaft", "armPin"] },
      { part: "rod", between: ["armPin", "carriage"] },
      { part: "track", between: ["trackIn", "trackOut"] },
    ],
    from: "shaft",
    to: "carriage",
  } as const;
}

const toDeg = (angleRad: number | undefined) => (angleRad === undefined ? undefined : deg(degrees(angleRad)));
