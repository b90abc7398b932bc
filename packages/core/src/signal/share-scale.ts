import { pct, us } from "../units/quantity.ts";
import type { SignalScale } from "./signal-scale.ts";

/**
 * What a position means on a radio whose limits scale: the share of the way between the two limits of its channel, -100 at the low one
 * and +100 at the high one. Pulses in microseconds, the low one below the high one.
 */
export function shareScale(
  [lowUs, highUs]: readonly [number, number],
  { step }: Pick<SignalScale, "step">,
): SignalScale<"share"> {
  return {
    name: "share",
    centre: us((lowUs + highUs) / 2),
    per100: us((highUs - lowUs) / 2),
    reach: pct(100),
    step: pct(step),
  };
}
