import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { PolylineOptions } from "../../../packages/core/src/curve/minimax-polyline.ts";
import { minimaxPolyline } from "../../../packages/core/src/curve/minimax-polyline.ts";
import reference from "../../fixtures/piecewise-linear.json" with { type: "json" };
import { evenly } from "../../support/evenly.ts";
import type { TestCurve } from "./curves.ts";
import { responses, sampledWorst } from "./curves.ts";

const modes = {
  equal_free: { points: "equal" },
  freeknot_free: { points: "free" },
} as const satisfies Record<string, PolylineOptions>;
const anyMode = fc.constantFrom<PolylineOptions>(...Object.values(modes));
const counts = fc.integer({ min: 2, max: 9 });

function worst({ f, ends, breaks }: TestCurve, n: number, mode: PolylineOptions): number {
  return minimaxPolyline(f, ends, n, { ...mode, breaks })?.worst ?? Number.NaN;
}

function solve({ f, ends, breaks }: TestCurve, n: number, mode: PolylineOptions) {
  const polyline = minimaxPolyline(f, ends, n, { ...mode, breaks });
  if (polyline === undefined) throw new Error("no polyline");
  return polyline;
}

// Each mutant is tried on all of these: a tenth of the runs tells nearly as many.
const runs = { numRuns: process.env.MUTATED === undefined ? 60 : 6 };

