import { type Contribution, type Propagated, propagate } from "./propagate.ts";
import { doubtFromRectangular, doubtFromStep } from "./standard-doubt.ts";

/** What makes a pulse uncertain. Microseconds, 0 or more; left out: none. */
export interface PulseCauses {
  /** The tester's shown pulse is true to plus and minus this. */
  readonly testerHalfWidthUs?: number;
  /** Smallest change that can be set. */
  readonly stepUs?: number;
  /** Standard deviation of the pulse itself. */
  readonly jitterUs?: number;
  /** The servo does not answer within plus and minus this. */
  readonly deadBandHalfWidthUs?: number;
}

/** Standard doubt of one pulse and its budget, microseconds. Source of the method: JCGM 100:2008 5.1.2. */
export function pulseDoubt(causes: PulseCauses): Propagated {
  const contributions: Contribution[] = [
    { name: "tester", standard: doubtFromRectangular(causes.testerHalfWidthUs ?? 0), sensitivity: 1 },
    { name: "step", standard: doubtFromStep(causes.stepUs ?? 0), sensitivity: 1 },
    { name: "jitter", standard: causes.jitterUs ?? 0, sensitivity: 1 },
    { name: "deadBand", standard: doubtFromRectangular(causes.deadBandHalfWidthUs ?? 0), sensitivity: 1 },
  ];
  return propagate(contributions.filter((one) => one.standard > 0));
}
