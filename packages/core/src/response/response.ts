import type { Deg, DegPerUs, Us } from "../units/quantity.ts";

/** The strictly monotone relation pulse <-> deflection of one servo, inside what was measured and nowhere else. */
export interface Response {
  /** Lowest and highest pulse covered. */
  readonly pulses: readonly [Us, Us];
  /** Lowest and highest deflection covered. */
  readonly deflections: readonly [Deg, Deg];
  /** Pulses between which the response is one smooth piece, a cubic or near enough to one; the first and the last are `pulses`. */
  readonly knots: readonly Us[];
  /** Whether deflection grows with pulse. */
  readonly rising: boolean;
  /** Pulse -> deflection; undefined outside `pulses`. */
  deflectionAt(pulse: Us): Deg | undefined;
  /** Deflection -> pulse; undefined outside `deflections`. Inverse of `deflectionAt` to 1e-9 us. */
  pulseAt(deflection: Deg): Us | undefined;
  /** Pulse -> d(deflection)/d(pulse), signed; undefined outside `pulses`. */
  slopeAt(pulse: Us): DegPerUs | undefined;
}
