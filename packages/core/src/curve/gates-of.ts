import type { Gates } from "./gates.ts";
import type { Samples } from "./samples.ts";

/** The lowest and the highest ordinate that a polyline may have, whatever the error. */
export type Range = readonly [low: number, high: number];

/** What a polyline passes at the samples if its error is no larger there. As it never turns back, its ends alone keep the range. */
export function gatesOf({ x, y }: Samples, range: Range, error: number): Gates {
  const low = Float64Array.from(y, (one) => one - error);
  const high = Float64Array.from(y, (one) => one + error);
  for (const end of [0, x.length - 1]) {
    low[end] = Math.max(low[end] as number, range[0]);
    high[end] = Math.min(high[end] as number, range[1]);
  }
  return { x: Float64Array.from(x), low, high, y: Float64Array.from(y), error };
}