describe("minimaxPolyline", () => {
  const curves: readonly TestCurve[] = [
    { f: (x) => x * x, ends: [0, 1], breaks: [] },
    { f: (x) => Math.sin((Math.PI * x) / 3) / Math.sin(Math.PI / 3), ends: [-1, 1], breaks: [] },
    { f: sweepOffset, ends: [-50, 50], breaks: [] },
  ];
  const cases = reference.curves.flatMap(({ curve, results }, k) =>
    results.flatMap((result) =>
      (Object.keys(modes) as (keyof typeof modes)[]).map((mode) => ({
        name: `${curve}, ${result.points} points, ${mode}`,
        curve: curves[k] as TestCurve,
        points: result.points,
        mode: modes[mode],
        least: result[mode].E,
      })),
    ),
  );

  // Source: fixtures/piecewise-linear.json, computed by linear programming with exchange and by minimum links (Cameron 1966).
  test.each(cases)("has the least error there is: $name", ({ curve, points, mode, least }) => {
    const error = worst(curve, points, mode);
    expect(error).toBeGreaterThanOrEqual(least * (1 - 1e-13));
    expect(error).toBeLessThanOrEqual(least * (1 + 1e-9));
  });

  // The same source: ends on the curve are inside any range that holds the curve, so that a range costs no more than they do.
  test.each(
    reference.curves.flatMap(({ curve, results }, k) => results.map((result) => ({ ...result, curve, k }))),
  )(
    "between the ends of the curve costs no more than ends on the curve: $curve, $points points",
    ({ k, points, ...result }) => {
      const curve = curves[k] as TestCurve;
      const [low = 0, high = 0] = curve.ends.map(curve.f).sort((a, b) => a - b);
      const most = { equal: result.equal_pinned_ends.E, free: result.freeknot_pinned_ends.E };
      for (const mode of ["equal", "free"] as const)
        expect(worst(curve, points, { points: mode, range: [low, high] })).toBeLessThanOrEqual(
          most[mode] * (1 + 1e-9),
        );
    },
  );

  test("has the error 1/(8 m^2) against a parabola with m pieces", () => {
    const parabola: TestCurve = { f: (x) => x * x, ends: [0, 1], breaks: [] };
    for (const m of [1, 2, 3, 5, 8, 16])
      expect(worst(parabola, m + 1, modes.freeknot_free) * 8 * m * m).toBeCloseTo(1, 8);
  });

  test("states the error that a dense sampling finds, and it is attained", () => {
    fc.assert(
      fc.property(responses, counts, anyMode, (curve, n, mode) => {
        const { knots, worst: stated } = solve(curve, n, mode);
        const sampled = sampledWorst(curve, knots);
        expect(sampled).toBeLessThanOrEqual(stated * (1 + 1e-9) + 1e-10);
        expect(sampled).toBeGreaterThanOrEqual(stated * (1 - 1e-4) - 1e-10);
      }),
      runs,
    );
  });

  test("has n points from end to end, x increasing, and never turns back", () => {
    fc.assert(
      fc.property(responses, counts, anyMode, (curve, n, mode) => {
        const { knots } = solve(curve, n, mode);
        const sign = Math.sign(curve.f(curve.ends[1]) - curve.f(curve.ends[0]));
        expect(knots).toHaveLength(n);
        expect([knots[0]?.x, knots.at(-1)?.x]).toEqual(curve.ends);
        for (const [k, knot] of knots.entries()) {
          const before = knots[k - 1];
          if (before === undefined) continue;
          expect(knot.x).toBeGreaterThan(before.x);
          expect(sign * (knot.y - before.y)).toBeGreaterThanOrEqual(0);
        }
      }),
      runs,
    );
  });

  test("stays inside a range, which never makes it better", () => {
    fc.assert(
      fc.property(responses, counts, fc.constantFrom("equal", "free"), (curve, n, points) => {
        const [low = 0, high = 0] = curve.ends.map(curve.f).sort((a, b) => a - b);
        const { knots, worst: inside } = solve(curve, n, { points, range: [low, high] });
        for (const { y } of knots) expect(y >= low && y <= high).toBe(true);
        expect(inside).toBeGreaterThanOrEqual(worst(curve, n, { points }) * (1 - 1e-8) - 1e-10);
      }),
      runs,
    );
  });

  test("a nudge of its ordinates that does not turn back is never better", () => {
    fc.assert(
      fc.property(
        responses,
        counts,
        anyMode,
        fc.array(evenly(-1, 1), { minLength: 9, maxLength: 9 }),
        (curve, n, mode, by) => {
          const { knots, worst: stated } = solve(curve, n, mode);
          const nudged = knots.map(({ x, y }, k) => ({ x, y: y + (by[k] ?? 0) * stated * 0.1 }));
          const rising = Math.sign(curve.f(curve.ends[1]) - curve.f(curve.ends[0]));
          const turnsBack = nudged.some(({ y }, k) => rising * (y - (nudged[k - 1]?.y ?? y)) < 0);
          if (!turnsBack)
            expect(sampledWorst(curve, nudged)).toBeGreaterThanOrEqual(stated * (1 - 1e-4) - 1e-10);
        },
      ),
      runs,
    );
  });

  // On S-shaped curves the error may stay the same: reference README, point-symmetric curves with an odd number of points.
  test("free points: one more never makes it worse, and evenly spaced ones are never better", () => {
    fc.assert(
      fc.property(responses, counts, (curve, n) => {
        const free = worst(curve, n, { points: "free" });
        expect(worst(curve, n + 1, { points: "free" })).toBeLessThanOrEqual(free * (1 + 1e-8) + 1e-10);
        expect(free).toBeLessThanOrEqual(worst(curve, n, { points: "equal" }) * (1 + 1e-8) + 1e-10);
      }),
      runs,
    );
  });

  test("on an S-shaped curve an odd point changes nothing", () => {
    const s: TestCurve = { f: (x) => Math.sin(x), ends: [-1.2, 1.2], breaks: [] };
    for (const n of [2, 4, 6])
      expect(worst(s, n + 1, modes.freeknot_free) / worst(s, n, modes.freeknot_free)).toBeCloseTo(1, 8);
  });

  test("a mirrored curve has the same error, in x and in y", () => {
    fc.assert(
      fc.property(responses, counts, anyMode, (curve, n, mode) => {
        const {
          f,
          ends: [a, b],
          breaks,
        } = curve;
        const left: TestCurve = { f: (x) => f(-x), ends: [-b, -a], breaks: breaks.map((x) => -x) };
        const down: TestCurve = { ...curve, f: (x) => -f(x) };
        const error = worst(curve, n, mode);
        expect(Math.abs(worst(left, n, mode) - error)).toBeLessThanOrEqual(1e-8 * error + 1e-10);
        expect(worst(down, n, mode)).toBe(error);
        expect(solve(down, n, mode).knots).toEqual(
          solve(curve, n, mode).knots.map(({ x, y }) => ({ x, y: -y })),
        );
      }),
      runs,
    );
  });

  test("the error scales with y and not with x", () => {
    fc.assert(
      fc.property(
        responses,
        counts,
        anyMode,
        evenly(0.01, 50),
        evenly(0.01, 50),
        (curve, n, mode, alongX, alongY) => {
          const {
            f,
            ends: [a, b],
            breaks,
          } = curve;
          const [from, to] = [a * alongX, b * alongX];
          const inside = (x: number) => Math.min(b, Math.max(a, x / alongX));
          const scaled: TestCurve = {
            f: (x) => f(inside(x)) * alongY,
            ends: [from, to],
            breaks: breaks.map((x) => x * alongX),
          };
          const error = worst(curve, n, mode);
          expect(Math.abs(worst(scaled, n, mode) / alongY - error)).toBeLessThanOrEqual(1e-8 * error + 1e-10);
        },
      ),
      runs,
    );
  });

  test("a straight line, and a level one, have no error", () => {
    for (const points of ["equal", "free"] as const)
      for (const n of [2, 5]) {
        expect(minimaxPolyline((x) => 1500 + 9 * x, [-20, 30], n, { points })?.worst).toBeLessThan(1e-10);
        expect(minimaxPolyline(() => 1500, [-20, 30], n, { points })?.worst).toBeLessThan(1e-10);
      }
  });

  test("a curve that is itself a polyline of n free points has no error", () => {
    const bent = (x: number) => (x < 0.3 ? x : 0.3 + 4 * (x - 0.3));
    expect(minimaxPolyline(bent, [0, 1], 3, { points: "free", breaks: [0.3] })?.worst).toBeLessThan(1e-8);
  });

  test("where evenly spaced points would do better by turning back, the best that does not is taken", () => {
    // Level, then rising from 0.7: with nothing below 0 allowed the middle ordinate would best be below 0 and the first above.
    // By hand: from 0 in the middle to y at the end the error at 0.7 is 0.4 y and at the end 0.3 - y.
    const late = (x: number) => Math.max(0, x - 0.7);
    const polyline = minimaxPolyline(late, [0, 1], 3, {
      points: "equal",
      range: [0, late(1)],
      breaks: [0.7],
    });
    expect(polyline?.knots.map(({ y }) => y)).toEqual([0, 0, 0.3 / 1.4].map((y) => expect.closeTo(y, 9)));
    expect(polyline?.worst).toBeCloseTo((0.4 * 0.3) / 1.4, 9);
  });

  test("undefined for fewer than two points, part of a point, ends not in order, no number, an end outside the range", () => {
    const line = (x: number) => x;
    const options = { points: "free" } as const;
    expect(minimaxPolyline(line, [0, 1], 1, options)).toBeUndefined();
    expect(minimaxPolyline(line, [0, 1], 2.5, options)).toBeUndefined();
    expect(minimaxPolyline(line, [1, 1], 3, options)).toBeUndefined();
    expect(minimaxPolyline(line, [1, 0], 3, options)).toBeUndefined();
    expect(minimaxPolyline(line, [Number.NaN, 1], 3, options)).toBeUndefined();
    expect(minimaxPolyline(() => Number.NaN, [0, 1], 3, options)).toBeUndefined();
    expect(minimaxPolyline(line, [0, 1], 3, { ...options, range: [0.1, 1] })).toBeUndefined();
  });
});

/** Deflection over servo angle of the linkage "sweep-offset", degrees: section A of the reference, fixtures/linkage/four-bar.json. */
function sweepOffset(servoDeg: number): number {
  const rad = Math.PI / 180;
  const shaft = (100 + servoDeg) * rad;
  const [x, y] = [11 * Math.cos(shaft) - 55, 11 * Math.sin(shaft) + 8];
  const distance = Math.hypot(x, y);
  const angle = Math.acos((distance ** 2 + 16 ** 2 - 61.14462058366761 ** 2) / (2 * distance * 16));
  return (Math.atan2(y, x) - angle) / rad - 75;
}
