import { radians } from "../numeric/angle.ts";
import { type Deg, deg, type Nm } from "../units/quantity.ts";

/** How far a servo's shaft gives way under its stall torque, where nothing is known. From experience, no source. */
export const USUAL_GIVE = deg(1.5);

/** Stiffness of a servo's shaft, newton metres a radian, from the angle above 0 by which its stall torque moves it. */
export function servoStiffness(torque: Nm, give: Deg = USUAL_GIVE): number {
  return torque / radians(give);
}

/**
 * Stiffness of springs that carry the same torque one after the other, in the unit of its parts, each above 0; Infinity,
 * rigid, for none. Source: springs in series.
 */
export function stiffnessInSeries(stiffnesses: readonly number[]): number {
  return 1 / stiffnesses.reduce((sum, stiffness) => sum + 1 / stiffness, 0);
}

/**
 * Frequency, hertz, at which a surface swings on its servo with the linkage rigid: a figure to compare with the wing's,
 * not a verdict, and never a clearance from flutter. Inertia about the hinge above 0. Undefined where the ratio
 * d(deflection)/d(rotation) is 0: there the surface is held by the rod alone. Source: a mass on a torsion spring.
 */
export function swingFrequencyHz(
  servoNmPerRad: number,
  ratio: number,
  inertiaKgM2: number,
): number | undefined {
  const hertz = Math.sqrt(servoNmPerRad / ratio ** 2 / inertiaKgM2) / (2 * Math.PI);
  return Number.isFinite(hertz) ? hertz : undefined;
}
