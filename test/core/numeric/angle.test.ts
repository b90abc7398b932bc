import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { angleOfSine, degrees, radians } from "../../../packages/core/src/numeric/angle.ts";
import { evenly } from "../../support/evenly.ts";

describe("angles", () => {
  it("are half a turn at 180 degrees and pi radians, there and back anywhere", () => {
    expect(radians(180)).toBe(Math.PI);
    expect(degrees(Math.PI)).toBe(180);
    fc.assert(
      fc.property(evenly(-360, 360), (angleDeg) => {
        expect(degrees(radians(angleDeg))).toBeCloseTo(angleDeg, 11);
      }),
    );
  });

  it("come back from their sine up to a right angle, where a rounding error past it does no harm", () => {
    fc.assert(
      fc.property(evenly(0, 89), (angleDeg) => {
        expect(angleOfSine(Math.sin(radians(angleDeg)))).toBeCloseTo(angleDeg, 10);
      }),
    );
    expect(angleOfSine(1 + Number.EPSILON)).toBe(90);
  });
});
