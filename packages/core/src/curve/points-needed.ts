import type { PolylineOptions } from "./minimax-polyline.ts";
import { minimaxPolyline } from "./minimax-polyline.ts";

/**
 * The fewest points, 2 to `most`, with which the best polyline against y = f(x) is nowhere further off than `tolerance`, in y.
 * Evenly spaced points may do worse with one point more. Undefined where `most` are not enough, or where
 * `minimaxPolyline` has no answer. A tolerance that is only just reached counts as reached, within one part in 1e8.
 */
export function pointsNeeded(
  f: (x: number) => number,
  ends: readonly [number, number],
  tolerance: number,
  options: PolylineOptions,
  most: number,
): number | undefined {
  for (let n = 2; n <= most; n++) {
    const polyline = minimaxPolyline(f, ends, n, options);
    if (polyline === undefined) return undefined;
    if (polyline.worst <= tolerance * (1 + JUST_REACHED)) return n;
  }
  return undefined;
}

/** More than the parts by which minimaxPolyline is above the least error. */
const JUST_REACHED = 1e-8;
