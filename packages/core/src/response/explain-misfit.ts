import { type Dimension, dimensionsOf } from "../linkage/dimensions.ts";
import { type Drive, isProblem } from "../linkage/drive.ts";
import { drive } from "../linkage/drives.ts";
import type { Linkage } from "../linkage/linkage.ts";
import { findReadRotation } from "./find-read-rotation.ts";
import { type Agreement, agreementOf, sizesOf } from "./fit-linkage.ts";
import { type Estimate, type FitPoint, type FitStart, fitShape, type ShapeFit } from "./fit-shape.ts";

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

/**
 * How far a dimension may plausibly be off (standard): a hole of 2 mm spacing or a rule across a wing; a protractor held to an
 * arm; a servo that is not the one declared, as a part of its rotation. Common practice, no source.
 */
const PLAUSIBLE = { mm: 2, deg: 5, servoPart: 0.1 };

/** Two explanations whose sums of squares differ by less, or that gain less, cannot be told apart: two standard doubts. */
const TELLING = 4;

/** Gain, both zeros and the dimension: readings at more pulses than this are needed. */
const FITTED = 4;

/**
 * Where a linkage and readings differ by more than 99 of 100 sound fits do: every dimension of the linkage and the servo's
 * rotation set free in turn, a change counted in plausible doubts, so that a short way off beats a long one that fits as
 * well. Undefined where they agree, where there are four pulses or less, or where the linkage makes no drive.
 */
export function explainMisfit(
  linkage: Linkage,
  points: readonly FitPoint[],
  doubtDeg: number,
  start: FitStart,
): Misfit | undefined {
  const made = drive(linkage);
  if (isProblem(made) || new Set(points.map((point) => point.pulseUs)).size <= FITTED) return undefined;
  const readDegPerUs = findReadRotation(made, points);
  if (readDegPerUs === undefined) return undefined;
  const from = { ...start, readDegPerUs };
  const plain = fitShape(made, points, doubtDeg, from);
  if (plain === undefined) return undefined;
  const agreement = agreementOf(plain, points.length, start);
  if (agreement.agrees) return undefined;

  const explain = (
    shape: ShapeFit | undefined,
    estimate: Estimate | undefined,
    what: Pick<Explanation, "of" | "path" | "unit" | "declared">,
  ): readonly Explanation[] => {
    if (shape === undefined || estimate === undefined) return [];
    return [
      {
        ...what,
        fitted: estimate.value,
        doubt: estimate.doubt,
        agreement: agreementOf(shape, points.length, start),
        ...sizesOf(shape.missesDeg),
      },
    ];
  };
  const ofLinkage = dimensionsOf(linkage).flatMap((dimension) => {
    const { path, unit, value: declared } = dimension;
    const driveWith = (value: number) => findDrive(dimension, value);
    const shape = fitShape(made, points, doubtDeg, from, { declared, doubt: PLAUSIBLE[unit], driveWith });
    return explain(shape, shape?.free, { of: "linkage", path, unit, declared });
  });
  const otherServo =
    start.degPerUs === undefined
      ? undefined
      : fitShape(made, points, doubtDeg, { ...from, degPerUsDoubt: PLAUSIBLE.servoPart });
  const ofServo = explain(otherServo, otherServo?.degPerUs, {
    of: "servo",
    path: ["degPerUs"],
    unit: "degPerUs",
    declared: start.degPerUs ?? 0,
  });
  return {
    agreement,
    ...sizesOf(plain.missesDeg),
    explanations: bestOf([...ofLinkage, ...ofServo], agreement),
  };
}

function findDrive(dimension: Dimension, value: number): Drive | undefined {
  const made = drive(dimension.with(value));
  return isProblem(made) ? undefined : made;
}

/** Those that help, best first, down to what cannot be told from the best. */
function bestOf(explanations: readonly Explanation[], plain: Agreement): readonly Explanation[] {
  const sorted = explanations
    .filter(({ agreement }) => plain.chiSquare - agreement.chiSquare >= TELLING)
    .sort((a, b) => a.agreement.chiSquare - b.agreement.chiSquare);
  const best = sorted[0]?.agreement.chiSquare ?? 0;
  return sorted.filter(({ agreement }) => agreement.chiSquare - best < TELLING);
}
