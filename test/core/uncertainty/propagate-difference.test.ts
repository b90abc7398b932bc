import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Contribution,
  type Correlation,
  propagate,
  propagateCorrelated,
  sharedCorrelation,
} from "../../../packages/core/src/uncertainty/propagate.ts";
import { propagateDifference } from "../../../packages/core/src/uncertainty/propagate-difference.ts";
import { evenly } from "../../support/evenly.ts";

const names = ["meter", "tester", "zero", "play"] as const;
const side = fc
  .tuple(...names.map(() => fc.tuple(evenly(0.01, 1), evenly(-2, 2))))
  .map((causes) =>
    causes.map(
      ([standard, sensitivity], index): Contribution => ({ name: names[index] ?? "", standard, sensitivity }),
    ),
  );
const shared = fc.subarray([...names]).map((list) => new Set<string>(list));

describe("propagateDifference", () => {
  // Source: JCGM 100:2008 5.2.2 (16), every input of both sides on its own, the shared ones with a coefficient of 1.
  it("is the law of propagation with the shared causes fully correlated", () => {
    fc.assert(
      fc.property(side, side, shared, (first, second, common) => {
        const inputs = [
          ...first.map((one) => ({ ...one, name: `first ${one.name}` })),
          ...second.map((one) => ({ ...one, name: `second ${one.name}`, sensitivity: -one.sensitivity })),
        ];
        const correlations = [...common].map(
          (name): Correlation => ({ between: [`first ${name}`, `second ${name}`], coefficient: 1 }),
        );
        const expected = propagateCorrelated(inputs, correlations);
        if (!("standard" in expected)) throw new Error(expected.kind);
        expect(propagateDifference(first, second, common).standard).toBeCloseTo(expected.standard, 9);
      }),
    );
  });

  // Source: JCGM 100:2008 F.1.2.3: two results with one cause in common have its square over their product as correlation.
  it("is what two whole results have with the correlation of their common cause", () => {
    fc.assert(
      fc.property(evenly(0.01, 1), evenly(0, 1), evenly(0, 1), (common, own, other) => {
        const cause = { name: "meter", standard: common, sensitivity: 1 };
        const [first, second] = [own, other].map((standard) => [
          cause,
          { name: "zero", standard, sensitivity: 1 },
        ]);
        const [one, two] = [first ?? [], second ?? []].map((causes) => propagate(causes).standard);
        const [u1, u2] = [one ?? 0, two ?? 0];
        const variance = u1 ** 2 + u2 ** 2 - 2 * sharedCorrelation(common, u1, u2) * u1 * u2;
        const found = propagateDifference(first ?? [], second ?? [], new Set(["meter"])).standard;
        expect(found ** 2).toBeCloseTo(variance, 12);
        expect(found).toBeCloseTo(Math.hypot(own, other), 9);
      }),
    );
  });

  // Source: JCGM 100:2008 5.2.2, example: ten resistors compared with one standard of 0.1 ohm make 1 ohm in series, not 0.32.
  it("adds up where the two sides have opposite signs, as resistors in series do", () => {
    const five = (sign: 1 | -1) => [{ name: "standard", standard: 0.1, sensitivity: sign * 5 }];
    expect(propagateDifference(five(1), five(-1), new Set(["standard"])).standard).toBeCloseTo(1, 12);
    const apart = Array.from({ length: 10 }, (_, index) => ({
      name: `${index}`,
      standard: 0.1,
      sensitivity: 1,
    }));
    expect(propagateDifference(apart, [], new Set()).standard.toFixed(2)).toBe("0.32");
  });

  it("has one line in its budget for a shared cause and one a side for any other", () => {
    const causes = [
      { name: "meter", standard: 0.1, sensitivity: 1, dof: 4 },
      { name: "zero", standard: 0.2, sensitivity: 1 },
    ];
    const steeper = causes.map((one) => ({ ...one, sensitivity: 3, dof: 7 }));
    const { budget, dof } = propagateDifference(causes, steeper, new Set(["meter", "tester"]));
    expect(budget.map(({ name }) => name)).toEqual(["zero", "meter", "zero"]);
    expect(budget.map(({ standard }) => standard.toFixed(2))).toEqual(["0.60", "0.20", "0.20"]);
    expect(Number.isFinite(dof)).toBe(true);
  });

  it("is nothing for two results that have everything in common", () => {
    fc.assert(
      fc.property(side, (one) => {
        expect(propagateDifference(one, one, new Set(names)).standard).toBe(0);
      }),
    );
  });

  it("knows a shared cause no better than the side that knows it less", () => {
    const meter = (dof?: number): Contribution => ({
      name: "meter",
      standard: dof === 12 ? 1 : 3,
      sensitivity: 1,
      ...(dof === undefined ? {} : { dof }),
    });
    const dofOf = (first: Contribution, second: Contribution) =>
      propagateDifference([first], [second], new Set(["meter"])).dof;
    expect(dofOf(meter(12), meter(5))).toBeCloseTo(5, 9);
    expect(dofOf(meter(12), meter())).toBeCloseTo(12, 9);
    expect(dofOf({ ...meter(), standard: 1 }, meter(5))).toBeCloseTo(5, 9);
    expect(dofOf({ ...meter(), standard: 1 }, meter())).toBe(Number.POSITIVE_INFINITY);
  });
});
