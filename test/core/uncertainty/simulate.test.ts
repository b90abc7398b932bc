import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Distribution, draw } from "../../../packages/core/src/uncertainty/draw.ts";
import { propagate } from "../../../packages/core/src/uncertainty/propagate.ts";
import type { Random } from "../../../packages/core/src/uncertainty/random.ts";
import { type Simulation, simulate, type Trial } from "../../../packages/core/src/uncertainty/simulate.ts";
import {
  doubtFromRectangular,
  doubtFromTriangular,
} from "../../../packages/core/src/uncertainty/standard-doubt.ts";
import reference from "../../fixtures/uncertainty.json";
import { evenly } from "../../support/evenly.ts";
import { FOUR_BAR_KEYS, fourBarInputs, hornAngleDeg } from "./four-bar.ts";

const TRIALS = 200_000;

function run(trial: Trial, coverage = 0.95): Simulation {
  const simulation = simulate(trial, { seed: 101, trials: TRIALS, coverage });
  if (simulation === undefined) throw new Error("nothing to summarise");
  return simulation;
}

const normal = (mean: number, standard: number, random: Random) =>
  draw({ kind: "normal", mean, standard }, random);
const between = (low: number, high: number, random: Random) =>
  draw({ kind: "rectangular", mean: (low + high) / 2, halfWidth: (high - low) / 2 }, random);

/** Four standard errors of a simulated standard doubt; values without heavy tails. */
const standardNoise = (standard: number) => (4 * standard) / Math.sqrt(2 * TRIALS);

