import type { Drive } from "../linkage/drive.ts";
import { deg } from "../units/quantity.ts";
import type { FitPoint } from "./fit-shape.ts";

/**
 * Rotation per microsecond as the readings at the lowest and the highest pulse tell it through the drive, signed; a
 * deflection beyond the drive's range counts as its end. Undefined where the two stand at one rotation.
 */
export function findReadRotation(
  { range, rotationAt }: Drive,
  points: readonly FitPoint[],
): number | undefined {
  const [first, ...others] = points.toSorted((a, b) => a.pulseUs - b.pulseUs);
  const last = others.at(-1);
  if (first === undefined || last === undefined) return undefined;
  const ends = [range.low.deflection, range.high.deflection];
  const rotationOf = ({ deflectionDeg }: FitPoint) =>
    rotationAt(deg(Math.min(Math.max(...ends), Math.max(Math.min(...ends), deflectionDeg))));
  const [from, to] = [rotationOf(first), rotationOf(last)];
  if (from === undefined || to === undefined || from === to || first.pulseUs === last.pulseUs)
    return undefined;
  return (to - from) / (last.pulseUs - first.pulseUs);
}
