import fc from "fast-check";
import { inv, lusolve, matrix, multiply, transpose } from "mathjs";
import { describe, expect, test } from "vitest";
import { factorise } from "../../../packages/core/src/response/orthogonal.ts";
import { evenly } from "../../support/evenly.ts";

const rows = 7;
const column = fc.array(evenly(-10, 10), { minLength: rows, maxLength: rows });
/** One to four columns, kept apart from each other by a large number of their own. */
const columns = fc
  .array(column, { minLength: 1, maxLength: 4 })
  .map((all) => all.map((values, at) => values.map((value, row) => (row === at ? value + 40 : value))));

describe("factorise", () => {
  test("solves for the least squares and states their doubts as the normal equations do (mathjs)", () => {
    fc.assert(
      fc.property(columns, column, (all, b) => {
        const factors = factorise(all);
        const design = transpose(matrix(all.map((values) => [...values])));
        const normal = multiply(transpose(design), design);
        const right = multiply(transpose(design), matrix(b.map((value) => [value])));
        const expected = (lusolve(normal, right).toArray() as number[][]).map(
          ([value]) => value ?? Number.NaN,
        );
        const covariance = inv(normal).toArray() as number[][];
        const solved = factors?.solve(b) ?? [];
        const doubts = factors?.doubts() ?? [];
        expect(solved).toHaveLength(all.length);
        for (const [at, value] of expected.entries()) {
          expect(solved[at]).toBeCloseTo(value, 9);
          expect(doubts[at]).toBeCloseTo(Math.sqrt(covariance[at]?.[at] ?? Number.NaN), 10);
        }
      }),
    );
  });

  test("finds the x that a right side was made of, however large or small the columns", () => {
    fc.assert(
      fc.property(columns, column, fc.constantFrom(1e-9, 1, 1e9), (all, wanted, by) => {
        const scaled = all.map((values, at) => values.map((value) => (at === 0 ? by * value : value)));
        const b = Array.from({ length: rows }, (_, row) =>
          scaled.reduce((sum, values, at) => sum + (values[row] ?? 0) * (wanted[at] ?? 0), 0),
        );
        const solved = factorise(scaled)?.solve(b) ?? [];
        for (const [at, value] of solved.entries()) {
          // What the largest column loses in b is lost for the others.
          const lost = at > 0 && by > 1 ? 1e-4 : 1e-7;
          expect(Math.abs(value - (wanted[at] ?? Number.NaN))).toBeLessThan(by < 1 && at === 0 ? 1e-4 : lost);
        }
      }),
    );
  });

  test("has no answer where columns depend on each other, vanish, or are not finite", () => {
    fc.assert(
      fc.property(columns, evenly(-3, 3), (all, by) => {
        const sum = Array.from({ length: rows }, (_, row) =>
          all.reduce((total, values) => total + by * (values[row] ?? 0), 0),
        );
        expect(factorise([...all, sum])).toBeUndefined();
      }),
    );
    expect(factorise([[0, 0, 0]])).toBeUndefined();
    expect(factorise([[1, Number.NaN, 0]])).toBeUndefined();
    expect(factorise([[1, Number.POSITIVE_INFINITY, 0]])).toBeUndefined();
  });

  test("tells columns apart that differ by one part in a thousand million, and not by less than a tenth of that", () => {
    const apart = (by: number) =>
      factorise([
        [1, 0],
        [1, by],
      ]);
    expect(apart(1e-9)).toBeDefined();
    expect(apart(0.9e-10)).toBeUndefined();
  });
});
