import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { supplyDemand } from "../../../packages/core/src/surface/supply-demand.ts";
import { amps } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";

describe("supplyDemand", () => {
  it("never falls when a servo is added, and the stalled sum is at least the largest stall", () => {
    const servo = fc.record({ stall: evenly(0.3, 8).map(amps), holding: evenly(0, 1).map(amps) });
    fc.assert(
      fc.property(fc.array(servo, { maxLength: 12 }), servo, (servos, added) => {
        const [before, after] = [supplyDemand(servos), supplyDemand([...servos, added])];
        expect(after.oneStalled).toBeGreaterThanOrEqual(before.oneStalled);
        expect(after.holding).toBeGreaterThanOrEqual(before.holding);
        expect(after.allStalled).toBeGreaterThan(before.allStalled);
        expect(after.oneStalled).toBeGreaterThanOrEqual(added.stall);
      }),
    );
  });

  // Source: trade practice, worked tow plane: eight servos of 0.25 A and one stalled at 3.1 A make 5.1 A.
  it("is 5.1 A for the worked eight servos with one stalled", () => {
    const servos = Array.from({ length: 8 }, () => ({ stall: amps(3.1) }));
    expect(supplyDemand(servos).oneStalled).toBeCloseTo(5.1, 12);
    expect(supplyDemand(servos).allStalled).toBeCloseTo(24.8, 12);
  });

  it("is nothing without servos", () => {
    expect(supplyDemand([])).toEqual({ holding: 0, oneStalled: 0, allStalled: 0 });
  });
});
