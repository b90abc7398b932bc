import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { smoothPieces } from "../../../packages/core/src/response/smooth-pieces.ts";
import { evenly } from "../../support/evenly.ts";

/** The cubic with these values and slopes at both ends, in Bernstein form: another one than the code's. */
function cubicAt(
  x: number,
  from: number,
  to: number,
  f: (x: number) => number,
  slope: (x: number) => number,
) {
  const [t, third] = [(x - from) / (to - from), (to - from) / 3];
  const [b0, b3] = [f(from), f(to)];
  const [b1, b2] = [b0 + third * slope(from), b3 - third * slope(to)];
  return b0 * (1 - t) ** 3 + 3 * b1 * t * (1 - t) ** 2 + 3 * b2 * t * t * (1 - t) + b3 * t ** 3;
}

describe("smoothPieces", () => {
  test("keeps a cubic in one piece, and any other within the tolerance at a quarter, half and three quarters", () => {
    fc.assert(
      fc.property(
        evenly(0.3, 3),
        evenly(-3, 0),
        evenly(0.5, 5),
        evenly(1e-6, 1e-2),
        (w, low, width, tolerance) => {
          const [f, slope] = [(x: number) => Math.sin(w * x), (x: number) => w * Math.cos(w * x)];
          const places = smoothPieces(f, slope, [low, low + width], tolerance);
          expect([places[0], places.at(-1)]).toEqual([low, low + width]);
          expect(places).toEqual([...new Set(places)].toSorted((a, b) => a - b));
          for (const [k, to] of places.slice(1).entries()) {
            const from = places[k] ?? Number.NaN;
            for (const t of [0.25, 0.5, 0.75]) {
              const x = from + t * (to - from);
              expect(Math.abs(cubicAt(x, from, to, f, slope) - f(x))).toBeLessThanOrEqual(tolerance + 1e-12);
            }
          }
          // Not halved without need: the whole that two neighbours make up would not do.
          if (places.length === 3) {
            const misses = [0.25, 0.5, 0.75].map((t) => {
              const x = low + t * width;
              return Math.abs(cubicAt(x, low, low + width, f, slope) - f(x));
            });
            expect(Math.max(...misses)).toBeGreaterThan(tolerance - 1e-12);
          }
        },
      ),
    );
    const cube = smoothPieces(
      (x) => x ** 3 - 2 * x,
      (x) => 3 * x ** 2 - 2,
      [-2, 3],
      1e-12,
    );
    expect(cube).toEqual([-2, 3]);
  });

  test("halves a piece where value or slope are missing, 24 times at most", () => {
    const places = smoothPieces(
      (x) => (x === 0 ? undefined : 1),
      () => 0,
      [0, 1],
      1e-6,
    );
    expect(places).toEqual([0, ...Array.from({ length: 25 }, (_, k) => 2 ** (k - 24))]);
    for (const missing of [0, 1])
      expect(
        smoothPieces(
          () => 1,
          (x) => (x === missing ? undefined : 0),
          [0, 1],
          1e-6,
        ),
      ).toHaveLength(26);
    expect(
      smoothPieces(
        (x) => (x === 1 ? undefined : 1),
        () => 0,
        [0, 1],
        1e-6,
      ),
    ).toHaveLength(26);
    expect(
      smoothPieces(
        (x) => (x === 0.25 ? undefined : 1),
        () => 0,
        [0, 1],
        1e-6,
      ).length,
    ).toBeGreaterThan(2);
  });
});
