import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { linearise } from "../../../packages/core/src/uncertainty/linearise.ts";
import { propagate } from "../../../packages/core/src/uncertainty/propagate.ts";
import reference from "../../fixtures/uncertainty.json";
import { evenly } from "../../support/evenly.ts";
import { FOUR_BAR_KEYS, fourBarInputs, hornAngleDeg } from "./four-bar.ts";

describe("linearise", () => {
  it("finds the factors of a straight model", () => {
    fc.assert(
      fc.property(evenly(-9, 9), evenly(-9, 9), evenly(-50, 50), evenly(0.01, 3), (p, q, value, standard) => {
        const found = linearise(
          ([x = NaN, y = NaN]) => p * x + q * y + 4,
          [
            { name: "x", value, standard },
            { name: "y", value: -value, standard, dof: 5 },
          ],
        );
        expect(found).toEqual([
          { name: "x", standard, sensitivity: expect.closeTo(p, 6) },
          { name: "y", standard, sensitivity: expect.closeTo(q, 6), dof: 5 },
        ]);
      }),
    );
  });

  it("leaves out inputs without doubt", () => {
    const inputs = [
      { name: "sure", value: 3, standard: 0 },
      { name: "unsure", value: 4, standard: 1 },
    ];
    const found = linearise(([x = NaN, y = NaN]) => x * y, inputs);
    expect(found).toEqual([{ name: "unsure", standard: 1, sensitivity: expect.closeTo(3, 9) }]);
  });

  it("gives undefined where the model has no result next to its inputs", () => {
    const inputs = [{ name: "x", value: 0, standard: 1 }];
    expect(linearise(([x = NaN]) => (x < 0 ? undefined : x), inputs)).toBeUndefined();
    expect(linearise(([x = NaN]) => Math.sqrt(x), inputs)).toBeUndefined();
  });

  // Source: test/fixtures/uncertainty.json, sensitivities differentiated in closed form.
  it.each(reference.linkage)("gives the reference's sensitivities and doubt of $id", (row) => {
    const found = linearise(hornAngleDeg, fourBarInputs(row, FOUR_BAR_KEYS)) ?? [];
    const ratios = found.map((one, index) => one.sensitivity / (row.sensitivities[index] ?? NaN));
    for (const ratio of ratios) expect(ratio).toBeCloseTo(1, 5);
    expect(found).toHaveLength(5);
    expect(propagate(found).standard / row.u_linear_deg).toBeCloseTo(1, 5);
  });
});
