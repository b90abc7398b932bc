import { dimensionsOf } from "../linkage/dimensions.ts";
import type { Linkage } from "../linkage/linkage.ts";
import type { Instruments, Radio, Reading, ServoType, Surface } from "../model/model.ts";
import type { Assumed } from "../plan/setup-plan.ts";
import { ROTATION_DOUBT } from "../response/fit-shape.ts";
import type { DimensionHalfWidths } from "../response/linkage-doubt.ts";
import { throwMmPerDegAt } from "../surface/throw.ts";
import { deflectionDoubt } from "../uncertainty/deflection-doubt.ts";
import type { Propagated } from "../uncertainty/propagate.ts";
import { pulseDoubt } from "../uncertainty/pulse-doubt.ts";
import { deg } from "../units/quantity.ts";
import { largestStepUs } from "./step-span.ts";
import { trailingEdge } from "./trailing-edge.ts";

/** Standard doubts (k = 1) of one reading. */
export interface ReadingDoubt {
  readonly pulseUs: number;
  readonly deflectionDeg: number;
}

/** What is taken where a model does not say: half-widths, degrees, millimetres, microseconds. (assumptions of experience) */
const usual = {
  /** A tester that shows whole microseconds. */
  pulseUs: 1,
  /** An angle meter with a display of 0.1 degrees. */
  deflectionDeg: 0.2,
  /** A steel rule, at the trailing edge or along a linkage. */
  throwMm: 0.5,
  /** A protractor held to an arm, a horn or a bent wire. */
  layoutDeg: 1,
  /** Play of the surface with the servo at rest. */
  freePlayDeg: 0.35,
  /** Standard doubt from how square the meter stands to the hinge. */
  alignmentDeg: 0.05,
  /** Standard deviation of the pulse itself. */
  jitterUs: 0.5,
} as const;

/** The causes of a position's doubt that are assumed, by their names in its budget. */
export function assumedCauses(
  surface: Surface,
  instruments: Instruments | undefined,
  readings: readonly Reading[] = [],
): ReadonlyMap<string, Assumed> {
  const { rule, assumed } = readWith(surface, instruments, readings);
  return new Map<string, Assumed>([
    ...(assumed === undefined
      ? []
      : [rule ? "rule" : "meter", "zero"].map((cause) => [cause, assumed] as const)),
    ["alignment", { deg: usual.alignmentDeg }],
    ["jitter", { us: usual.jitterUs }],
    ...(surface.freePlay === undefined ? ([["freePlay", { deg: usual.freePlayDeg }]] as const) : []),
    ...(instruments?.pulse === undefined ? ([["tester", { us: usual.pulseUs }]] as const) : []),
  ]);
}

/** The same for a linkage that was never read. */
export function assumedOfLinkage(
  surface: Surface,
  instruments: Instruments | undefined,
  linkage: Linkage,
): ReadonlyMap<string, Assumed> {
  const dimensions = dimensionsOf(linkage).flatMap(({ path, unit }) => {
    if (unit === "mm" && instruments?.throw !== undefined) return [];
    const assumed = unit === "mm" ? { mm: usual.throwMm } : { deg: usual.layoutDeg };
    return [[path.join("."), assumed] as const];
  });
  return new Map<string, Assumed>([
    ...assumedCauses(surface, instruments),
    ...dimensions,
    ["rotation", { percent: 100 * ROTATION_DOUBT }],
  ]);
}

/** The doubt of a deflection as read: meter and its zero, alignment, free play; for throws the rule in place of the meter. */
export function readingDoubt(
  surface: Surface,
  instruments: Instruments | undefined,
  readings: readonly Reading[] = [],
): ReadingDoubt & { readonly causes: Propagated } {
  const { rule, halfWidthDeg } = readWith(surface, instruments, readings);
  const causes = deflectionDoubt({
    ...(rule ? { ruleHalfWidthDeg: halfWidthDeg } : { meterHalfWidthDeg: halfWidthDeg }),
    zeroHalfWidthDeg: halfWidthDeg,
    alignmentDeg: usual.alignmentDeg,
    freePlayHalfWidthDeg: surface.freePlay ?? usual.freePlayDeg,
  });
  const pulseUs = pulseDoubt({ testerHalfWidthUs: instruments?.pulse ?? usual.pulseUs }).standard;
  return { pulseUs, deflectionDeg: causes.standard, causes };
}

/**
 * The doubt of a deflection that was never read, but for what `linkageDoubt` says: how well level was set, and free play. The
 * deflections of a track were read with a meter when its cam was measured.
 */
export function levelDoubt(
  surface: Surface,
  instruments: Instruments | undefined,
  onTrack: boolean,
): Propagated {
  const { halfWidthDeg } = readWith(surface, instruments, []);
  return deflectionDoubt({
    ...(onTrack ? { meterHalfWidthDeg: halfWidthDeg } : {}),
    zeroHalfWidthDeg: halfWidthDeg,
    freePlayHalfWidthDeg: surface.freePlay ?? usual.freePlayDeg,
  });
}

/** What the dimensions of a linkage are true to: lengths as a rule reads them, angles as a protractor does. */
export function dimensionHalfWidths(instruments: Instruments | undefined): DimensionHalfWidths {
  return { mm: instruments?.throw ?? usual.throwMm, deg: usual.layoutDeg };
}

/** The doubt of a pulse as the servo obeys it: tester, a step of the radio, jitter, dead band. */
export function settingDoubt(
  radio: Radio,
  instruments: Instruments | undefined,
  type: ServoType | undefined,
): Propagated {
  return pulseDoubt({
    testerHalfWidthUs: instruments?.pulse ?? usual.pulseUs,
    stepUs: largestStepUs(radio),
    jitterUs: usual.jitterUs,
    deadBandHalfWidthUs: type?.deadBand ?? 0,
  });
}

/** What a bench was read with, the coarser where it was both: meter or rule, its half-width, and what of it is assumed. */
function readWith(
  surface: Surface,
  instruments: Instruments | undefined,
  readings: readonly Reading[],
): { readonly rule: boolean; readonly halfWidthDeg: number; readonly assumed?: Assumed } {
  const meterDeg = instruments?.deflection ?? usual.deflectionDeg;
  const worstRuleDeg = Math.max(0, ...readings.map((one) => ruleDeg(one, surface, instruments)));
  if (worstRuleDeg > meterDeg)
    return {
      rule: true,
      halfWidthDeg: worstRuleDeg,
      ...(instruments?.throw === undefined ? { assumed: { mm: usual.throwMm } } : {}),
    };
  return {
    rule: false,
    halfWidthDeg: meterDeg,
    ...(instruments?.deflection === undefined ? { assumed: { deg: usual.deflectionDeg } } : {}),
  };
}

/** The half-width of a throw reading's doubt as an angle; 0 for a reading in degrees. */
function ruleDeg([, at]: Reading, surface: Surface, instruments: Instruments | undefined): number {
  if (typeof at === "number" || at.kind !== "throw" || surface.chord === undefined) return 0;
  const mmPerDeg = throwMmPerDegAt(trailingEdge(surface, surface.chord), deg(0));
  return (instruments?.throw ?? usual.throwMm) / mmPerDeg;
}
