import type { PlanChannel } from "@hingeline/core";

/** Microseconds to the safe ends. */
export interface SparePulses {
  readonly lowUs: number;
  readonly highUs: number;
}

/**
 * What a channel has to spare at its two ends, below 0 past a safe end: from the furthest pulse that a combination of controls asks
 * for, or that a value as entered gives, whichever goes further.
 */
export function sparePulses({ safeUs: [lowUs, highUs], extremes, settings }: PlanChannel): SparePulses {
  const entered = settings.map(({ enter }) => enter.pulseUs);
  return {
    lowUs: Math.min(extremes.low.pulseUs, ...entered) - lowUs,
    highUs: highUs - Math.max(extremes.high.pulseUs, ...entered),
  };
}
