import { type Drive, isLinkageProblem } from "../../../packages/core/src/linkage/drive.ts";
import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type { Linkage, Point } from "../../../packages/core/src/linkage/linkage.ts";
import { mm } from "../../../packages/core/src/units/quantity.ts";

/** The drive of a linkage that the test knows to be sound. */
export function made(linkage: Linkage): Drive {
  const result = drive(linkage);
  if (isLinkageProblem(result)) throw new Error(JSON.stringify(result));
  return result;
}

export const point = (aft: number, starboard: number, up: number): Point => [mm(aft), mm(starboard), mm(up)];

/** |a - b| over |b|, or |a| where b is 0. */
export const relative = (a: number | undefined, b: number): number =>
  a === undefined ? Number.POSITIVE_INFINITY : Math.abs(a - b) / (Math.abs(b) || 1);

/** The difference of two angles, degrees, without whole turns. */
export const apart = (a: number, b: number): number => {
  const rest = a - b - 360 * Math.round((a - b) / 360);
  return Math.abs(rest);
};
