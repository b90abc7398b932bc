/** One point of a polyline. */
export interface Knot {
  readonly x: number;
  readonly y: number;
}

/** A continuous line of straight pieces, and how far it is from the curve it stands for. */
export interface Polyline {
  /** From the curve's first x to its last, x strictly increasing. */
  readonly knots: readonly Knot[];
  /** Largest absolute error in y anywhere between the first x and the last. */
  readonly worst: number;
}

/** A straight line through a point. */
export interface Line {
  readonly x: number;
  readonly y: number;
  readonly slope: number;
}

/** The line's y; exactly the point's at the point's x, even where the slope is infinite. */
export function lineAt(line: Line, x: number): number {
  return x === line.x ? line.y : line.y + line.slope * (x - line.x);
}

/** The line from one knot to another of larger x. */
export function lineThrough(from: Knot, to: Knot): Line {
  return { ...from, slope: (to.y - from.y) / (to.x - from.x) };
}
