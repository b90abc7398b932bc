import { errorPeaks } from "./error-peaks.ts";
import type { Knot } from "./polyline.ts";
import { sampleCurve } from "./samples.ts";

/**
 * The largest absolute error in y of a polyline against the curve y = f(x), smooth between `breaks`, anywhere from its first
 * knot to its last. Undefined for fewer than two knots, where their x do not increase, or where f is not finite.
 */
export function worstError(
  f: (x: number) => number,
  knots: readonly Knot[],
  breaks: readonly number[] = [],
): number | undefined {
  const [first, last] = [knots[0], knots.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  if (!knots.every(({ x }, k) => k === 0 || x > (knots[k - 1] as Knot).x)) return undefined;
  const corners = [...breaks, ...knots.map(({ x }) => x)];
  const samples = sampleCurve(f, [first.x, last.x], corners, SAMPLES);
  return samples && Math.max(...errorPeaks(f, samples, knots).map((peak) => peak.value));
}

const SAMPLES = 24;
