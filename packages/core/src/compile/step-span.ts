import type { Radio } from "../model/model.ts";

/** Pulse span of one step of the radio, on its coarser side, microseconds. */
export function largestStepUs({ per100, step }: Radio): number {
  return ((typeof per100 === "number" ? per100 : Math.max(per100.below, per100.above)) * step) / 100;
}
