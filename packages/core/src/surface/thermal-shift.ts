import { degrees } from "../numeric/angle.ts";
import { type Deg, type DegPerUs, deg, type Mm, type Us, us } from "../units/quantity.ts";

/** A rod and the structure beside it. */
export interface RodGrowth {
  /** Growth of the structure along the rod, per kelvin. */
  readonly structurePerK: number;
  /** Growth of the rod, per kelvin. */
  readonly rodPerK: number;
  /** Length of the rod. */
  readonly length: Mm;
  /** Distance from hinge to rod, square to the rod, above 0. */
  readonly hornRadius: Mm;
}

/** Drift of a servo's neutral, microseconds a kelvin, to either side. From experience, no source. */
export const USUAL_DRIFT_US_PER_K = 0.3;

/**
 * Size of the deflection by which a rod that grows unlike its structure moves the surface over so many kelvin. Source:
 * thermal expansion; small angles.
 */
export function rodShift(rod: RodGrowth, kelvin: number): Deg {
  const lengthMm = (rod.structurePerK - rod.rodPerK) * rod.length * kelvin;
  return deg(degrees(Math.abs(lengthMm / rod.hornRadius)));
}

/** Size of a servo's drift over so many kelvin, as a pulse span. Common practice, no source. */
export function servoDrift(kelvin: number, driftUsPerK: number = USUAL_DRIFT_US_PER_K): Us {
  return us(Math.abs(kelvin * driftUsPerK));
}

/** The largest shift of a surface over so many kelvin: rod and servo the same way, at a slope of the response. */
export function thermalShift(rod: Deg, drift: Us, slope: DegPerUs): Deg {
  return deg(Math.abs(rod) + drift * Math.abs(slope));
}
