import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { worstError } from "../../../packages/core/src/curve/worst-error.ts";
import { evenly } from "../../support/evenly.ts";
import { responses, sampledWorst } from "./curves.ts";

/** Two to six points from end to end, off the curve by up to 30 to either side. */
const shapes = fc.array(fc.tuple(evenly(0.05, 1), evenly(-30, 30)), { minLength: 2, maxLength: 6 });

describe("worstError", () => {
  test("is what a dense sampling finds, for any polyline and either sense of the curve", () => {
    fc.assert(
      fc.property(responses, shapes, (curve, steps) => {
        const { f, ends, breaks } = curve;
        const [a, b] = ends;
        const all = steps.slice(1).reduce((sum, [step]) => sum + step, 0);
        let way = 0;
        const knots = steps.map(([step, off], k) => {
          if (k > 0) way += step;
          const x = k === 0 ? a : k === steps.length - 1 ? b : a + (way / all) * (b - a);
          return { x, y: f(x) + off };
        });
        const worst = worstError(f, knots, breaks) ?? Number.NaN;
        const sampled = sampledWorst(curve, knots, 1000);
        expect(worst).toBeGreaterThanOrEqual(sampled * (1 - 1e-9) - 1e-9);
        expect(worst).toBeLessThanOrEqual(sampled * (1 + 2e-3) + 1e-9);
      }),
    );
  });

  test("is a quarter of the squared width against a parabola, an eighth where the chord is moved half-way", () => {
    // By hand: x² under its chord from a to a + w is w²/4 off in the middle.
    fc.assert(
      fc.property(evenly(-5, 5), evenly(0.1, 9), fc.constantFrom(1, -1), (a, width, sign) => {
        const f = (x: number) => sign * x * x;
        const chord = [a, a + width].map((x) => ({ x, y: f(x) }));
        expect((worstError(f, chord) ?? 0) / (width ** 2 / 4)).toBeCloseTo(1, 9);
        const half = chord.map(({ x, y }) => ({ x, y: y - (sign * width ** 2) / 8 }));
        expect((worstError(f, half) ?? 0) / (width ** 2 / 8)).toBeCloseTo(1, 8);
      }),
    );
  });

  test("is undefined for fewer than two points, x that do not increase, and values that are no numbers", () => {
    const line = (x: number) => x;
    const at = (...xs: readonly number[]) => xs.map((x) => ({ x, y: x }));
    expect(worstError(line, [])).toBeUndefined();
    expect(worstError(line, at(1))).toBeUndefined();
    expect(worstError(line, at(0, 2, 1))).toBeUndefined();
    expect(worstError(line, at(0, 1, 1, 2))).toBeUndefined();
    expect(worstError(() => Number.NaN, at(0, 1))).toBeUndefined();
    expect(worstError(line, at(0, 1, 2))).toBeLessThan(1e-15);
  });
});
