import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  differenceDoubt,
  isEqualWithinDoubt,
  judgeTolerance,
} from "../../../packages/core/src/uncertainty/agreement.ts";
import { evenly } from "../../support/evenly.ts";

describe("isEqualWithinDoubt", () => {
  // Source: trade practice, worked check: 42.0 predicted, 41.6 read, standard doubts 0.26 and 0.30, limit 0.79.
  it("passes the worked check of a flap", () => {
    const standard = differenceDoubt(0.26, 0.3);
    expect((2 * standard).toFixed(2)).toBe("0.79");
    expect(isEqualWithinDoubt(41.6 - 42, standard)).toBe(true);
    expect(isEqualWithinDoubt(41.2 - 42, standard)).toBe(false);
  });

  it("holds for either order and for a difference of exactly k standard doubts", () => {
    fc.assert(
      fc.property(evenly(-2, 2), evenly(0, 1), (difference, standard) => {
        expect(isEqualWithinDoubt(-difference, standard)).toBe(isEqualWithinDoubt(difference, standard));
        expect(isEqualWithinDoubt(2 * standard, standard)).toBe(true);
        expect(isEqualWithinDoubt(3 * standard, standard, 3)).toBe(true);
      }),
    );
  });
});

describe("judgeTolerance", () => {
  const cases = [evenly(-2, 2), evenly(0, 0.5), evenly(0, 2)] as const;

  it("agrees only where no true difference within the doubt passes the tolerance, and differs only where all do", () => {
    fc.assert(
      fc.property(...cases, (difference, standard, tolerance) => {
        const verdict = judgeTolerance(difference, standard, tolerance);
        const worst = Math.max(...[-2, 2].map((k) => Math.abs(difference + k * standard)));
        const isCrossed = Math.abs(difference) < 2 * standard;
        const best = isCrossed ? 0 : Math.min(...[-2, 2].map((k) => Math.abs(difference + k * standard)));
        if (Math.abs(worst - tolerance) < 1e-9 || Math.abs(best - tolerance) < 1e-9) return;
        expect(verdict === "agrees").toBe(worst <= tolerance);
        expect(verdict === "differs").toBe(best > tolerance);
      }),
    );
  });

  it("never turns from one certainty to the other when the doubt grows, only to cannot tell", () => {
    fc.assert(
      fc.property(...cases, evenly(0, 1), (difference, standard, tolerance, more) => {
        const [before, after] = [standard, standard + more].map((u) =>
          judgeTolerance(difference, u, tolerance),
        );
        expect([before, "cannotTell"]).toContain(after);
      }),
    );
  });

  // Source: JCGM 106:2012 8.3: acceptance within T - U, rejection beyond T + U.
  it("guards a tolerance of 1 degree by the expanded doubt of 0.4 to both sides", () => {
    const verdicts = [0.6, -0.6, 0.61, 1.4, -1.41].map((difference) => judgeTolerance(difference, 0.2, 1));
    expect(verdicts).toEqual(["agrees", "agrees", "cannotTell", "cannotTell", "differs"]);
  });
});
