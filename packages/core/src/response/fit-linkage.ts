import type { Dimension } from "../linkage/dimensions.ts";
import { type Drive, type DriveEnd, isLinkageProblem, type LinkageProblem } from "../linkage/drive.ts";
import { drive } from "../linkage/drives.ts";
import type { Linkage } from "../linkage/linkage.ts";
import { hypotOf } from "../numeric/hypotenuse.ts";
import { chiSquareLimit } from "./chi-square-limit.ts";
import {
  driveResponse,
  type LinkageResponse,
  rotationOf,
  type ShaftLine,
  usableRotations,
} from "./drive-response.ts";
import { findReadRotation } from "./find-read-rotation.ts";
import {
  type Estimate,
  type FitPoint,
  type FitStart,
  fitShape,
  ROTATION_DOUBT,
  type ShapeFit,
} from "./fit-shape.ts";
import { freeDimension } from "./free-dimension.ts";

/**
 * A linkage's shape with the scale and the zeros of a servo's readings: a response from the lowest to the highest pulse read,
 * nothing beyond. `cut` says where the readings go on, by no more than their doubt, after the linkage has come to an end.
 */
export interface LinkageFit extends LinkageResponse {
  /** deflection read = deflection of the drive at `degPerUs` (pulse - level) + `rotationZeroDeg`, + `deflectionZeroDeg`. */
  readonly degPerUs: Estimate;
  readonly rotationZeroDeg: Estimate;
  readonly deflectionZeroDeg: Estimate;
  /** Of the dimension that was set free. */
  readonly free?: Estimate;
  /** In the order of the readings. */
  readonly residuals: readonly FitResidual[];
  /** Root mean square and largest size of the misses. */
  readonly rmsDeg: number;
  readonly largestDeg: number;
  readonly agreement: Agreement;
}

/** A reading and how far the fit misses it. */
export interface FitResidual extends FitPoint {
  /** What was read minus what the fit gives. */
  readonly missDeg: number;
}

/** Whether readings and linkage agree within their doubts. */
export interface Agreement {
  /** Sum of squares in standard doubts. */
  readonly chiSquare: number;
  /**
   * Readings, plus one where the servo's rotation is known, less the three values fitted. A free dimension
   * counts for nothing: what it takes in freedom its declared value gives back.
   */
  readonly dof: number;
  /** What 99 of 100 sound fits stay below. */
  readonly limit: number;
  /** The search came to rest, and `chiSquare` is at most `limit`. */
  readonly agrees: boolean;
}

/** Why there is no fitted response. */
export type FitProblem =
  /** Readings at different pulses, and how many are needed: one more than values fitted. */
  | { readonly kind: "tooFewReadings"; readonly pulses: number; readonly needed: number }
  /** The linkage makes no drive. */
  | { readonly kind: "linkage"; readonly problem: LinkageProblem }
  /** The readings say that the shaft turns against its declared sense, or the linkage is drawn on the wrong side. */
  | { readonly kind: "turnsOtherWay"; readonly degPerUs: number; readonly readDegPerUs: number }
  /** A reading stands beyond an end of what the linkage can do: a dimension is wrong. */
  | ReadingOutOfReach
  /** The readings do not settle scale and zeros: all at one deflection, or nothing like this linkage. */
  | { readonly kind: "noFit" };

/** A reading that the linkage, with its dimensions as they are, could never have given. */
export interface ReadingOutOfReach {
  readonly kind: "readingOutOfReach";
  /** Place in the caller's readings, and the reading. */
  readonly index: number;
  readonly pulseUs: number;
  readonly deflectionDeg: number;
  /** Where the shaft stands there, and the end that it is beyond. */
  readonly rotationDeg: number;
  readonly end: DriveEnd;
}

/** Gain, rotation zero and deflection zero. */
const FITTED = 3;

/** Readings at so many different pulses are needed to fit a linkage to: one more than values fitted. */
export const READINGS_TO_FIT = FITTED + 1;

/**
 * Fits a linkage's shape to readings that are in doubt by `doubtDeg` (standard, above 0): scale and zeros from the readings,
 * shape from the linkage. A fit that disagrees is returned too, and `explainMisfit` says which dimension may be wrong; but
 * where it disagrees and a reading stands beyond the drive's range, that is the problem. `free` is a dimension of the linkage
 * to fit as well, near its declared value.
 */
