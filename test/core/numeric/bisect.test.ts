import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bisect } from "../../../packages/core/src/numeric/bisect.ts";
import { evenly } from "../../support/evenly.ts";

const sign = fc.constantFrom(1, -1);

describe("bisect", () => {
  it("finds the root of a cube to neighbouring doubles, from either end, rising or falling", () => {
    fc.assert(
      fc.property(evenly(0.001, 27), sign, sign, (cube, side, slope) => {
        // Hardly any double's cube is `cube` itself, so that the search has to end between two of them.
        const f = (x: number) => slope * (x ** 3 - side * cube);
        const [low, high] = side > 0 ? [0, 4] : [-4, 0];
        for (const [a, b] of [
          [low, high],
          [high, low],
        ] as const) {
          const found = bisect(f, a, b);
          // One double is at most 2^-52 of its size from the next.
          const next = found + Math.sign(b - a) * Math.abs(found) * Number.EPSILON;
          expect(f(found) === 0 || f(found) > 0 === f(a) > 0).toBe(true);
          expect(f(next) === 0 || f(next) > 0 === f(b) > 0).toBe(true);
          expect(Math.abs(found - side * Math.cbrt(cube))).toBeLessThan(1e-14);
        }
      }),
    );
  });

  it("gives the root itself where it meets it, on the way up and on the way down", () => {
    expect(bisect((x) => x - 0.75, 0, 1)).toBe(0.75);
    expect(bisect((x) => 0.75 - x, 0, 1)).toBe(0.75);
  });
});
