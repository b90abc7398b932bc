import { dimensionsOf } from "../linkage/dimensions.ts";
import { isLinkageProblem } from "../linkage/drive.ts";
import { drive } from "../linkage/drives.ts";
import type { Linkage } from "../linkage/linkage.ts";
import { findReadRotation } from "./find-read-rotation.ts";
import { type Agreement, agreementOf, sizesOf } from "./fit-linkage.ts";
import { type FitPoint, type FitStart, type FreeValue, fitShape, type ShapeFit } from "./fit-shape.ts";
import { freeDimension } from "./free-dimension.ts";

/** Readings and geometry that differ by more than their doubts, and what would explain it. */
export interface Misfit {
  /** Of the linkage as declared. */
  readonly agreement: Agreement;
  readonly rmsDeg: number;
  readonly largestDeg: number;
  /** Best first; those after the first do nearly as well. None where no single dimension helps. */
  readonly explanations: readonly Explanation[];
}

/** One dimension set free. */
export interface Explanation {
  /** Whose it is, and where: for the servo ["degPerUs"], for the linkage as in `Dimension`. */
  readonly of: "linkage" | "servo";
  readonly path: readonly (string | number)[];
  readonly unit: "mm" | "deg" | "degPerUs";
  readonly declared: number;
  /** What the readings say, and its standard doubt. */
  readonly fitted: number;
  readonly doubt: number;
  /** What is left with it; its change counts in the sum of squares. */
  readonly agreement: Agreement;
  readonly rmsDeg: number;
  readonly largestDeg: number;
}

/** How far off a servo that is not the one declared may be (standard), as a part of its rotation; common practice, no source. */
const OTHER_SERVO = 0.1;

/** Two explanations whose sums of squares differ by less, or that gain less, cannot be told apart: two standard doubts. */
const TELLING = 4;

/** Gain, both zeros and the dimension: readings at more pulses than this are needed. */
const FITTED = 4;

/**
 * Where a linkage and readings differ by more than 99 of 100 sound fits do: every dimension of the linkage and the servo's
 * rotation set free in turn, a change counted in plausible doubts, so that a short way off beats a long one that fits as
 * well. Undefined where they agree, and where `fitLinkage` finds no linkage, no scale or the shaft turning the other way.
 */
export function explainMisfit(
  linkage: Linkage,
  points: readonly FitPoint[],
  doubtDeg: number,
  start: FitStart,
): Misfit | undefined {
  const made = drive(linkage);
  const readDegPerUs = isLinkageProblem(made) ? undefined : findReadRotation(made, points);
  if (isLinkageProblem(made) || readDegPerUs === undefined) return undefined;
  if (start.degPerUs !== undefined && start.degPerUs * readDegPerUs < 0) return undefined;
  const fit = (free?: FreeValue, known: FitStart = start) =>
    fitShape(made, points, doubtDeg, { ...known, readDegPerUs }, free);
  const leftOf = (shape: ShapeFit) => ({
    agreement: agreementOf(shape, points.length, start),
    ...sizesOf(shape.missesDeg),
  });
  const plain = fit();
  if (plain === undefined) return undefined;
  const left = leftOf(plain);
  if (left.agreement.agrees) return undefined;
  if (new Set(points.map((point) => point.pulseUs)).size <= FITTED) return { ...left, explanations: [] };

  const explanations = dimensionsOf(linkage).flatMap((dimension): readonly Explanation[] => {
    const { path, unit, value: declared } = dimension;
    const shape = fit(freeDimension(dimension));
    if (shape?.free === undefined) return [];
    const { value: fitted, doubt } = shape.free;
    return [{ of: "linkage", path, unit, declared, fitted, doubt, ...leftOf(shape) }];
  });
  const { degPerUs: declared } = start;
  const otherServo =
    declared === undefined ? undefined : fit(undefined, { ...start, degPerUsDoubt: OTHER_SERVO });
  if (declared !== undefined && otherServo !== undefined) {
    const { value: fitted, doubt } = otherServo.degPerUs;
    const what = { of: "servo", path: ["degPerUs"], unit: "degPerUs" } as const;
    explanations.push({ ...what, declared, fitted, doubt, ...leftOf(otherServo) });
  }
  return { ...left, explanations: bestOf(explanations, left.agreement) };
}

/** Those that help, best first, down to what cannot be told from the best. */
function bestOf(explanations: readonly Explanation[], plain: Agreement): readonly Explanation[] {
  const sorted = explanations
    .filter(({ agreement }) => plain.chiSquare - agreement.chiSquare >= TELLING)
    .sort((a, b) => a.agreement.chiSquare - b.agreement.chiSquare);
  const best = sorted[0]?.agreement.chiSquare ?? 0;
  return sorted.filter(({ agreement }) => agreement.chiSquare - best < TELLING);
}
