import type { Gates } from "./gates.ts";
import type { Samples } from "./samples.ts";

/** What the first and the last ordinate may be, whatever the error. */
export interface Ends {
  readonly first: readonly [low: number, high: number];
  readonly last: readonly [low: number, high: number];
}

/** What a polyline passes at the samples if its error is no larger there. */
export function gatesOf({ x, y }: Samples, { first, last }: Ends, error: number): Gates {
  const low = Float64Array.from(y, (one) => one - error);
  const high = Float64Array.from(y, (one) => one + error);
  const end = x.length - 1;
  low[0] = Math.max(low[0] as number, first[0]);
  high[0] = Math.min(high[0] as number, first[1]);
  low[end] = Math.max(low[end] as number, last[0]);
  high[end] = Math.min(high[end] as number, last[1]);
  return { x: Float64Array.from(x), low, high, y: Float64Array.from(y), error };
}
