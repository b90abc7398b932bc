/**
 * The slopes at the points of a shape-preserving cubic: inside, the weighted harmonic mean of both secants, 0 where they
 * differ in sign; at the ends, the three-point formula, cut back so that the end piece keeps its shape. `xs` strictly
 * increasing; y per x. A single point has slope 0.
 * Source: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304, as in PCHIM of SLATEC (formulas from memory).
 */
export function pchimSlopes(xs: readonly number[], ys: readonly number[]): number[] {
  const secants = xs.slice(1).map((x, i) => {
    const width = x - (xs[i] as number);
    return { width, slope: ((ys[i + 1] as number) - (ys[i] as number)) / width };
  });
  const first = secants[0];
  if (first === undefined) return xs.map(() => 0);
  const inner = secants.slice(1).map((after, i) => innerSlope(secants[i] as Secant, after));
  return [endSlope(first, secants[1]), ...inner, endSlope(secants.at(-1) ?? first, secants.at(-2))];
}

/** The straight line from one point to the next. */
interface Secant {
  readonly width: number;
  readonly slope: number;
}

function innerSlope(before: Secant, after: Secant): number {
  if (Math.sign(before.slope) * Math.sign(after.slope) <= 0) return 0;
  const weightBefore = 2 * after.width + before.width;
  const weightAfter = after.width + 2 * before.width;
  return (weightBefore + weightAfter) / (weightBefore / before.slope + weightAfter / after.slope);
}

function endSlope(end: Secant, next: Secant | undefined): number {
  if (next === undefined) return end.slope;
  const slope =
    ((2 * end.width + next.width) * end.slope - end.width * next.slope) / (end.width + next.width);
  if (Math.sign(slope) !== Math.sign(end.slope)) return 0;
  // Steeper than this only where the secants differ in sign: else the formula stays below twice the secant.
  return Math.abs(slope) > 3 * Math.abs(end.slope) ? 3 * end.slope : slope;
}
