import { radians } from "../numeric/angle.ts";
import { type Deg, type Nm, nm } from "../units/quantity.ts";
import { stiffnessInSeries } from "./stiffness.ts";

/**
 * Torque with which two servos on one surface strain against each other at rest, when one wants to stand `mismatch`
 * degrees of shaft off what the other allows. Stiffnesses of both servos and of what joins them, newton metres a
 * radian, one at least, each above 0. Source: springs in series.
 */
export function fightingTorque(mismatch: Deg, stiffnessesNmPerRad: readonly number[]): Nm {
  return nm(radians(Math.abs(mismatch)) * stiffnessInSeries(stiffnessesNmPerRad));
}
