import { type Drive, type DriveEnd, isProblem, type LinkageProblem } from "../linkage/drive.ts";
import { drive } from "../linkage/drives.ts";
import type { Linkage } from "../linkage/linkage.ts";
import { chiSquareLimit } from "./chi-square-limit.ts";
import { type Cuts, driveResponse, rotationOf } from "./drive-response.ts";
import { findReadRotation } from "./find-read-rotation.ts";
import { type Estimate, type FitPoint, type FitStart, fitShape, type ShapeFit } from "./fit-shape.ts";
import type { Response } from "./response.ts";

/** A linkage's shape with the scale and the zeros of a servo's readings. */
export interface LinkageFit {
  /** From the lowest to the highest pulse read, nothing beyond. */
  readonly response: Response;
  /** deflection read = deflection of the drive at `degPerUs` (pulse - level) + `rotationZeroDeg`, + `deflectionZeroDeg`. */
  readonly degPerUs: Estimate;
  readonly rotationZeroDeg: Estimate;
  readonly deflectionZeroDeg: Estimate;
  /** In the order of the readings. */
  readonly residuals: readonly FitResidual[];
  /** Root mean square and largest size of the misses. */
  readonly rmsDeg: number;
  readonly largestDeg: number;
  readonly agreement: Agreement;
}

export interface FitResidual extends FitPoint {
  /** What was read minus what the fit gives. */
  readonly missDeg: number;
}

/** Whether readings and linkage agree within their doubts. */
export interface Agreement {
  /** Sum of squares in standard doubts. */
  readonly chiSquare: number;
  /** Readings, plus one where the servo's rotation is known, less the three values fitted. */
  readonly dof: number;
  /** What 99 of 100 sound fits stay below. */
  readonly limit: number;
  /** `chiSquare` is at most `limit`. */
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

/**
 * Fits a linkage's shape to readings that are in doubt by `doubtDeg` (standard, above 0): scale and zeros from the readings,
 * shape from the linkage. A fit that disagrees is returned too; `explainMisfit` says which dimension may be wrong. A reading
 * beyond the drive's range is a problem, but a fit that agrees may have moved it inside.
 */
export function fitLinkage(
  linkage: Linkage,
  points: readonly FitPoint[],
  doubtDeg: number,
  start: FitStart,
): LinkageFit | FitProblem {
  const made = drive(linkage);
  if (isProblem(made)) return { kind: "linkage", problem: made };
  const pulses = new Set(points.map((point) => point.pulseUs)).size;
  if (pulses <= FITTED) return { kind: "tooFewReadings", pulses, needed: FITTED + 1 };
  const readDegPerUs = findReadRotation(made, points);
  if (readDegPerUs === undefined) return { kind: "noFit" };
  const { degPerUs } = start;
  if (degPerUs !== undefined && degPerUs * readDegPerUs <= 0) return { kind: "turnsOtherWay", degPerUs, readDegPerUs };

  const shape = fitShape(made, points, doubtDeg, { ...start, readDegPerUs });
  if (shape === undefined) return findOutOfReach(made, points, start, {}) ?? { kind: "noFit" };
  const agreement = agreementOf(shape, points.length, start);
  const fitted = driveResponse(made, shape.line, hullOf(points));
  const cut = fitted === undefined || isCut(fitted.cut);
  const outOfReach =
    agreement.agrees && !cut ? undefined : findOutOfReach(made, points, start, fitted?.cut ?? {}, shape);
  if (outOfReach !== undefined) return outOfReach;
  if (fitted === undefined || cut) return { kind: "noFit" };
  return { response: fitted.response, ...estimatesOf(shape), ...residualsOf(points, shape.missesDeg), agreement };
}
