import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { minimaxPolyline } from "../../../packages/core/src/curve/minimax-polyline.ts";
import { pointsNeeded } from "../../../packages/core/src/curve/points-needed.ts";
import { evenly } from "../../support/evenly.ts";
import { responses } from "./curves.ts";

describe("pointsNeeded", () => {
  // Closed form: m pieces against a parabola on [0, 1] leave 1/(8 m^2) (reference README, section L).
  test("of a parabola it is the closed form's", () => {
    const need = (tolerance: number) =>
      pointsNeeded((x) => x * x, [0, 1], tolerance, { points: "equal" }, 12);
    expect([1 / 8, 1 / 32, 1 / 33, 1 / 128].map(need)).toEqual([2, 3, 4, 5]);
    expect(need(1e-4)).toBeUndefined();
  });

  test("that many reach the tolerance and one less does not", () => {
    fc.assert(
      fc.property(
        responses,
        evenly(0.5, 20),
        fc.constantFrom("equal", "free"),
        ({ f, ends, breaks }, tolerance, points) => {
          const options = { points, breaks };
          const n = pointsNeeded(f, ends, tolerance, options, 12);
          if (n === undefined)
            expect(minimaxPolyline(f, ends, 12, options)?.worst).toBeGreaterThan(tolerance);
          else {
            expect(minimaxPolyline(f, ends, n, options)?.worst).toBeLessThanOrEqual(tolerance * (1 + 1e-8));
            if (n > 2) expect(minimaxPolyline(f, ends, n - 1, options)?.worst).toBeGreaterThan(tolerance);
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  test("undefined where there is no polyline", () => {
    expect(pointsNeeded((x) => x, [1, 0], 1, { points: "free" }, 5)).toBeUndefined();
    expect(pointsNeeded((x) => x, [0, 1], 1, { points: "free" }, 1)).toBeUndefined();
  });
});
