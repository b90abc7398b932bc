import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { monotoneCurve } from "../../../packages/core/src/numeric/monotone-curve.ts";
import { pchimSlopes } from "../../../packages/core/src/numeric/pchim-slopes.ts";
import reference from "../../fixtures/monotone-interpolation.json";
import { evenly } from "../../support/evenly.ts";

interface Table {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
}

/** Benches as a builder might have them: 2 to 12 pulses 5 to 250 us apart, 0.2 to 15 degrees between neighbours. */
const tables: fc.Arbitrary<Table> = fc
  .tuple(
    evenly(900, 1300),
    evenly(-40, 10),
    fc.boolean(),
    fc.array(fc.tuple(evenly(5, 250), evenly(0.2, 15)), {
      minLength: 1,
      maxLength: 11,
    }),
  )
  .map(([startUs, startDeg, rising, steps]) => {
    const xs = [startUs];
    const ys = [startDeg];
    for (const [stepUs, stepDeg] of steps) {
      xs.push((xs.at(-1) ?? 0) + stepUs);
      ys.push((ys.at(-1) ?? 0) + (rising ? stepDeg : -stepDeg));
    }
    return { xs, ys };
  });

const share = evenly(0, 1);

function between(xs: readonly number[], at: number): number {
  const [first = 0, last = 0] = [xs[0], xs.at(-1)];
  return Math.min(last, first + at * (last - first));
}

describe("monotoneCurve", () => {
  it("goes through its points exactly, both ways", () => {
    fc.assert(
      fc.property(tables, ({ xs, ys }) => {
        const curve = monotoneCurve(xs, ys);
        expect(xs.map((x) => curve.valueAt(x))).toEqual(ys);
        expect(ys.map((y) => curve.inverseAt(y))).toEqual(xs);
        expect(xs.map((x) => curve.slopeAt(x))).toEqual(pchimSlopes(xs, ys));
      }),
    );
  });

  it("stays between the values of neighbouring points and never turns back", () => {
    fc.assert(
      fc.property(tables, ({ xs, ys }) => {
        const curve = monotoneCurve(xs, ys);
        const sign = Math.sign((ys.at(-1) ?? 0) - (ys[0] ?? 0));
        for (let i = 0; i + 1 < xs.length; i++) {
          const [x0 = 0, x1 = 0, y0 = 0, y1 = 0] = [xs[i], xs[i + 1], ys[i], ys[i + 1]];
          let lastY = y0;
          for (let k = 1; k < 40; k++) {
            const x = x0 + (k / 40) * (x1 - x0);
            const y = curve.valueAt(x) ?? Number.NaN;
            expect(sign * (y - lastY)).toBeGreaterThan(0);
            expect(sign * (y1 - y)).toBeGreaterThan(0);
            expect(sign * (curve.slopeAt(x) ?? Number.NaN)).toBeGreaterThan(-1e-15);
            lastY = y;
          }
        }
      }),
    );
  });

  it("takes x to y and back to 1e-9, or as near as the last place of y allows", () => {
    fc.assert(
      fc.property(tables, share, ({ xs, ys }, at) => {
        const curve = monotoneCurve(xs, ys);
        const x = between(xs, at);
        const y = curve.valueAt(x) ?? Number.NaN;
        const back = curve.inverseAt(y) ?? Number.NaN;
        const slope = Math.abs(curve.slopeAt(x) ?? 0);
        if (slope > 1e-4) expect(Math.abs(back - x)).toBeLessThan(1e-9);
        expect(Math.abs((curve.valueAt(back) ?? Number.NaN) - y)).toBeLessThan(1e-12);
      }),
      { numRuns: 1000 },
    );
  });

  it("takes y to x and back", () => {
    fc.assert(
      fc.property(tables, share, ({ xs, ys }, at) => {
        const curve = monotoneCurve(xs, ys);
        const [low, high] = [Math.min(...ys), Math.max(...ys)];
        const y = Math.min(high, low + at * (high - low));
        expect(Math.abs((curve.valueAt(curve.inverseAt(y) ?? Number.NaN) ?? Number.NaN) - y)).toBeLessThan(
          1e-12,
        );
      }),
      { numRuns: 1000 },
    );
  });

  it("has the slope that its values show", () => {
    fc.assert(
      fc.property(tables, share, ({ xs, ys }, at) => {
        const curve = monotoneCurve(xs, ys);
        const x = between(xs, 0.001 + 0.998 * at);
        const [after, before] = [curve.valueAt(x + 1e-4), curve.valueAt(x - 1e-4)];
        // The second derivative jumps at the points, which costs half a step times the jump.
        expect(curve.slopeAt(x)).toBeCloseTo(((after ?? 0) - (before ?? 0)) / 2e-4, 3);
      }),
    );
  });

  it("knows nothing outside its points", () => {
    const curve = monotoneCurve([1200, 1500, 1800], [30, 4, -25]);
    expect([curve.valueAt(1199.999), curve.valueAt(1800.001), curve.valueAt(Number.NaN)]).toEqual(
      Array(3).fill(undefined),
    );
    expect([curve.slopeAt(1199.999), curve.slopeAt(1800.001)]).toEqual(Array(2).fill(undefined));
    expect([curve.inverseAt(30.001), curve.inverseAt(-25.001), curve.inverseAt(Number.NaN)]).toEqual(
      Array(3).fill(undefined),
    );
  });

  it("is no curve through one point", () => {
    const curve = monotoneCurve([1500], [0]);
    expect([curve.valueAt(1500), curve.slopeAt(1500), curve.inverseAt(0)]).toEqual(Array(3).fill(undefined));
  });

  it("is mirrored by mirrored points", () => {
    fc.assert(
      fc.property(tables, share, ({ xs, ys }, at) => {
        const [curve, mirrored] = [
          monotoneCurve(xs, ys),
          monotoneCurve(xs.map((x) => 3000 - x).reverse(), ys.toReversed()),
        ];
        const x = between(xs, at);
        const mirroredX = Math.min(3000 - (xs[0] ?? 0), Math.max(3000 - (xs.at(-1) ?? 0), 3000 - x));
        const tolerance = 1e-12 * (1 + Math.abs(x * (curve.slopeAt(x) ?? 0)));
        expect(
          Math.abs((mirrored.valueAt(mirroredX) ?? Number.NaN) - (curve.valueAt(x) ?? Number.NaN)),
        ).toBeLessThan(tolerance);
      }),
    );
  });

  it("finds the inverse beside an end where the slope is zero", () => {
    // The three-point end formula gives the wrong sign here, so the slope at 0 is 0.
    const curve = monotoneCurve([0, 1, 2, 3], [0, 0.1, 5, 6]);
    expect(curve.slopeAt(0)).toBe(0);
    for (const y of [1e-20, 1e-12, 1e-6, 0.05]) {
      const x = curve.inverseAt(y) ?? Number.NaN;
      expect((curve.valueAt(x) ?? Number.NaN) / y).toBeCloseTo(1, 12);
    }
  });
});

