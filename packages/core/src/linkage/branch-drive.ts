import { degrees, radians } from "../numeric/angle.ts";
import { type Deg, deg } from "../units/quantity.ts";
import { type Branch, type Monotone, rotationInside, rotationsOn } from "./branch.ts";
import type { Drive } from "./drive.ts";

/** What a drive says of its branch, and nothing of its rods. */
export type BranchDrive = Pick<Drive, "range" | "deflectionAt" | "rotationAt" | "rotationsAt">;

/** A branch in radians, with its monotone part, as the answers of a drive in degrees. */
export function branchDrive(branch: Branch, monotone: Monotone): BranchDrive {
  return {
    range: monotone.range,
    deflectionAt: (rotation) => toDeg(branch.deflectionAt(radians(rotation))),
    rotationAt: (deflection) => toDeg(rotationInside(branch, monotone, radians(deflection))),
    rotationsAt: (deflection) =>
      rotationsOn(branch, radians(deflection)).map((rotationRad) => deg(degrees(rotationRad))),
  };
}

/** Radians -> degrees; undefined stays undefined. */
export function toDeg(angleRad: number | undefined): Deg | undefined {
  return angleRad === undefined ? undefined : deg(degrees(angleRad));
}
