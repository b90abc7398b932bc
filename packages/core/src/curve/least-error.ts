import type { Knot } from "./polyline.ts";

/** Where to look, and how closely. */
export interface Search {
  readonly guess: number;
  /** An error at which there certainly is a polyline. */
  readonly most: number;
  /** Parts of the error by which the answer may be too large. */
  readonly slack: number;
  /** What is rounding. */
  readonly nothing: number;
}

/** An error, and a polyline that has it. */
export interface Fit {
  readonly error: number;
  readonly knots: readonly Knot[];
}

/** The least error for which `thread` finds a polyline, rounded up, and that polyline. */
export function leastError(
  thread: (error: number) => readonly Knot[] | undefined,
  { guess, most: limit, slack, nothing }: Search,
): Fit | undefined {
  let least = 0;
  let error = guess;
  let best: Fit | undefined;
  // The guess may be very near, so the steps away from it begin small.
  for (let step = slack * guess + nothing; ; step *= 8) {
    const knots = thread(error);
    if (knots !== undefined) best = { error, knots };
    else least = error;
    if (best !== undefined && least > 0) break;
    if (best === undefined && error > limit) return undefined;
    if (best !== undefined && error <= step) break;
    error += knots === undefined ? step : -step;
  }
  while (best.error - least > slack * best.error + nothing) {
    error = (least + best.error) / 2;
    const knots = thread(error);
    if (knots === undefined) least = error;
    else best = { error, knots };
  }
  return best;
}
