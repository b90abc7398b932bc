import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { coverageFactor } from "../../../packages/core/src/uncertainty/coverage-factor.ts";
import { expand, expandTo } from "../../../packages/core/src/uncertainty/expand.ts";
import reference from "../../fixtures/uncertainty.json";
import { evenly } from "../../support/evenly.ts";

describe("coverageFactor", () => {
  it("grows with the coverage and falls with the degrees of freedom, towards the normal distribution's", () => {
    fc.assert(
      fc.property(
        evenly(0.05, 0.99),
        evenly(0.001, 0.009),
        fc.integer({ min: 1, max: 2000 }),
        (p, more, dof) => {
          const factor = coverageFactor(p, dof);
          expect(coverageFactor(p + more, dof)).toBeGreaterThan(factor);
          expect(coverageFactor(p, dof + 1)).toBeLessThan(factor);
          expect(coverageFactor(p)).toBeLessThan(factor);
        },
      ),
    );
  });

  it("is finite and above 0 for every coverage that a double can hold", () => {
    for (const coverage of [Number.MIN_VALUE, 1e-12, 1 - 1e-12, 1 - Number.EPSILON / 2]) {
      for (const dof of [1, 2, 400, 401, Infinity]) {
        expect(Number.isFinite(coverageFactor(coverage, dof))).toBe(true);
        expect(coverageFactor(coverage, dof)).toBeGreaterThanOrEqual(0);
      }
    }
  });

  it("counts a fraction of a degree as the next lower whole one, but for a rounding", () => {
    expect(coverageFactor(0.99, 16.75)).toBe(coverageFactor(0.99, 16));
    expect(coverageFactor(0.99, 16 - 1e-14)).toBe(coverageFactor(0.99, 16));
    expect(coverageFactor(0.99, 15.99)).toBe(coverageFactor(0.99, 15));
  });

  // Source: test/fixtures/uncertainty.json, Student's t in 40 digits; JCGM 100:2008 Table G.2 prints 2 decimals of them.
  it.each(reference.t_quantiles)(
    "agrees with the reference for $p and $nu degrees of freedom",
    ({ p, nu, t }) => {
      expect(coverageFactor(Number(p), nu) / t).toBeCloseTo(1, 11);
    },
  );

  // Source: scipy 1.17.1, scipy.stats.t.ppf((1 + p) / 2, dof).
  it.each([
    [0.95, 400, 1.9659123432294627],
    [0.95, 401, 1.965897465336516],
    [0.99, 1000, 2.580754698065951],
    [0.9999, 401, 3.930085260554085],
    [0.999, 500, 3.310091151522701],
    [0.95, 100_000, 1.9599877075346095],
  ])("agrees with another library for %f and %i degrees of freedom", (p, dof, t) => {
    expect(coverageFactor(p, dof) / t).toBeCloseTo(1, 9);
  });

  // Source: test/fixtures/uncertainty.json, JCGM 101:2008 9.2.2: four normal inputs, standard doubt 2.
  it.each(["0.6827", "0.95", "0.99"] as const)(
    "is the normal distribution's for %s and no limit",
    (coverage) => {
      const [row] = reference.additive;
      const halfWidth = row?.[`half_width_gaussian_${coverage}`] ?? NaN;
      expect(coverageFactor(Number(coverage))).toBeCloseTo(halfWidth / 2, 11);
    },
  );
});

describe("expand", () => {
  it("doubles the standard doubt where no factor is stated", () => {
    expect(expand(0.3)).toBe(0.6);
    expect(expand(0.3, 3)).toBeCloseTo(0.9, 12);
  });

  it("takes Student's t of the doubt's degrees of freedom for a stated coverage", () => {
    const stated = expandTo(0.95, { standard: 0.5, dof: 10 });
    expect(stated).toEqual({
      coverage: 0.95,
      k: expect.closeTo(2.228139, 6),
      expanded: expect.closeTo(1.11407, 5),
    });
    expect(expandTo(0.95, { standard: 0.5 }).k).toBeCloseTo(1.959964, 6);
  });
});
