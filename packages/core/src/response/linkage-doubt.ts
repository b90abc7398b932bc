import { dimensionsOf } from "../linkage/dimensions.ts";
import { type Drive, isLinkageProblem } from "../linkage/drive.ts";
import { drive } from "../linkage/drives.ts";
import type { Linkage } from "../linkage/linkage.ts";
import type { UncertainInput } from "../uncertainty/linearise.ts";
import type { Contribution } from "../uncertainty/propagate.ts";
import { doubtFromRectangular } from "../uncertainty/standard-doubt.ts";
import { deg } from "../units/quantity.ts";
import { rotationOf, type ShaftLine } from "./drive-response.ts";
import { ROTATION_DOUBT } from "./fit-shape.ts";

/** What makes a response from a linkage alone uncertain: every dimension, and the servo's rotation. */
export interface LinkageDoubt {
  /**
   * Dimensions in the order of `dimensionsOf`, mm and deg, named by their paths ("arm", "links.0.arm"); last the "rotation", degrees
   * per microsecond.
   */
  readonly inputs: readonly UncertainInput[];
  /** Pulse -> what each input does to the deflection there; nothing at the level pulse. */
  causesAt(pulseUs: number): readonly Contribution[];
  /**
   * Other values of the inputs, in their order -> the response that they give, pulse -> deflection, level where it was before;
   * undefined where the linkage does not reach, or is none.
   */
  responseWith(values: readonly number[]): (pulseUs: number) => number | undefined;
}

/** Half-widths of a length and of an angle as they were measured, above 0. */
export interface DimensionHalfWidths {
  readonly mm: number;
  readonly deg: number;
}

/** Rotation -> how far a drive has turned its surface from where it stands at level; undefined where it does not reach. */
type Way = (rotationDeg: number) => number | undefined;

/** A linkage with one dimension a little shorter, and a little longer. */
interface Step {
  readonly name: string;
  readonly standard: number;
  readonly low: Beside;
  readonly high: Beside;
}

interface Beside {
  readonly value: number;
  readonly way: Way;
}

/**
 * The doubt of a linkage that was never read. Its surface was set to level on the bench, whatever its dimensions, so that they
 * count by what they do to the way from level. Sensitivities by central differences of a thousandth of each standard doubt.
 * Source: JCGM 100:2008 5.1.3; for the doubt of the rotation common practice, no source.
 */
export function linkageDoubt(
  linkage: Linkage,
  made: Drive,
  line: ShaftLine,
  halfWidths: DimensionHalfWidths,
): LinkageDoubt {
  const inputs = dimensionsOf(linkage).map(({ path, unit, value }) => ({
    name: path.join("."),
    value,
    standard: doubtFromRectangular(halfWidths[unit]),
  }));
  const rotation = {
    name: "rotation",
    value: line.degPerUs,
    standard: ROTATION_DOUBT * Math.abs(line.degPerUs),
  };
  const { levelUs, rotationZeroDeg, deflectionZeroDeg } = line;
  const way = wayOf(made, rotationZeroDeg);
  const levelDeg = made.deflectionAt(deg(rotationZeroDeg)) ?? 0;
  // To make a drive costs more than all the rest of a servo's plan: made when first asked for, and once.
  let steps: readonly Step[] | undefined;
  return {
    inputs: [...inputs, rotation],
    causesAt: (pulseUs) => {
      steps ??= stepsOf(linkage, inputs, rotationZeroDeg);
      const rotationDeg = rotationOf(line, pulseUs);
      const ratio = made.ratioAt(deg(rotationDeg)) ?? 0;
      const { name, standard } = rotation;
      return [
        ...steps.map((step) => contributionOf(step, way, rotationDeg)),
        { name, standard, sensitivity: ratio * (pulseUs - levelUs) },
      ];
    },
    responseWith: (values) => {
      const other = driveOf(values.slice(0, inputs.length).reduce(withValue, linkage));
      const otherWay = wayOf(other, rotationZeroDeg);
      const otherLine = { ...line, degPerUs: values[inputs.length] ?? line.degPerUs };
      return (pulseUs) => {
        const wayDeg = otherWay(rotationOf(otherLine, pulseUs));
        return wayDeg === undefined ? undefined : levelDeg + wayDeg + deflectionZeroDeg;
      };
    },
  };
}

function stepsOf(linkage: Linkage, inputs: readonly UncertainInput[], levelDeg: number): readonly Step[] {
  return inputs.map(({ name, value, standard }, index) => {
    const beside = (other: number): Beside => ({
      value: other,
      way: wayOf(driveOf(withValue(linkage, other, index)), levelDeg),
    });
    return { name, standard, low: beside(value - standard / 1000), high: beside(value + standard / 1000) };
  });
}

/** At an end of the range one of the two does not reach, and the difference to the linkage itself serves. */
function contributionOf({ name, standard, low, high }: Step, way: Way, rotationDeg: number): Contribution {
  const [lowDeg, highDeg] = [low.way(rotationDeg), high.way(rotationDeg)];
  const width = high.value - low.value;
  if (lowDeg !== undefined && highDeg !== undefined)
    return { name, standard, sensitivity: (highDeg - lowDeg) / width };
  const hereDeg = way(rotationDeg) ?? 0;
  const halfDeg = (highDeg ?? hereDeg) - (lowDeg ?? hereDeg);
  return { name, standard, sensitivity: halfDeg / (width / 2) };
}

function wayOf(made: Drive | undefined, levelDeg: number): Way {
  const level = made?.deflectionAt(deg(levelDeg));
  return (rotationDeg) => {
    const here = made?.deflectionAt(deg(rotationDeg));
    return here === undefined || level === undefined ? undefined : here - level;
  };
}

/** One dimension changed, by its place; others keep theirs, so that several can be changed one after another. */
function withValue(linkage: Linkage, value: number, index: number): Linkage {
  return dimensionsOf(linkage)[index]?.with(value) ?? linkage;
}

function driveOf(linkage: Linkage): Drive | undefined {
  const made = drive(linkage);
  return isLinkageProblem(made) ? undefined : made;
}
