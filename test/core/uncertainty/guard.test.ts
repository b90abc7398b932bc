import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { guardSpanUs } from "../../../packages/core/src/uncertainty/guard.ts";
import { evenly } from "../../support/evenly.ts";

describe("guardSpanUs", () => {
  it("never shrinks when a cause gets worse, and never falls below a step", () => {
    const doubt = evenly(0, 10);
    fc.assert(
      fc.property(
        doubt,
        doubt,
        evenly(-10, 10),
        evenly(0, 10),
        evenly(0, 5),
        (pulseUs, contactUs, shift, stepUs, more) => {
          const guard = (a: number, b: number, c: number) =>
            guardSpanUs({ pulseUs: a, contactUs: b, systematicUs: [shift, c], stepUs });
          const before = guard(pulseUs, contactUs, 0);
          expect(before).toBeGreaterThanOrEqual(stepUs);
          expect(guard(pulseUs + more, contactUs, 0)).toBeGreaterThanOrEqual(before);
          expect(guard(pulseUs, contactUs + more, 0)).toBeGreaterThanOrEqual(before);
          expect(guard(pulseUs, contactUs, -more)).toBeGreaterThanOrEqual(before);
        },
      ),
    );
  });

  // Source: trade practice, worked guard of a flap: 2 sqrt(1.91^2 + 3^2) = 7.1 and 2.9 of temperature make 10 us.
  it("is 10 us for the worked flap, 7.1 of them by chance", () => {
    expect(guardSpanUs({ pulseUs: 1.91, contactUs: 3 }).toFixed(1)).toBe("7.1");
    expect(guardSpanUs({ pulseUs: 1.91, contactUs: 3, systematicUs: [-2.9] }).toFixed(0)).toBe("10");
  });

  it("takes another factor where one is stated", () => {
    expect(guardSpanUs({ pulseUs: 3, contactUs: 4 }, 3)).toBe(15);
  });
});
