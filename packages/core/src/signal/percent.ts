import { type Percent, pct, type Us, us } from "../units/quantity.ts";
import type { SignalScale } from "./signal-scale.ts";

/**
 * What the radio shows for a pulse: percent of the span on that side of the centre, not rounded to the step and not
 * held to the reach. Pulse in microseconds, absolute. Asks for a scale without problems (scale-problems.ts).
 */
export function toPercent<Name extends string>(scale: SignalScale<Name>, pulse: Us): Percent<Name> {
  const aboveCentreUs = pulse - scale.centre;
  // Times 100 first: the product is exact for the percents and spans in use, so the quotient has one rounding.
  return pct((aboveCentreUs * 100) / spanUs(scale, aboveCentreUs));
}

/**
 * The pulse at the receiver for a percent of this scale, whether or not it is on the grid or within the reach. Never
 * falls as the percent grows. toPercent undoes it to 1e-12 of the pulse.
 */
export function toPulse<Name extends string>(scale: SignalScale<Name>, percent: Percent<NoInfer<Name>>): Us {
  return us(scale.centre + (percent * spanUs(scale, percent)) / 100);
}

function spanUs(scale: SignalScale, side: number): number {
  if (typeof scale.per100 === "number") return scale.per100;
  return side < 0 ? scale.per100.below : scale.per100.above;
}