describe("pchimSlopes", () => {
  const points = fc
    .array(fc.tuple(evenly(5, 250), evenly(-15, 15)), { minLength: 2, maxLength: 11 })
    .map((steps) => ({
      xs: steps.map((_, i) => 900 + steps.slice(0, i).reduce((total, [step]) => total + step, 0)),
      ys: steps.map(([, y]) => y),
    }));

  it("lie between 0 and three times the secants beside them, whatever the points", () => {
    fc.assert(
      fc.property(points, ({ xs, ys }) => {
        const secants = xs.slice(1).map((x, i) => ((ys[i + 1] ?? 0) - (ys[i] ?? 0)) / (x - (xs[i] ?? 0)));
        for (const [i, slope] of pchimSlopes(xs, ys).entries())
          for (const secant of [secants[i - 1], secants[i]].filter((one) => one !== undefined)) {
            expect(slope * secant).toBeGreaterThanOrEqual(0);
            expect(Math.abs(slope)).toBeLessThanOrEqual(3 * Math.abs(secant) * (1 + 1e-12));
          }
      }),
    );
  });

  it("grow with ys, and turn over with them", () => {
    fc.assert(
      fc.property(points, fc.constantFrom(-64, -2, 0.25, 1024), ({ xs, ys }, by) => {
        const scaled = pchimSlopes(
          xs,
          ys.map((y) => by * y),
        );
        for (const [i, slope] of pchimSlopes(xs, ys).entries()) expect(scaled[i]).toBeCloseTo(by * slope, 9);
      }),
    );
  });

  it("is the secant's through two points, 0 through one", () => {
    expect(pchimSlopes([1000, 1500], [10, -30])).toEqual([-0.08, -0.08]);
    expect(pchimSlopes([1500], [7])).toEqual([0]);
  });
});

// Source: test/fixtures/monotone-interpolation.json, each table with its own; equal to two independent implementations.
describe.each(reference)(
  "the reference table $id",
  ({ x: xs, y: ys, pchim, strictly_monotone: isStrict }) => {
    // Not made here, where a failure would leave no test to fail.
    const curveOf = () => monotoneCurve(xs, ys);
    const rangeY = Math.max(...ys) - Math.min(...ys);
    const rangeX = (xs.at(-1) ?? 0) - (xs[0] ?? 0);

    it("has the reference's slopes at its points", () => {
      const tolerance = (1e-12 * rangeY) / rangeX;
      expect(pchimSlopes(xs, ys)).toHaveLength(pchim.slopes.length);
      pchimSlopes(xs, ys).forEach((slope, i) => {
        expect(Math.abs(slope - (pchim.slopes[i] ?? Number.NaN))).toBeLessThanOrEqual(tolerance);
      });
    });

    it("has the reference's values and slopes between its points", () => {
      const curve = curveOf();
      for (const { x, p, dp } of pchim.values) {
        expect(Math.abs((curve.valueAt(x) ?? Number.NaN) - p)).toBeLessThanOrEqual(1e-12 * rangeY);
        expect(Math.abs((curve.slopeAt(x) ?? Number.NaN) - dp)).toBeLessThanOrEqual(
          1e-12 * (1 + Math.abs(dp)),
        );
      }
    });

    if (isStrict) {
      it("has the reference's inverse", () => {
        expect(pchim.inverse?.length).toBeGreaterThan(0);
        const curve = curveOf();
        for (const { y, x } of pchim.inverse ?? []) {
          expect(Math.abs((curve.inverseAt(y) ?? Number.NaN) - x)).toBeLessThanOrEqual(1e-12 * rangeX);
        }
      });
    }
  },
);
