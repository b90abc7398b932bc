import { hypotOf } from "../numeric/hypotenuse.ts";

/** The columns of a matrix made square to one another: A = Q R, R with a positive diagonal. */
export interface Factors {
  /** The x with the least |A x - b|. */
  solve(b: readonly number[]): readonly number[];
  /** Square roots of the diagonal of (A'A)^-1: standard doubts of x where each row of A x = b is in doubt by 1. */
  doubts(): readonly number[];
}

/** A column of which less than this part is square to those before it depends on them. */
const DEPENDENT = 1e-10;

/**
 * Columns of equal length, not fewer rows than columns -> their factors; undefined where columns depend on each other
 * or are not finite. Modified Gram-Schmidt, see Å. Björck, BIT 7 (1967) 1-21 (from memory).
 */
export function factorise(columns: readonly (readonly number[])[]): Factors | undefined {
  const q: number[][] = [];
  const r: number[][] = [];
  for (const column of columns) {
    let rest = [...column];
    const above = q.map((unit) => {
      const part = dot(unit, rest);
      rest = rest.map((value, row) => value - part * (unit[row] ?? 0));
      return part;
    });
    const size = hypotOf(...rest);
    if (!(size > DEPENDENT * hypotOf(...column))) return undefined;
    q.push(rest.map((value) => value / size));
    r.push([...above, size]);
  }
  return {
    solve: (b) => {
      let rest = [...b];
      const parts = q.map((unit) => {
        const part = dot(unit, rest);
        rest = rest.map((value, row) => value - part * (unit[row] ?? 0));
        return part;
      });
      return substituteBack(r, parts);
    },
    doubts: () => {
      const inverse = r.map((_, unit) =>
        substituteBack(
          r,
          r.map((_, i) => (i === unit ? 1 : 0)),
        ),
      );
      return r.map((_, row) => hypotOf(...inverse.map((column) => column[row] ?? 0)));
    },
  };
}

/** The x with R x = y; `r` by columns. */
function substituteBack(r: readonly (readonly number[])[], y: readonly number[]): readonly number[] {
  const x = [...y];
  for (let i = x.length - 1; i >= 0; i--) {
    const column = r[i] ?? [];
    const value = (x[i] ?? 0) / (column[i] ?? 1);
    x[i] = value;
    for (let row = 0; row < i; row++) x[row] = (x[row] ?? 0) - value * (column[row] ?? 0);
  }
  return x;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}
