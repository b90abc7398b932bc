import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { firstRoot } from "../../../packages/core/src/linkage/roots.ts";
import { solveAngle } from "../../../packages/core/src/linkage/solve-angle.ts";

describe("firstRoot", () => {
  it("is the nearest of several, in either direction, to neighbouring doubles", () => {
    expect(firstRoot(Math.cos, 0, 12)).toBeCloseTo(Math.PI / 2, 15);
    expect(firstRoot(Math.cos, 0, -12)).toBeCloseTo(-Math.PI / 2, 15);
    expect(firstRoot(Math.cos, 0, 1.5)).toBeUndefined();
  });

  it("finds the nearer of two roots that lie closer together than its step", () => {
    const dip = (x: number) => (x - 1) ** 2 - 1e-6;
    expect(firstRoot(dip, 0, 3)).toBeCloseTo(0.999, 12);
    expect(firstRoot((x) => -dip(x), 3, 0)).toBeCloseTo(1.001, 12);
  });

  it("finds two roots in its first step, where the start is nearer to zero than the step's end", () => {
    const dip = (x: number) => (x - 0.005) ** 2 - 1e-6;
    expect(firstRoot(dip, 0, 3)).toBeCloseTo(0.004, 12);
    expect(firstRoot((x) => dip(-x), 0, -3)).toBeCloseTo(-0.004, 12);
    expect(firstRoot((x) => (x - 0.005) ** 2 + 1e-9, 0, 3)).toBeUndefined();
    // And in its last, the end being the nearer.
    expect(firstRoot((x) => (x - 2.995) ** 2 - 1e-6, 0, 3)).toBeCloseTo(2.994, 12);
    expect(firstRoot((x) => (x - 2.995) ** 2 + 1e-9, 0, 3)).toBeUndefined();
    // Away from zero at once: nothing dips.
    expect(firstRoot((x) => 1 + x, 0, 3)).toBeUndefined();
  });

  it("takes a dip for a root only within the touch allowed", () => {
    const above = (x: number) => (x - 1) ** 2 + 1e-9;
    expect(firstRoot(above, 0, 3)).toBeUndefined();
    expect(firstRoot(above, 0, 3, 1e-8)).toBeCloseTo(1, 4);
  });
});

describe("solveAngle", () => {
  const number = fc.double({ min: -100, max: 100, noNaN: true });

  it("solves a cos x + b sin x = c on the side asked for, or says that nothing does", () => {
    fc.assert(
      fc.property(number, number, number, fc.constantFrom(1, -1), (a, b, c, side) => {
        const size = Math.hypot(a, b);
        fc.pre(size > 1e-3 && Math.abs(Math.abs(c) - size) > 1e-6);
        const x = solveAngle(a, b, c, side);
        if (Math.abs(c) > size) {
          expect(x).toBeUndefined();
          return;
        }
        expect(Math.abs(a * Math.cos(x ?? 99) + b * Math.sin(x ?? 99) - c)).toBeLessThan(1e-13 * (1 + size));
        expect(Math.sign(a * Math.sin(x ?? 99) - b * Math.cos(x ?? 99))).toBe(side);
      }),
    );
  });

  it("has one answer where the two meet, and none where nothing depends on the angle", () => {
    expect(solveAngle(3, 4, 5, 1)).toBe(solveAngle(3, 4, 5, -1));
    // Rounding may carry a dead centre past itself; a hundred thousand doubles past it is a miss.
    expect(solveAngle(3, 4, 5 * (1 + 1e-15), 1)).toBeCloseTo(Math.atan2(4, 3), 7);
    expect(solveAngle(3, 4, 5 * (1 + 1e-11), 1)).toBeUndefined();
    expect(solveAngle(0, 0, 0, 1)).toBeUndefined();
  });
});
