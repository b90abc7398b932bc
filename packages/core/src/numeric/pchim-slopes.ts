/**
 * The slopes at the points of a shape-preserving cubic: inside, the weighted harmonic mean of both secants, 0 where they
 * differ in sign; at the ends, the three-point formula, cut back so that the end piece keeps its shape. `xs` strictly
 * increasing, at least two points; y per x.
 * Source: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304, as in PCHIM of SLATEC (formulas from memory).
 */
export function pchimSlopes(xs: readonly number[], ys: readonly number[]): number[] {
  const widths: number[] = [];
  const secants: number[] = [];
  for (let i = 0; i + 1 < xs.length; i++) {
    const width = (xs[i + 1] as number) - (xs[i] as number);
    widths.push(width);
    secants.push(((ys[i + 1] as number) - (ys[i] as number)) / width);
  }
  const slopes: number[] = [];
  for (let i = 0; i < xs.length; i++) {
    const [width0, width1] = [widths[i - 1], widths[i]];
    const [secant0, secant1] = [secants[i - 1], secants[i]];
    if (width0 === undefined || secant0 === undefined) slopes.push(endSlope(widths, secants, 0, 1));
    else if (width1 === undefined || secant1 === undefined)
      slopes.push(endSlope(widths, secants, i - 1, i - 2));
    else slopes.push(innerSlope(width0, width1, secant0, secant1));
  }
  return slopes;
}

function innerSlope(width0: number, width1: number, secant0: number, secant1: number): number {
  if (Math.sign(secant0) * Math.sign(secant1) <= 0) return 0;
  const weight0 = 2 * width1 + width0;
  const weight1 = width1 + 2 * width0;
  return (weight0 + weight1) / (weight0 / secant0 + weight1 / secant1);
}

function endSlope(widths: readonly number[], secants: readonly number[], end: number, next: number): number {
  const [width, secant] = [widths[end] ?? 0, secants[end] ?? 0];
  const [nextWidth, nextSecant] = [widths[next], secants[next]];
  if (nextWidth === undefined || nextSecant === undefined) return secant;
  const slope = ((2 * width + nextWidth) * secant - width * nextSecant) / (width + nextWidth);
  if (Math.sign(slope) !== Math.sign(secant)) return 0;
  const turns = Math.sign(secant) !== Math.sign(nextSecant);
  return turns && Math.abs(slope) > 3 * Math.abs(secant) ? 3 * secant : slope;
}
