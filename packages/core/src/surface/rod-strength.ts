import { powerOf } from "../numeric/power.ts";
import { type Mm, type Newtons, newtons } from "../units/quantity.ts";
import { MATERIALS, type Material } from "./materials.ts";

/** How the ends of a rod are held: `pinned` turns freely, `fixed` does not, `free` is not held at all. */
export type RodEnds = "pinned" | "fixedPinned" | "fixed" | "fixedFree";

/** A straight round rod or tube. */
export interface RodMake {
  readonly material: Material | { readonly modulusGPa: number };
  /** Outer diameter, above 0. */
  readonly diameter: Mm;
  /** Inner diameter of a tube. Left out, 0: solid. */
  readonly bore?: Mm;
  /** Length that stands free between its ends, above 0. */
  readonly length: Mm;
  /** Left out, `pinned`. */
  readonly ends?: RodEnds;
}

/**
 * Push at which the rod bends out sideways: pi^2 E I / (K L)^2. For a slender, straight rod; a short, stout or bent one
 * gives way earlier. Undefined where the bore is no less than the diameter. Source: Euler's column, as in any textbook of strength of materials; K exact.
 */
export function bucklingForce(rod: RodMake): Newtons | undefined {
  const { diameter, bore = 0 } = rod;
  if (bore >= diameter) return undefined;
  const modulusGPa =
    typeof rod.material === "string" ? MATERIALS[rod.material].modulusGPa : rod.material.modulusGPa;
  const secondMomentMm4 = (Math.PI / 64) * (powerOf(diameter, 4) - powerOf(bore, 4));
  const lengthMm = LENGTH_FACTOR[rod.ends ?? "pinned"] * rod.length;
  // 1 GPa is 1000 N/mm2.
  return newtons((Math.PI ** 2 * modulusGPa * 1000 * secondMomentMm4) / lengthMm ** 2);
}

/** Length of the pinned rod that buckles at the same force. `fixedPinned`: pi over the first root of tan x = x. */
const LENGTH_FACTOR: Record<RodEnds, number> = {
  pinned: 1,
  fixedPinned: Math.PI / 4.493409457909064,
  fixed: 0.5,
  fixedFree: 2,
};
