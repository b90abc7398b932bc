/** Where a function of time is furthest from zero. */
export interface Worst {
  /** Share of the way, 0 to 1. */
  readonly at: number;
  /** Signed. */
  readonly value: number;
}

/**
 * Where `difference`, a function on [0, 1] that is a cubic between neighbouring `breaks`, is furthest from zero: exact, since a cubic is
 * known from four of its values and its extremes from its derivative. Where a piece is only near to a cubic, the answer is as near.
 */
export function worstDifference(difference: (at: number) => number, breaks: readonly number[]): Worst {
  const knots = [0, ...breaks.filter((at) => at > 0 && at < 1).sort((a, b) => a - b), 1];
  let worst: Worst = { at: 0, value: difference(0) };
  const consider = (at: number) => {
    const value = difference(at);
    if (Math.abs(value) > Math.abs(worst.value)) worst = { at, value };
  };
  knots.forEach((end, index) => {
    const start = knots[index - 1];
    if (start === undefined) return;
    const width = end - start;
    for (const share of extremesOfCubic((s) => difference(start + s * width)))
      consider(start + share * width);
    consider(end);
  });
  return worst;
}

/** The places inside (0, 1) at which the cubic through f(0), f(1/3), f(2/3), f(1) has a level tangent. */
function extremesOfCubic(f: (s: number) => number): number[] {
  const [f0, f1, f2, f3] = [f(0), f(1 / 3), f(2 / 3), f(1)];
  const cube = (9 / 2) * (f3 - 3 * f2 + 3 * f1 - f0);
  const square = (9 / 2) * (-f3 + 4 * f2 - 5 * f1 + 2 * f0);
  const line = (1 / 2) * (2 * f3 - 9 * f2 + 18 * f1 - 11 * f0);
  const half = square / (3 * cube);
  const root = half ** 2 - line / (3 * cube);
  const places =
    Math.abs(cube) < 1e-12
      ? [-line / (2 * square)]
      : root < 0
        ? []
        : [-half - Math.sqrt(root), -half + Math.sqrt(root)];
  return places.filter((s) => s > 0 && s < 1);
}
