import { pchimSlopes } from "./pchim-slopes.ts";
import { rootOfCubic } from "./root-of-cubic.ts";

/** A strictly monotone curve through points, in plain numbers. Every answer is undefined outside the points. */
export interface MonotoneCurve {
  /** The curve's y; at a point's x exactly the point's y. */
  valueAt(x: number): number | undefined;
  /** dy/dx. */
  slopeAt(x: number): number | undefined;
  /**
   * The x at which the curve has this y; at a point's y exactly the point's x. Elsewhere to a few units in the last place
   * of x, and no better than the last place of y divided by the slope, which is what y itself can tell.
   */
  inverseAt(y: number): number | undefined;
}

/**
 * The monotone cubic Hermite curve through points with `xs` strictly increasing and `ys` strictly monotone, at least two.
 * Between two points it stays between their ys. For two points it is the straight line; of fewer there is no curve.
 * Source: Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246, with the slopes of `pchimSlopes`.
 */
export function monotoneCurve(xs: readonly number[], ys: readonly number[]): MonotoneCurve {
  const pieces = preparePieces(xs, ys);
  return {
    valueAt(x) {
      const piece = findPiece(pieces, x, "x");
      return piece && valueIn(piece, x);
    },
    slopeAt(x) {
      const piece = findPiece(pieces, x, "x");
      return piece && slopeIn(piece, x);
    },
    inverseAt(y) {
      const piece = findPiece(pieces, y, "y");
      return piece && inverseIn(piece, y);
    },
  };
}

/** One end of a piece, and the cubic in the distance s from it: s (slope + s (square + s cube)). */
interface End {
  readonly x: number;
  readonly y: number;
  readonly slope: number;
  readonly square: number;
  readonly cube: number;
}

/** The curve between two neighbouring points, written from both ends so that it is exact at both. */
interface Piece {
  readonly left: End;
  readonly right: End;
  readonly halfWidth: number;
  /** The left end's y plus half the piece's rise, as the left cubic gives it. */
  readonly middleY: number;
}

function preparePieces(xs: readonly number[], ys: readonly number[]): readonly Piece[] {
  const slopes = pchimSlopes(xs, ys);
  const pieces: Piece[] = [];
  for (let i = 0; i + 1 < xs.length; i++) {
    const [x0, x1] = [xs[i] as number, xs[i + 1] as number];
    const [y0, y1] = [ys[i] as number, ys[i + 1] as number];
    const [slope0, slope1] = [slopes[i] as number, slopes[i + 1] as number];
    const width = x1 - x0;
    const secant = (y1 - y0) / width;
    const cube = (slope0 + slope1 - 2 * secant) / width ** 2;
    const left = { x: x0, y: y0, slope: slope0, square: (3 * secant - 2 * slope0 - slope1) / width, cube };
    const right = { x: x1, y: y1, slope: slope1, square: (3 * secant - 2 * slope1 - slope0) / width, cube };
    pieces.push({ left, right, halfWidth: width / 2, middleY: y0 + climb(left, width / 2) });
  }
  return pieces;
}

/** The piece that holds the value on the named axis, undefined outside all. A point belongs to the piece it begins. */
function findPiece(pieces: readonly Piece[], value: number, axis: "x" | "y"): Piece | undefined {
  const first = pieces[0];
  if (first === undefined) return undefined;
  const last = pieces.at(-1) ?? first;
  const sign = Math.sign(last.right[axis] - first.left[axis]);
  // Negated, so that NaN is outside too.
  if (!(sign * (value - first.left[axis]) >= 0 && sign * (value - last.right[axis]) <= 0)) return undefined;
  let low = 0;
  let high = pieces.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (sign * (value - (pieces[middle] ?? first).left[axis]) >= 0) low = middle;
    else high = middle - 1;
  }
  return pieces[low];
}

function valueIn(piece: Piece, x: number): number {
  const fromLeft = x - piece.left.x;
  return fromLeft <= piece.halfWidth
    ? piece.left.y + climb(piece.left, fromLeft)
    : piece.right.y - climb(piece.right, piece.right.x - x);
}

function slopeIn(piece: Piece, x: number): number {
  const fromLeft = x - piece.left.x;
  return fromLeft <= piece.halfWidth
    ? steepness(piece.left, fromLeft)
    : steepness(piece.right, piece.right.x - x);
}

function inverseIn(piece: Piece, y: number): number {
  const { left, right, halfWidth, middleY } = piece;
  const beforeMiddle = (y - middleY) * (right.y - left.y) <= 0;
  return beforeMiddle
    ? left.x + rootOfCubic(left.slope, left.square, left.cube, y - left.y, halfWidth)
    : right.x - rootOfCubic(right.slope, right.square, right.cube, right.y - y, halfWidth);
}

function climb(end: End, distance: number): number {
  return distance * (end.slope + distance * (end.square + distance * end.cube));
}

function steepness(end: End, distance: number): number {
  return end.slope + distance * (2 * end.square + distance * 3 * end.cube);
}
