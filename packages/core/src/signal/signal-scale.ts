import type { Percent, Us } from "../units/quantity.ts";

/** How a radio's percent and the pulse at its receiver belong together. */
export interface SignalScale<Name extends string = string> {
  readonly name: Name;
  /** Pulse at 0 percent. */
  readonly centre: Us;
  /** Pulse span of 100 percent; two spans where the sides below and above the centre differ. */
  readonly per100: Us | { readonly below: Us; readonly above: Us };
  /** Largest percent, to either side. */
  readonly reach: Percent;
  /** Smallest percent that can be entered. */
  readonly step: Percent;
}