export function fitLinkage(
  linkage: Linkage,
  points: readonly FitPoint[],
  doubtDeg: number,
  start: FitStart,
  free?: Dimension,
): LinkageFit | FitProblem {
  const made = drive(linkage);
  if (isLinkageProblem(made)) return { kind: "linkage", problem: made };
  const pulses = new Set(points.map((point) => point.pulseUs)).size;
  const needed = READINGS_TO_FIT + (free === undefined ? 0 : 1);
  if (pulses < needed) return { kind: "tooFewReadings", pulses, needed };
  const readDegPerUs = findReadRotation(made, points);
  if (readDegPerUs === undefined) return { kind: "noFit" };
  const { degPerUs } = start;
  if (degPerUs !== undefined && degPerUs * readDegPerUs < 0) {
    return { kind: "turnsOtherWay", degPerUs, readDegPerUs };
  }
  const freeValue = free && freeDimension(free);
  const shape = fitShape(made, points, doubtDeg, { ...start, readDegPerUs }, freeValue);
  const fitted = shape && driveResponse(shape.drive, shape.line, hullOf(points));
  const agreement = shape && agreementOf(shape, points.length, start);
  if (!agreement?.agrees) {
    const beyond =
      findBeyondDeclared(made, points, start) ?? (shape && findBeyond(shape.drive, points, shape.line));
    if (beyond !== undefined) return beyond;
  }
  if (shape === undefined || agreement === undefined || fitted === undefined) return { kind: "noFit" };
  const { missesDeg } = shape;
  return {
    ...fitted,
    degPerUs: shape.degPerUs,
    rotationZeroDeg: shape.rotationZeroDeg,
    deflectionZeroDeg: shape.deflectionZeroDeg,
    ...(shape.free === undefined ? {} : { free: shape.free }),
    residuals: points.map((point, i) => ({ ...point, missDeg: missesDeg[i] ?? 0 })),
    ...sizesOf(missesDeg),
    agreement,
  };
}

/** Whether what a fit leaves is what doubts alone would make of it. */
export function agreementOf({ chiSquare, settled }: ShapeFit, readings: number, start: FitStart): Agreement {
  const dof = readings - FITTED + (start.degPerUs === undefined ? 0 : 1);
  const limit = chiSquareLimit(dof);
  return { chiSquare, dof, limit, agrees: settled && chiSquare <= limit };
}

/** Root mean square and largest size of misses. */
export function sizesOf(missesDeg: readonly number[]): {
  readonly rmsDeg: number;
  readonly largestDeg: number;
} {
  return {
    rmsDeg: hypotOf(...missesDeg) / Math.sqrt(missesDeg.length),
    largestDeg: Math.max(...missesDeg.map(Math.abs)),
  };
}

/** The reading that stands furthest beyond what a drive can do; `part` of its rotation is taken as sure. */
function findBeyond(
  made: Drive,
  points: readonly FitPoint[],
  line: ShaftLine,
  part = 1,
): ReadingOutOfReach | undefined {
  const [low, high] = usableRotations(made);
  let worst: { readonly beyondDeg: number; readonly found: ReadingOutOfReach } | undefined;
  for (const [index, point] of points.entries()) {
    const rotationDeg = rotationOf(line, point.pulseUs);
    const [belowDeg, aboveDeg] = [
      low.rotationDeg - part * rotationDeg,
      part * rotationDeg - high.rotationDeg,
    ];
    const { end } = belowDeg > aboveDeg ? low : high;
    const beyondDeg = Math.max(belowDeg, aboveDeg);
    if (beyondDeg <= (worst?.beyondDeg ?? 0)) continue;
    worst = { beyondDeg, found: { kind: "readingOutOfReach", index, ...point, rotationDeg, end } };
  }
  return worst?.found;
}

/** The same by the declared scale, less two of its doubts. */
function findBeyondDeclared(
  made: Drive,
  points: readonly FitPoint[],
  { levelUs, degPerUs, degPerUsDoubt = ROTATION_DOUBT }: FitStart,
): ReadingOutOfReach | undefined {
  if (degPerUs === undefined) return undefined;
  const line = { levelUs, degPerUs, rotationZeroDeg: 0, deflectionZeroDeg: 0 };
  return findBeyond(made, points, line, 1 - 2 * degPerUsDoubt);
}

function hullOf(points: readonly FitPoint[]): readonly [number, number] {
  const pulsesUs = points.map((point) => point.pulseUs);
  return [Math.min(...pulsesUs), Math.max(...pulsesUs)];
}
