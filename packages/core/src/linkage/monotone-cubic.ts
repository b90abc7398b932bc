/** A curve through points of rising x that keeps rising or falling where they do. */
export interface MonotoneCubic {
  /** x, inside the points -> y. */
  valueAt(x: number): number;
  /** x, inside the points -> dy/dx. */
  slopeAt(x: number): number;
}

/**
 * Monotone cubic Hermite interpolation after Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980), with the weighted
 * harmonic-mean slopes of Fritsch and Butland (1984) and three-point end slopes. Two points or more, x strictly rising.
 */
export function monotoneCubic(points: readonly (readonly [number, number])[]): MonotoneCubic {
  const pieces = points.slice(1).map(([x, y], i) => {
    const [startX, startY] = points[i] ?? [x, y];
    return { startX, startY, width: x - startX, rate: (y - startY) / (x - startX) };
  });
  type Piece = (typeof pieces)[number];
  const inner = pieces.slice(1).map((right, i) => innerSlope(pieces[i] ?? right, right));
  const [first, second] = pieces;
  const [last, beforeLast] = pieces.slice(-2).reverse();
  const slopes = [endSlope(first, second), ...inner, endSlope(last, beforeLast)];

  const locate = (x: number): { piece: Piece; from: number; to: number } => {
    const found = pieces.findLastIndex((piece) => x >= piece.startX);
    const i = Math.max(0, found);
    const piece = pieces[i] ?? { startX: x, startY: 0, width: 1, rate: 0 };
    return { piece, from: slopes[i] ?? 0, to: slopes[i + 1] ?? 0 };
  };
  return {
    valueAt: (x) => {
      const { piece, from, to } = locate(x);
      const part = (x - piece.startX) / piece.width;
      const bend = from * (1 - part) ** 2 - to * part * (1 - part) + piece.rate * part * (3 - 2 * part);
      return piece.startY + piece.width * part * bend;
    },
    slopeAt: (x) => {
      const { piece, from, to } = locate(x);
      const part = (x - piece.startX) / piece.width;
      return (
        from * (1 - part) * (1 - 3 * part) + to * part * (3 * part - 2) + 6 * piece.rate * part * (1 - part)
      );
    },
  };
}

interface Secant {
  readonly width: number;
  readonly rate: number;
}

function innerSlope(left: Secant, right: Secant): number {
  if (left.rate * right.rate <= 0) return 0;
  const leftWeight = left.width + 2 * right.width;
  const rightWeight = 2 * left.width + right.width;
  return (leftWeight + rightWeight) / (rightWeight / left.rate + leftWeight / right.rate);
}

/** Three-point slope at an end, held to the sign and to three times the rate of the piece at the end. */
function endSlope(end: Secant | undefined, next: Secant | undefined): number {
  if (end === undefined) return 0;
  if (next === undefined) return end.rate;
  const slope = ((2 * end.width + next.width) * end.rate - end.width * next.rate) / (end.width + next.width);
  if (slope * end.rate <= 0) return 0;
  return end.rate * next.rate <= 0 && Math.abs(slope) > 3 * Math.abs(end.rate) ? 3 * end.rate : slope;
}
