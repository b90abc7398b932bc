import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fightingTorque } from "../../../packages/core/src/surface/fighting-torque.ts";
import {
  servoStiffness,
  stiffnessInSeries,
  swingFrequencyHz,
} from "../../../packages/core/src/surface/stiffness.ts";
import { deg, nm } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";

describe("stiffnessInSeries", () => {
  it("is softer than the softest, and half of two equal ones", () => {
    fc.assert(
      fc.property(fc.array(evenly(0.1, 100), { minLength: 2, maxLength: 5 }), (all) => {
        expect(stiffnessInSeries(all)).toBeLessThan(Math.min(...all));
        expect(stiffnessInSeries(all)).toBeGreaterThanOrEqual((Math.min(...all) / all.length) * (1 - 1e-12));
      }),
    );
    expect(stiffnessInSeries([42])).toBeCloseTo(42, 12);
  });
});

describe("swingFrequencyHz", () => {
  it("falls as the ratio and as the root of the inertia grow", () => {
    fc.assert(
      fc.property(
        evenly(1, 100),
        evenly(0.2, 2),
        evenly(1e-5, 1e-3),
        evenly(1.1, 4),
        (stiffness, ratio, inertia, by) => {
          const hertz = swingFrequencyHz(stiffness, ratio, inertia) ?? NaN;
          expect((swingFrequencyHz(stiffness, ratio * by, inertia) ?? NaN) * by).toBeCloseTo(hertz, 6);
          expect((swingFrequencyHz(stiffness, ratio, inertia * by ** 2) ?? NaN) * by).toBeCloseTo(hertz, 6);
          expect(swingFrequencyHz(stiffness, -ratio, inertia)).toBe(hertz);
        },
      ),
    );
  });

  it("is undefined where the servo does not hold the surface at all", () => {
    expect(swingFrequencyHz(50, 0, 2.4e-4)).toBeUndefined();
  });

  // Source: trade practice, worked flap of a tow plane: 2.4e-4 kg m2, servo of 1.37 N m, ratio 0.52 at 42 degrees and
  // 1.12 at level.
  it("is 143 Hz at 42 degrees and 66 Hz at level for the worked flap", () => {
    const stiffness = servoStiffness(nm(1.37));
    expect(swingFrequencyHz(stiffness, 0.52, 2.4e-4)?.toFixed(0)).toBe("143");
    expect(swingFrequencyHz(stiffness, 1.12, 2.4e-4)?.toFixed(0)).toBe("66");
  });
});

describe("fightingTorque", () => {
  // Source: trade practice, worked twin rudder: servos of 1.1 N m, gain 0.0918 deg/us, stiffness 11.4 N m/rad together.
  // The stiffness between them is not stated; 25 N m/rad is what its 11.4 leaves.
  const servo = servoStiffness(nm(1.1));
  const stiffnesses = [servo, servo, 25];

  it("reproduces the worked rudder, matched only at the centre", () => {
    // Pulses for -20 and for 0 degrees of both servos.
    const mismatchUs = 1502.6 - 1236 - (1479.5 - 1171.1);
    const mismatch = deg(mismatchUs * 0.0918);
    const torque = fightingTorque(mismatch, stiffnesses);
    expect(Math.abs(mismatchUs).toFixed(1)).toBe("41.8");
    expect(Math.abs(mismatch).toFixed(2)).toBe("3.84");
    expect(stiffnessInSeries(stiffnesses).toFixed(1)).toBe("11.4");
    expect(torque.toFixed(2)).toBe("0.76");
    expect(Math.floor((100 * torque) / 1.1)).toBe(69);
  });

  it("is 9 percent of stall for the half degree that is let pass", () => {
    expect(((100 * fightingTorque(deg(0.5), stiffnesses)) / 1.1).toFixed(0)).toBe("9");
    expect((0.5 / 0.0918).toFixed(1)).toBe("5.4");
  });

  it("is nothing where they agree, and grows with the mismatch to either side", () => {
    expect(fightingTorque(deg(0), stiffnesses)).toBe(0);
    fc.assert(
      fc.property(evenly(0.1, 10), evenly(1.1, 4), (mismatch, by) => {
        const torque = fightingTorque(deg(mismatch), stiffnesses);
        expect(fightingTorque(deg(-mismatch), stiffnesses)).toBe(torque);
        expect(fightingTorque(deg(mismatch * by), stiffnesses)).toBeCloseTo(torque * by, 9);
      }),
    );
  });
});
