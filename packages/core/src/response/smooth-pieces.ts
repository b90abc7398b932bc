/** A piece is not halved more often than this; one that still bends then holds a corner or the like. */
const MOST_HALVINGS = 24;

/** Places within a piece, as parts of it, at which the cubic is held against the function. */
const PROBES = [0.25, 0.5, 0.75];

/**
 * Places from `low` to `high`, both included and rising, between which a function stays within `tolerance` of the cubic
 * through its values and slopes at both, at a quarter, half and three quarters of the way. Halved from both ends of the
 * whole, so that a smooth function gets few and one with a steep end gets them where it is steep. Where value or slope are
 * undefined a piece is halved.
 */
export function smoothPieces(
  valueAt: (x: number) => number | undefined,
  slopeAt: (x: number) => number | undefined,
  [low, high]: readonly [number, number],
  tolerance: number,
): readonly number[] {
  const places = [low];
  const divide = (from: number, to: number, halvings: number) => {
    if (halvings < MOST_HALVINGS && !isCubic(valueAt, slopeAt, from, to, tolerance)) {
      const middle = (from + to) / 2;
      divide(from, middle, halvings + 1);
      divide(middle, to, halvings + 1);
    } else places.push(to);
  };
  divide(low, high, 0);
  return places;
}

function isCubic(
  valueAt: (x: number) => number | undefined,
  slopeAt: (x: number) => number | undefined,
  from: number,
  to: number,
  tolerance: number,
): boolean {
  const [value0, value1, slope0, slope1] = [valueAt(from), valueAt(to), slopeAt(from), slopeAt(to)];
  if (value0 === undefined || value1 === undefined || slope0 === undefined || slope1 === undefined)
    return false;
  const width = to - from;
  return PROBES.every((t) => {
    const value = valueAt(from + t * width);
    const rest = 1 - t;
    const cubic =
      value0 * rest ** 2 * (1 + 2 * t) +
      value1 * t ** 2 * (1 + 2 * rest) +
      width * t * rest * (slope0 * rest - slope1 * t);
    return value !== undefined && Math.abs(value - cubic) <= tolerance;
  });
}