describe("simulate", () => {
  const distribution: fc.Arbitrary<Distribution> = fc.oneof(
    fc.record({ kind: fc.constant("normal" as const), mean: evenly(-9, 9), standard: evenly(0.01, 2) }),
    fc.record({ kind: fc.constant("rectangular" as const), mean: evenly(-9, 9), halfWidth: evenly(0.01, 2) }),
    fc.record({ kind: fc.constant("triangular" as const), mean: evenly(-9, 9), halfWidth: evenly(0.01, 2) }),
  );
  const standardOf = (input: Distribution) => {
    if (input.kind === "normal") return input.standard;
    if (input.kind === "rectangular") return doubtFromRectangular(input.halfWidth);
    return input.kind === "triangular" ? doubtFromTriangular(input.halfWidth) : NaN;
  };

  it("agrees with linear propagation where the model is straight", () => {
    const input = fc.record({ distribution, sensitivity: evenly(-3, 3) });
    fc.assert(
      fc.property(fc.array(input, { minLength: 1, maxLength: 4 }), fc.integer(), (inputs, seed) => {
        const [trials, sigmas] = [4000, 7];
        const simulated = simulate(
          (random) => inputs.reduce((sum, one) => sum + one.sensitivity * draw(one.distribution, random), 0),
          { seed, trials },
        );
        const value = inputs.reduce((sum, one) => sum + one.sensitivity * one.distribution.mean, 0);
        const linear = propagate(
          inputs.map((one, index) => ({
            name: `${index}`,
            standard: standardOf(one.distribution),
            sensitivity: one.sensitivity,
          })),
        ).standard;
        const miss = Math.abs((simulated?.mean ?? NaN) - value);
        expect(miss).toBeLessThanOrEqual((sigmas * linear) / Math.sqrt(trials) + 1e-12);
        const standardMiss = Math.abs((simulated?.standard ?? NaN) - linear);
        expect(standardMiss).toBeLessThanOrEqual((sigmas * linear) / Math.sqrt(2 * trials) + 1e-12);
      }),
      { numRuns: 40 },
    );
  });

  it("gives the same bytes for the same seed and others for another", () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const once = () => simulate((random) => normal(14, 0.3, random) ** 2, { seed, trials: 200 });
        const other = simulate((random) => normal(14, 0.3, random) ** 2, { seed: seed + 1, trials: 200 });
        expect(JSON.stringify(once())).toBe(JSON.stringify(once()));
        expect(other).not.toEqual(once());
      }),
      { numRuns: 20 },
    );
  });

  it("counts trials without a finite result and summarises the others", () => {
    const simulation = run((random) => {
      const value = random();
      if (value < 0.1) return undefined;
      return value < 0.2 ? Infinity : value;
    });
    expect(simulation.count + simulation.failed).toBe(TRIALS);
    expect(simulation.failed / TRIALS).toBeCloseTo(0.2, 2);
    expect(simulation.mean).toBeCloseTo(0.6, 2);
  });

  it("gives undefined where no trial has a result", () => {
    expect(simulate(() => undefined, { seed: 1, trials: 100 })).toBeUndefined();
    expect(simulate(() => NaN, { seed: 1, trials: 100 })).toBeUndefined();
  });

  // Source: JCGM 101:2008 9.2, exact half-widths in test/fixtures/uncertainty.json.
  it.each(reference.additive)("gives the exact half-width of $id", (row) => {
    const simulation = run((random) =>
      row.inputs.reduce(
        (sum, { distribution, u }) =>
          sum +
          (distribution === "normal"
            ? normal(0, u, random)
            : between(-u * Math.sqrt(3), u * Math.sqrt(3), random)),
        0,
      ),
    );
    const halfWidth = row["half_width_exact_0.95"];
    const [low, high] = simulation.symmetric;
    expect(Math.abs(simulation.standard - row.u)).toBeLessThan(standardNoise(row.u));
    // The density at the ends is 0.029 / u and more: four standard errors of a quantile.
    const quantileNoise = (4 * Math.sqrt((0.025 * 0.975) / TRIALS) * row.u) / 0.029;
    expect(Math.abs(low + halfWidth)).toBeLessThan(quantileNoise);
    expect(Math.abs(high - halfWidth)).toBeLessThan(quantileNoise);
  });

  // Source: JCGM 101:2008 9.3, exact by quadrature in test/fixtures/uncertainty.json. Intervals to 0.002, because the
  // place of the shortest is badly determined.
  it.each(reference.mass)(
    "gives the mass calibration's doubt, which propagation misses by a third",
    (row) => {
      const { m_Rc, dm_Rc, rho_a, rho_W, rho_R, rho_a0, m_nom } = row.inputs;
      const pair = ([first = NaN, second = NaN]: readonly number[]) => [first, second] as const;
      const simulation = run((random) => {
        const mass = normal(...pair(m_Rc), random) + normal(...pair(dm_Rc), random);
        const buoyancy = between(...pair(rho_a), random) - rho_a0;
        return (
          mass *
            (1 + buoyancy * (1 / between(...pair(rho_W), random) - 1 / between(...pair(rho_R), random))) -
          m_nom
        );
      });
      const symmetric = row.exact.interval95_probabilistically_symmetric;
      expect(Math.abs(simulation.standard - row.exact.u)).toBeLessThan(standardNoise(row.exact.u));
      expect(simulation.mean).toBeCloseTo(row.exact.mean, 2);
      for (const end of [0, 1] as const) {
        expect(Math.abs(simulation.symmetric[end] - (symmetric[end] ?? NaN))).toBeLessThan(0.002);
      }
      expect(simulation.shortest[1] - simulation.shortest[0]).toBeCloseTo(0.29913, 2);
    },
  );

  // Source: JCGM 101:2008 9.4, exact moments and quadrature in test/fixtures/uncertainty.json.
  it.each(reference.square_sum)("gives the exact distribution of a sum of squares, $id", (row) => {
    const simulation = run((random) => {
      const [first, second] = [normal(0, row.u, random), normal(0, row.u, random)];
      const together = row.r * first + Math.sqrt(1 - row.r ** 2) * second;
      return (row.x1 + first) ** 2 + (row.x2 + together) ** 2;
    });
    const { exact } = row;
    expect(simulation.mean / exact.mean).toBeCloseTo(1, 1);
    expect(Math.abs(simulation.standard / exact.u - 1)).toBeLessThan(0.02);
    const ends = [exact.interval95_probabilistically_symmetric, exact.interval95_shortest] as const;
    for (const [found, wanted] of [
      [simulation.symmetric, ends[0]],
      [simulation.shortest, ends[1]],
    ] as const) {
      for (const end of [0, 1] as const) {
        expect(Math.abs(found[end] - (wanted[end] ?? NaN))).toBeLessThan(0.05 * exact.u);
      }
    }
  });

  // Source: JCGM 101:2008 9.5 with inputs from memory, 2e7 trials in test/fixtures/uncertainty.json.
  it("gives the gauge block's doubt, with Student's t for the inputs of few readings", () => {
    const student = (mean: number, scale: number, dof: number, random: Random) =>
      draw({ kind: "t", mean, scale, dof }, random);
    // A rectangle whose half-width is itself known to plus and minus `inexact` only. Source: JCGM 101:2008 6.4.3.4.
    const curved = (low: number, high: number, inexact: number, random: Random) => {
      const start = low - inexact + 2 * inexact * random();
      return between(start, low + high - start, random);
    };
    const simulation = run((random) => {
      const standardNm = student(50_000_623, 25, 18, random);
      const differenceNm = student(215, 6, 24, random) + student(0, 4, 5, random) + student(0, 7, 8, random);
      const celsius = normal(-0.1, 0.2, random) + 0.5 * Math.sin(2 * Math.PI * random());
      const growth =
        curved(-1e-6, 1e-6, 0.1e-6, random) * celsius +
        between(9.5e-6, 13.5e-6, random) * curved(-0.05, 0.05, 0.025, random);
      return standardNm * (1 - growth) + differenceNm - 50_000_000;
    }, 0.99);
    const expected = reference.gauge_block_mc;
    expect(Math.abs(simulation.standard - expected.u)).toBeLessThan(2 * standardNoise(expected.u));
    expect(Math.abs(simulation.mean - expected.mean)).toBeLessThan((4 * expected.u) / Math.sqrt(TRIALS));
    for (const end of [0, 1] as const) {
      expect(Math.abs(simulation.symmetric[end] - (expected.interval99_symmetric[end] ?? NaN))).toBeLessThan(
        2,
      );
      expect(Math.abs(simulation.shortest[end] - (expected.interval99_shortest[end] ?? NaN))).toBeLessThan(4);
    }
  });

  // Source: test/fixtures/uncertainty.json, 4e6 trials.
  it.each(reference.linkage)("gives the doubt of a four-bar's horn angle, $id", (row) => {
    const inputs = fourBarInputs(row, FOUR_BAR_KEYS);
    const simulation = run((random) =>
      hornAngleDeg(inputs.map((input) => normal(input.value, input.standard, random))),
    );
    const expected = row.monte_carlo;
    const noise = standardNoise(expected.u) + 4 * expected.u_standard_error_approx;
    expect(simulation.failed).toBe(0);
    expect(Math.abs(simulation.standard - expected.u)).toBeLessThan(noise);
    expect(Math.abs(simulation.mean - expected.mean)).toBeLessThan(noise * Math.SQRT2);
  });
});
