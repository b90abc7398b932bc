import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expandTo } from "../../../packages/core/src/uncertainty/expand.ts";
import { linearise } from "../../../packages/core/src/uncertainty/linearise.ts";
import {
  type Contribution,
  type Propagated,
  propagate,
  propagateCorrelated,
  sharedCorrelation,
} from "../../../packages/core/src/uncertainty/propagate.ts";
import { doubtFromRepeated } from "../../../packages/core/src/uncertainty/standard-doubt.ts";
import reference from "../../fixtures/uncertainty.json";
import { evenly } from "../../support/evenly.ts";

const contribution = fc.record({
  standard: evenly(0, 5),
  sensitivity: evenly(-3, 3),
  dof: fc.option(fc.integer({ min: 1, max: 60 }), { nil: Infinity }),
});
const contributions = fc
  .array(contribution, { minLength: 1, maxLength: 8 })
  .map((all) => all.map((one, index): Contribution => ({ name: `input ${index}`, ...one })));

function held(result: ReturnType<typeof propagateCorrelated>): Propagated {
  if ("kind" in result) throw new Error(result.kind);
  return result;
}

describe("propagate", () => {
  it("never gives less doubt when one input gets worse", () => {
    fc.assert(
      fc.property(contributions, fc.nat(), evenly(1, 4), (inputs, pick, worse) => {
        const index = pick % inputs.length;
        const worsened = inputs.map((one, at) =>
          at === index ? { ...one, standard: one.standard * worse } : one,
        );
        const before = propagate(inputs).standard;
        expect(propagate(worsened).standard).toBeGreaterThanOrEqual(before * (1 - 1e-15));
      }),
    );
  });

  it("is never less than the largest contribution nor more than all of them together", () => {
    fc.assert(
      fc.property(contributions, (inputs) => {
        const { standard, budget } = propagate(inputs);
        const parts = budget.map((line) => line.standard);
        expect(standard).toBeGreaterThanOrEqual(Math.max(...parts) * (1 - 1e-15));
        expect(standard).toBeLessThanOrEqual(parts.reduce((sum, part) => sum + part, 0) * (1 + 1e-15));
      }),
    );
  });

  it("lists every input in its budget, largest share first, and the shares add up to 1", () => {
    fc.assert(
      fc.property(contributions, (inputs) => {
        const { standard, budget } = propagate(inputs);
        const shares = budget.map((line) => line.share);
        expect(budget.map((line) => line.name).toSorted()).toEqual(inputs.map((one) => one.name).toSorted());
        expect(shares).toEqual(shares.toSorted((first, second) => second - first));
        if (standard > 0) expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
      }),
    );
  });

  it("has at least as many degrees of freedom as its poorest input and at most as all together", () => {
    fc.assert(
      fc.property(contributions, (inputs) => {
        const { dof } = propagate(inputs);
        const each = inputs.map((one) => one.dof ?? Infinity);
        expect(dof).toBeGreaterThanOrEqual(Math.min(...each) * (1 - 1e-12));
        const counted = inputs.filter((one) => one.standard * one.sensitivity !== 0);
        if (counted.length === 0) expect(dof).toBe(Infinity);
        else
          expect(dof).toBeLessThanOrEqual(
            counted.reduce((sum, one) => sum + (one.dof ?? Infinity), 0) * (1 + 1e-12),
          );
      }),
    );
  });

  it("gives no doubt and no limit of freedom for no inputs and for sure ones", () => {
    expect(propagate([])).toEqual({ standard: 0, dof: Infinity, budget: [] });
    const sure = propagate([{ name: "sure", standard: 0, sensitivity: 2, dof: 5 }]);
    expect(sure).toEqual({ standard: 0, dof: Infinity, budget: [{ name: "sure", standard: 0, share: 0 }] });
  });

  // Source: JCGM 100:2008 Annex H.1, test/fixtures/uncertainty.json.
  it("gives the gauge block's doubt, degrees of freedom and 99 percent interval", () => {
    const { H1 } = reference;
    const inputs = H1.inputs.flatMap((input, index) =>
      input.components.map(
        (one): Contribution => ({
          name: one.label,
          standard: one.u,
          sensitivity: H1.sensitivities[index] ?? NaN,
          ...(one.dof === null ? {} : { dof: one.dof }),
        }),
      ),
    );
    const result = propagate(inputs);
    const stated = expandTo(0.99, result);
    expect(result.standard).toBeCloseTo(H1.u_c_nm, 9);
    expect(result.dof).toBeCloseTo(H1.nu_eff_from_all_components, 9);
    expect(stated.k).toBeCloseTo(H1.k, 9);
    expect(stated.expanded).toBeCloseTo(H1.U_nm, 8);
    expect(result.budget.slice(0, 2).map((line) => line.name)).toEqual(["l_S", "delta_theta"]);
  });
});

