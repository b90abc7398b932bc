import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type DeflectionCauses,
  deflectionDoubt,
  positionDoubt,
} from "../../../packages/core/src/uncertainty/deflection-doubt.ts";
import { expand } from "../../../packages/core/src/uncertainty/expand.ts";
import { propagate } from "../../../packages/core/src/uncertainty/propagate.ts";
import { type PulseCauses, pulseDoubt } from "../../../packages/core/src/uncertainty/pulse-doubt.ts";
import { evenly } from "../../support/evenly.ts";

const pulseKeys = ["testerHalfWidthUs", "stepUs", "jitterUs", "deadBandHalfWidthUs"] as const;
const deflectionKeys = [
  "displayStepDeg",
  "meterHalfWidthDeg",
  "zeroHalfWidthDeg",
  "alignmentDeg",
  "freePlayHalfWidthDeg",
] as const;

describe("pulseDoubt", () => {
  it("never shrinks when one cause gets worse", () => {
    const causes = fc.record(
      {
        testerHalfWidthUs: evenly(0, 20),
        stepUs: evenly(0, 10),
        jitterUs: evenly(0, 3),
        deadBandHalfWidthUs: evenly(0, 6),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(causes, fc.constantFrom(...pulseKeys), evenly(0.1, 5), (before, key, more) => {
        const worse: PulseCauses = { ...before, [key]: (before[key] ?? 0) + more };
        expect(pulseDoubt(worse).standard).toBeGreaterThan(pulseDoubt(before).standard);
      }),
    );
  });

  // Source: trade practice, worked bench budget: step of 5, jitter 0.5, dead band of plus and minus 2.
  it("is 1.91 us for the worked bench budget, most of it the step", () => {
    const { standard, budget } = pulseDoubt({ stepUs: 5, jitterUs: 0.5, deadBandHalfWidthUs: 2 });
    expect(standard.toFixed(2)).toBe("1.91");
    expect(budget.map((line) => line.name)).toEqual(["step", "deadBand", "jitter"]);
  });

  it("is nothing where nothing is known to be uncertain", () => {
    expect(pulseDoubt({})).toMatchObject({ standard: 0, budget: [] });
  });
});

describe("deflectionDoubt", () => {
  it("never shrinks when one cause gets worse", () => {
    const causes = fc.record(
      {
        displayStepDeg: evenly(0, 1),
        meterHalfWidthDeg: evenly(0, 1),
        zeroHalfWidthDeg: evenly(0, 1),
        alignmentDeg: evenly(0, 1),
        freePlayHalfWidthDeg: evenly(0, 1),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(causes, fc.constantFrom(...deflectionKeys), evenly(0.05, 1), (before, key, more) => {
        const worse: DeflectionCauses = { ...before, [key]: (before[key] ?? 0) + more };
        expect(deflectionDoubt(worse).standard).toBeGreaterThan(deflectionDoubt(before).standard);
      }),
    );
  });

  it("falls with the count of readings averaged and carries their degrees of freedom", () => {
    const scattered = (count: number) => deflectionDoubt({ scatter: { deviationDeg: 0.2, count, dof: 8 } });
    expect(scattered(4).standard).toBeCloseTo(0.1, 12);
    expect(deflectionDoubt({ scatter: { deviationDeg: 0.2 } }).standard).toBe(0.2);
    expect(scattered(4).dof).toBeCloseTo(8, 9);
  });

  it("has a line by name for every cause that is not 0, the rule's too, and none for others", () => {
    const names = (causes: DeflectionCauses) => deflectionDoubt(causes).budget.map(({ name }) => name);
    const all = {
      displayStepDeg: 4,
      meterHalfWidthDeg: 0.6,
      ruleHalfWidthDeg: 0.5,
      zeroHalfWidthDeg: 0.4,
      alignmentDeg: 0.2,
      freePlayHalfWidthDeg: 0.3,
      scatter: { deviationDeg: 0.1 },
    };
    expect(names(all)).toEqual(["display", "meter", "rule", "zero", "alignment", "freePlay", "scatter"]);
    expect(names({ ...all, meterHalfWidthDeg: 0, scatter: { deviationDeg: 0 } })).toEqual([
      "display",
      "rule",
      "zero",
      "alignment",
      "freePlay",
    ]);
    expect(deflectionDoubt({ ruleHalfWidthDeg: 0.6 }).standard).toBeCloseTo(0.6 / Math.sqrt(3), 12);
  });

  // Source: trade practice, worked bench budget. Its 0.264 comes from inputs rounded to the digits it prints: free play
  // of 0.35 over sqrt 3 as 0.20. Unrounded it is 0.266.
  it("is 0.264 deg from the rounded figures of the worked bench budget, and 0.266 from its half-widths", () => {
    const printed = { display: 0.029, scatter: 0.115, zero: 0.115, alignment: 0.05, freePlay: 0.2 };
    const rounded = propagate(
      Object.entries(printed).map(([name, standard]) => ({ name, standard, sensitivity: 1 })),
    );
    const exact = deflectionDoubt({
      displayStepDeg: 0.1,
      zeroHalfWidthDeg: 0.2,
      alignmentDeg: 0.05,
      freePlayHalfWidthDeg: 0.35,
      scatter: { deviationDeg: 0.2, count: 3 },
    });
    expect(rounded.standard.toFixed(3)).toBe("0.264");
    expect(exact.standard.toFixed(3)).toBe("0.266");
    expect(exact.budget[0]?.name).toBe("freePlay");
  });
});

describe("positionDoubt", () => {
  // Source: trade practice, worked bench budget at 14 degrees of a flap: slope 0.0763 deg/us.
  it("is 0.302 deg, 0.60 deg expanded, for the worked position", () => {
    const { standard, budget } = positionDoubt(0.264, 1.91, 0.0763);
    expect(standard.toFixed(3)).toBe("0.302");
    expect(expand(standard).toFixed(2)).toBe("0.60");
    expect(budget.map((line) => line.name)).toEqual(["deflection", "pulse"]);
  });

  it("does not depend on which way the response runs", () => {
    expect(positionDoubt(0.264, 1.91, -0.0763).standard).toBe(positionDoubt(0.264, 1.91, 0.0763).standard);
  });
});
