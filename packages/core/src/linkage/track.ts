import { degrees, radians } from "../numeric/angle.ts";
import { type Deg, mm } from "../units/quantity.ts";
import { type Branch, findMonotone, isBetween, rotationInside } from "./branch.ts";
import { branchDrive, toDeg } from "./branch-drive.ts";
import { type CamCurve, camCurve } from "./cam.ts";
import { type Carriage, carriageOf } from "./carriage.ts";
import {
  type Drive,
  type DriveEndKind,
  isLinkageProblem,
  type LinkageProblem,
  type RodStand,
} from "./drive.ts";
import { findNonLength } from "./find-non-length.ts";
import type { Track } from "./linkage.ts";
import { firstRoot } from "./roots.ts";
import { inView, toPoint } from "./vector.ts";

/** A carriage this far past an end of its track, millimetres, stands at that end: rounding. */
const endSlackMm = 1e-9;

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

function driveOf(track: Track, carriage: Carriage, cam: CamCurve, levelRad: number): Drive {
  const way = wayOf(carriage, track.travel, levelRad);
  const branch: Branch = {
    ...way,
    deflectionAt: (rotationRad) => {
      const extensionMm = way.deflectionAt(rotationRad);
      return extensionMm === undefined ? undefined : radians(cam.deflectionAt(extensionMm));
    },
    candidateAt: (deflectionRad, side) => {
      const extensionMm = cam.extensionAt(degrees(deflectionRad));
      return extensionMm === undefined ? undefined : carriage.rotationAt(extensionMm, side);
    },
  };
  const monotone = findMonotone(branch, levelRad);
  /** An answer for wherever the carriage is on its track. */
  const onTrack =
    <Answer>(answer: (rotationRad: number, extensionMm: number) => Answer) =>
    (rotation: Deg): Answer | undefined => {
      const extensionMm = way.deflectionAt(radians(rotation));
      return extensionMm === undefined ? undefined : answer(radians(rotation), extensionMm);
    };
  return {
    ...branchDrive(branch, monotone),
    ratioAt: onTrack((rotationRad, extensionMm) => {
      const rate = carriage.pushAt(rotationRad) / carriage.alongAt(rotationRad);
      const ratio = radians(cam.slopeAt(extensionMm)) * rate;
      return Number.isFinite(ratio) ? ratio : undefined;
    }),
    rodsAt: onTrack((rotationRad, extensionMm) =>
      rodsOf(track, carriage, rotationRad, radians(cam.slopeAt(extensionMm))),
    ),
    drawingAt: onTrack((rotationRad, extensionMm) => drawingOf(track, rotationRad, extensionMm)),
    extension: {
      extensionAt: onTrack((_, extensionMm) => mm(extensionMm)),
      rotationAt: (extension) => toDeg(rotationInside(way, monotone, extension)),
    },
  };
}

/** The carriage on its track as a branch, its extension in millimetres taking the place of the deflection. */
function wayOf(carriage: Carriage, travelMm: number, levelRad: number): Branch {
  const [lowRad, lowKind] = endOf(carriage, travelMm, levelRad, -1);
  const [highRad, highKind] = endOf(carriage, travelMm, levelRad, 1);
  return {
    lowRad,
    highRad,
    lowKind,
    highKind,
    deflectionAt: (rotationRad) => {
      if (!isBetween(rotationRad, lowRad, highRad)) return undefined;
      const extensionMm = carriage.extensionAt(rotationRad);
      return extensionMm === undefined ? undefined : Math.min(travelMm, Math.max(0, extensionMm));
    },
    candidateAt: carriage.rotationAt,
    turnAt: carriage.pushAt,
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

/** The one rod; undefined on the level part of a cam, where no force at the carriage holds the surface. */
function rodsOf(
  { arm }: Track,
  carriage: Carriage,
  rotationRad: number,
  radPerMm: number,
): readonly RodStand[] | undefined {
  const shaftLeverMm = carriage.pushAt(rotationRad) / carriage.rodMm;
  const cosine = carriage.alongAt(rotationRad) / carriage.rodMm;
  const surfaceLeverMm = cosine / radPerMm;
  if (!Number.isFinite(surfaceLeverMm)) return undefined;
  return [
    {
      shaftLever: mm(shaftLeverMm),
      surfaceLever: mm(surfaceLeverMm),
      sineAtArm: Math.min(1, Math.abs(shaftLeverMm) / arm),
      sineAtHorn: Math.min(1, Math.abs(cosine)),
    },
  ];
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
