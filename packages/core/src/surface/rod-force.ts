import { type Mm, type Newtons, type Nm, newtons } from "../units/quantity.ts";

/**
 * Force along a rod that carries a moment or torque at so many millimetres, measured square from the axis to the rod's
 * line: a hinge moment at the horn, a stalled servo's torque at the arm. Undefined at a dead centre, where the radius is
 * 0 and no force is enough.
 */
export function rodForce(moment: Nm, radius: Mm): Newtons | undefined {
  // A radius next to nothing has no finite force either.
  const force = Math.abs((moment * 1000) / radius);
  return Number.isFinite(force) ? newtons(force) : undefined;
}
