/** All numbers from the first to the second, both included. */
export type Interval = readonly [low: number, high: number];

/** The smallest interval that holds all these numbers; at least one. */
export function hullOf(first: number, ...others: readonly number[]): Interval {
  return [Math.min(first, ...others), Math.max(first, ...others)];
}

/** The smallest interval that holds both. */
export function joinIntervals(a: Interval, b: Interval): Interval {
  return [Math.min(a[0], b[0]), Math.max(a[1], b[1])];
}

/** Every sum of a number of the one and a number of the other. */
export function addIntervals(a: Interval, b: Interval): Interval {
  return [a[0] + b[0], a[1] + b[1]];
}

/** Whether all of `inner` is in `outer`, but for `slack` at either end. */
export function isInside(inner: Interval, outer: Interval, slack = 0): boolean {
  return inner[0] >= outer[0] - slack && inner[1] <= outer[1] + slack;
}
