import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  doubtFromExpanded,
  doubtFromRectangular,
  doubtFromRepeated,
  doubtFromScatter,
  doubtFromStep,
  doubtFromTriangular,
} from "../../../packages/core/src/uncertainty/standard-doubt.ts";
import reference from "../../fixtures/uncertainty.json";
import { evenly } from "../../support/evenly.ts";

describe("standard doubts", () => {
  it("of a step are those of a rectangle of half a step", () => {
    fc.assert(
      fc.property(evenly(0, 20), (step) => {
        expect(doubtFromStep(step)).toBeCloseTo(doubtFromRectangular(step / 2), 12);
      }),
    );
  });

  it("are largest where every value within the bounds is as likely as another", () => {
    fc.assert(
      fc.property(evenly(0.01, 20), (halfWidth) => {
        expect(doubtFromTriangular(halfWidth)).toBeLessThan(doubtFromRectangular(halfWidth));
        expect(doubtFromRectangular(halfWidth)).toBeLessThan(halfWidth);
      }),
    );
  });

  // Source: trade practice, worked figures of a bench budget, to the printed digits.
  it("are those of a bench budget", () => {
    expect(doubtFromStep(0.1).toFixed(3)).toBe("0.029");
    expect(doubtFromScatter(0.2, 3).toFixed(3)).toBe("0.115");
    expect(doubtFromRectangular(0.2).toFixed(3)).toBe("0.115");
    expect(doubtFromRectangular(0.35).toFixed(2)).toBe("0.20");
    expect(doubtFromStep(5).toFixed(2)).toBe("1.44");
    expect(doubtFromRectangular(2).toFixed(2)).toBe("1.15");
  });

  // Source: JCGM 100:2008 4.3.9: a / sqrt 6. 4.3.4: stated as 240 with k = 3.
  it("are those of the standard's triangle and certificate", () => {
    expect(doubtFromTriangular(6)).toBeCloseTo(Math.sqrt(6), 12);
    expect(doubtFromExpanded(240, 3)).toBe(80);
    expect(doubtFromExpanded(0.6)).toBe(0.3);
  });
});

describe("doubtFromRepeated", () => {
  // Source: JCGM 100:2008 Annex H.2, test/fixtures/uncertainty.json.
  it.each([
    ["V", 0],
    ["I", 1],
    ["phi", 2],
  ] as const)(
    "gives mean and standard doubt of the standard's %s with 4 degrees of freedom",
    (name, index) => {
      const repeated = doubtFromRepeated(reference.H2.data[name]);
      expect(repeated?.mean).toBeCloseTo(reference.H2.means[index] ?? NaN, 9);
      expect((repeated?.standard ?? NaN) / (reference.H2.u[index] ?? NaN)).toBeCloseTo(1, 9);
      expect(repeated?.dof).toBe(4);
    },
  );

  it("knows no scatter of one reading, and none of equal ones", () => {
    expect(doubtFromRepeated([])).toBeUndefined();
    expect(doubtFromRepeated([14])).toBeUndefined();
    expect(doubtFromRepeated([14, 14, 14])).toEqual({ mean: 14, standard: 0, dof: 2 });
  });
});
