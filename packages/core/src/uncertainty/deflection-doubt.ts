import { type Contribution, type Propagated, propagate } from "./propagate.ts";
import { doubtFromRectangular, doubtFromScatter, doubtFromStep } from "./standard-doubt.ts";

/** What makes a deflection that was read uncertain. Degrees, 0 or more; left out: none. */
export interface DeflectionCauses {
  /** Smallest change that the meter shows. */
  readonly displayStepDeg?: number;
  /** What the meter shows is true to plus and minus this. */
  readonly meterHalfWidthDeg?: number;
  /** The rule that reads a throw in the meter's place is true to plus and minus this. */
  readonly ruleHalfWidthDeg?: number;
  /** The meter's zero is true to plus and minus this. */
  readonly zeroHalfWidthDeg?: number;
  /** Standard doubt from the meter's alignment to the hinge. */
  readonly alignmentDeg?: number;
  /** The surface moves by plus and minus this with the servo at rest. */
  readonly freePlayHalfWidthDeg?: number;
  /** Scatter of one reading, and how many were averaged (left out, 1). */
  readonly scatter?: { readonly deviationDeg: number; readonly count?: number; readonly dof?: number };
}

/** Standard doubt of one deflection as read and its budget, degrees. Source of the method: JCGM 100:2008 5.1.2. */
export function deflectionDoubt(causes: DeflectionCauses): Propagated {
  const { scatter } = causes;
  const contributions: Contribution[] = [
    { name: "display", standard: doubtFromStep(causes.displayStepDeg ?? 0), sensitivity: 1 },
    { name: "meter", standard: doubtFromRectangular(causes.meterHalfWidthDeg ?? 0), sensitivity: 1 },
    { name: "rule", standard: doubtFromRectangular(causes.ruleHalfWidthDeg ?? 0), sensitivity: 1 },
    { name: "zero", standard: doubtFromRectangular(causes.zeroHalfWidthDeg ?? 0), sensitivity: 1 },
    { name: "alignment", standard: causes.alignmentDeg ?? 0, sensitivity: 1 },
    { name: "freePlay", standard: doubtFromRectangular(causes.freePlayHalfWidthDeg ?? 0), sensitivity: 1 },
    {
      name: "scatter",
      standard: doubtFromScatter(scatter?.deviationDeg ?? 0, scatter?.count ?? 1),
      sensitivity: 1,
      ...(scatter?.dof === undefined ? {} : { dof: scatter.dof }),
    },
  ];
  return propagate(contributions.filter((one) => one.standard > 0));
}

/** Standard doubt of a deflection that a pulse is meant to give, where the response rises by `slopeDegPerUs`. */
export function positionDoubt(deflectionDeg: number, pulseUs: number, slopeDegPerUs: number): Propagated {
  return propagate([
    { name: "deflection", standard: deflectionDeg, sensitivity: 1 },
    { name: "pulse", standard: pulseUs, sensitivity: slopeDegPerUs },
  ]);
}
