import { type Drive, isLinkageProblem } from "../linkage/drive.ts";
import type { Linkage } from "../linkage/linkage.ts";
import { deg, mm } from "../units/quantity.ts";
import { driveOf } from "./drive-of.ts";

/** Extension of a carriage -> the deflection it gives, degrees; `"noTrack"` for a linkage without one, undefined past its ends. */
export function deflectionAtExtension(
  linkage: Linkage | undefined,
  extensionMm: number,
): number | undefined | "noTrack" {
  const made = linkage === undefined ? undefined : driveOf(linkage);
  if (made === undefined || isLinkageProblem(made) || made.extension === undefined) return "noTrack";
  const rotation = made.extension.rotationAt(mm(extensionMm));
  return rotation === undefined ? undefined : made.deflectionAt(rotation);
}

/** Deflection -> the extension of the carriage, millimetres; undefined without a track or past its ends. */
export function extensionAtDeflection(
  { extension, rotationAt }: Drive,
  deflectionDeg: number,
): number | undefined {
  const rotation = rotationAt(deg(deflectionDeg));
  return rotation === undefined ? undefined : extension?.extensionAt(rotation);
}
