import type { SignalScale } from "../signal/signal-scale.ts";
import { pct, us } from "../units/quantity.ts";
import type { PlanRadio } from "./setup-plan.ts";

/** The signal scale of a plan's radio. */
export function scaleOf({ name, centreUs, per100Us, reachPercent, stepPercent }: PlanRadio): SignalScale {
  return {
    name,
    centre: us(centreUs),
    per100:
      typeof per100Us === "number" ? us(per100Us) : { below: us(per100Us.below), above: us(per100Us.above) },
    reach: pct(reachPercent),
    step: pct(stepPercent),
  };
}
