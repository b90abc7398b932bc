import type { Deg, Mm } from "../units/quantity.ts";

/** What turns shaft rotation into deflection, as plain data. */
export type Linkage = Pushrod;

/** A rod in one plane from a servo arm to a horn. x aft, z up; angles from aft (0) through up (90). */
export interface Pushrod {
  readonly kind: "pushrod";
  /** Shaft to rod pin. */
  readonly arm: Mm;
  /** Hinge to rod pin. */
  readonly horn: Mm;
  /** Shaft to hinge, aft. */
  readonly base: Mm;
  /** Shaft to hinge, up. */
  readonly rise: Mm;
  /** Angle of the arm at level. */
  readonly armAt: Deg;
  /** Angle of the horn at level. */
  readonly hornAt: Deg;
  /** Pin to pin; left out, what fits at level. */
  readonly rod?: Mm;
}