describe("propagateCorrelated", () => {
  it("is propagate where nothing is correlated", () => {
    fc.assert(
      fc.property(contributions, (inputs) => {
        const plain = propagate(inputs);
        expect(propagateCorrelated(inputs, [])).toEqual(plain);
      }),
    );
  });

  it("adds inputs that err as one, and takes their difference where they act against each other", () => {
    fc.assert(
      fc.property(evenly(0.1, 5), evenly(0.1, 5), (first, second) => {
        const inputs = [
          { name: "left", standard: first, sensitivity: 1 },
          { name: "right", standard: second, sensitivity: 1 },
        ];
        const together = (coefficient: number) =>
          held(propagateCorrelated(inputs, [{ between: ["left", "right"], coefficient }]));
        expect(together(1).standard).toBeCloseTo(first + second, 9);
        expect(together(-1).standard).toBeCloseTo(Math.abs(first - second), 6);
        expect(together(1).budget.reduce((sum, line) => sum + line.share, 0)).toBeCloseTo(1, 9);
      }),
    );
  });

  it("lets the zero of one meter drop out of the difference of two surfaces read with it", () => {
    fc.assert(
      fc.property(evenly(0.01, 1), evenly(0.01, 1), evenly(0.01, 1), (zero, left, right) => {
        const inputs = [
          { name: "left", standard: Math.hypot(zero, left), sensitivity: 1 },
          { name: "right", standard: Math.hypot(zero, right), sensitivity: -1 },
        ];
        const coefficient = sharedCorrelation(zero, Math.hypot(zero, left), Math.hypot(zero, right));
        const result = held(propagateCorrelated(inputs, [{ between: ["left", "right"], coefficient }]));
        expect(result.standard).toBeCloseTo(Math.hypot(left, right), 7);
      }),
    );
  });

  it("counts the fewest degrees of freedom where correlated inputs have finitely many", () => {
    const inputs = [
      { name: "first", standard: 1, sensitivity: 1, dof: 4 },
      { name: "second", standard: 1, sensitivity: 1, dof: 9 },
    ];
    const one = [{ between: ["first", "second"], coefficient: 0.5 }] as const;
    expect(held(propagateCorrelated(inputs, one)).dof).toBe(4);
  });

  it("gives exactly no doubt where two inputs cancel, whatever the rounding", () => {
    fc.assert(
      fc.property(evenly(0.1, 5), evenly(0.1, 5), evenly(0.1, 3), (first, second, sensitivity) => {
        const inputs = [
          { name: "left", standard: first, sensitivity },
          { name: "right", standard: second, sensitivity: (-first * sensitivity) / second },
        ];
        const result = held(propagateCorrelated(inputs, [{ between: ["left", "right"], coefficient: 1 }]));
        expect(result.standard).toBe(0);
        expect(result.budget.map((line) => line.share)).toEqual([0, 0]);
      }),
    );
  });

  it("refuses a name that is no input, and correlations that cannot be", () => {
    const inputs = ["a", "b", "c"].map((name) => ({ name, standard: 1, sensitivity: 1 }));
    const against = (first: string, second: string, coefficient = -0.9) => ({
      between: [first, second] as const,
      coefficient,
    });
    expect(propagateCorrelated(inputs, [against("a", "d")])).toEqual({ kind: "unknownInput", name: "d" });
    expect(propagateCorrelated(inputs, [against("d", "a")])).toEqual({ kind: "unknownInput", name: "d" });
    const impossible = { kind: "impossibleCorrelation" };
    expect(propagateCorrelated(inputs, [against("a", "b", 1.01)])).toEqual(impossible);
    expect(propagateCorrelated(inputs, [against("a", "a", 1)])).toEqual(impossible);
    const all = [against("a", "b"), against("b", "c"), against("a", "c")];
    expect(propagateCorrelated(inputs, all)).toEqual(impossible);
  });

  // Source: JCGM 100:2008 Annex H.2, test/fixtures/uncertainty.json.
  it.each([
    ["R", (v: number, i: number, phi: number) => (v / i) * Math.cos(phi)],
    ["X", (v: number, i: number, phi: number) => (v / i) * Math.sin(phi)],
    ["Z", (v: number, i: number) => v / i],
  ] as const)("gives the standard's %s, whose inputs were read together", (name, model) => {
    const { data, corr, results } = reference.H2;
    const inputs = (["V", "I", "phi"] as const).map((input) => {
      const { mean = NaN, ...doubt } = doubtFromRepeated(data[input]) ?? {};
      return { name: input, value: mean, standard: NaN, ...doubt };
    });
    const parts = linearise(([v = NaN, i = NaN, phi = NaN]) => model(v, i, phi), inputs) ?? [];
    const result = held(
      propagateCorrelated(parts, [
        { between: ["V", "I"], coefficient: corr.VI },
        { between: ["V", "phi"], coefficient: corr.Vphi },
        { between: ["I", "phi"], coefficient: corr.Iphi },
      ]),
    );
    expect(result.standard / results[name].u).toBeCloseTo(1, 7);
    expect(result.dof).toBe(4);
  });
});
