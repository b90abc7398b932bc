import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dynamicPressurePa } from "../../../packages/core/src/surface/air.ts";
import {
  coefficientsPerDeg,
  flapCoefficients,
  hingeMoment,
} from "../../../packages/core/src/surface/hinge-moment.ts";
import { servoLoad } from "../../../packages/core/src/surface/servo-load.ts";
import { deg, mm, mps, nm } from "../../../packages/core/src/units/quantity.ts";
import reference from "../../fixtures/hinge-moment.json";
import { evenly } from "../../support/evenly.ts";

/**
 * The coefficients by summing the vorticity of a thin section over the flap, in Glauert's angle: flat-plate loading for
 * incidence, its Fourier series for deflection. Source: H. Glauert, Elements of Aerofoil and Airscrew Theory, ch. VII.
 */
function integrated(chordFraction: number) {
  const hingeRad = Math.acos(2 * chordFraction - 1);
  const steps = 4000;
  let [b1, b2] = [0, 0];
  for (let step = 0; step < steps; step += 1) {
    // From the hinge to the trailing edge.
    const angle = hingeRad + ((step + 0.5) / steps) * (Math.PI - hingeRad);
    const width = (Math.PI - hingeRad) / steps;
    const arm = (Math.cos(hingeRad) - Math.cos(angle)) / 2;
    // Lift of a unit angle: 4 cot(angle/2) for incidence; the flap's slope adds a logarithm.
    const incidence = 4 / Math.tan(angle / 2);
    const ratio = Math.sin((angle + hingeRad) / 2) / Math.sin((angle - hingeRad) / 2);
    const deflection =
      (4 / Math.PI) * ((Math.PI - hingeRad) / Math.tan(angle / 2) + Math.log(Math.abs(ratio)));
    const area = (Math.sin(angle) / 2) * width;
    b1 -= (incidence * arm * area) / chordFraction ** 2;
    b2 -= (deflection * arm * area) / chordFraction ** 2;
  }
  return { b1, b2 };
}

describe("flapCoefficients", () => {
  it("equal the pressure of a thin section summed over the flap", () => {
    fc.assert(
      fc.property(evenly(0.05, 0.95), (chordFraction) => {
        const { b1, b2 } = integrated(chordFraction);
        const coefficients = flapCoefficients(chordFraction);
        expect((coefficients?.b1PerRad ?? NaN) / b1).toBeCloseTo(1, 5);
        expect((coefficients?.b2PerRad ?? NaN) / b2).toBeCloseTo(1, 5);
      }),
      { numRuns: 40 },
    );
  });

  it("resist more by deflection than by incidence, and work more the larger the flap", () => {
    fc.assert(
      fc.property(evenly(0.01, 0.98), evenly(0.001, 0.02), (chordFraction, more) => {
        const [small, large] = [flapCoefficients(chordFraction), flapCoefficients(chordFraction + more)];
        if (small === undefined || large === undefined) throw new Error("out of range");
        expect(small.b2PerRad).toBeLessThan(small.b1PerRad);
        expect(small.b1PerRad).toBeLessThan(0);
        expect(large.b1PerRad).toBeLessThan(small.b1PerRad);
        expect(large.b2PerRad).toBeLessThan(small.b2PerRad);
        expect(large.effectiveness).toBeGreaterThan(small.effectiveness);
      }),
    );
  });

  // Source: R&M 1095 (1927) in the closed forms of Houghton and Carpenter, test/fixtures/hinge-moment.json.
  it.each(reference.table)("agree with the reference for a flap of $E of the chord", (row) => {
    const coefficients = flapCoefficients(row.E);
    expect(coefficients?.b1PerRad).toBeCloseTo(row.b1_per_rad, 9);
    expect(coefficients?.b2PerRad).toBeCloseTo(row.b2_per_rad, 9);
    expect(coefficients?.effectiveness).toBeCloseTo(row.flap_effectiveness, 9);
    const perDeg = coefficientsPerDeg(row.b1_per_deg, row.b2_per_deg);
    expect(perDeg.b1PerRad).toBeCloseTo(row.b1_per_rad, 9);
    expect(perDeg.b2PerRad).toBeCloseTo(row.b2_per_rad, 9);
  });

  it("are undefined for a fraction below a hundredth or beyond the whole chord", () => {
    for (const chordFraction of [0, -0.2, 0.009, 1.001, NaN]) {
      expect(flapCoefficients(chordFraction)).toBeUndefined();
    }
  });
});

describe("hingeMoment", () => {
  const size = fc.record({ span: evenly(50, 1500).map(mm), chord: evenly(10, 200).map(mm) });
  const angles = fc.record({ incidence: evenly(-8, 8).map(deg), deflection: evenly(-45, 45).map(deg) });
  const coefficients = coefficientsPerDeg(-0.007, -0.012);

  it("is zero at zero airspeed, never negative, and grows with the airspeed's square", () => {
    fc.assert(
      fc.property(size, angles, evenly(1, 60), evenly(0.1, 3), (flap, at, speed, factor) => {
        const moment = (speedMps: number) =>
          hingeMoment(flap, coefficients, dynamicPressurePa(mps(speedMps)), at);
        expect(moment(0)).toBe(0);
        expect(moment(speed)).toBeGreaterThanOrEqual(0);
        expect(moment(speed * factor)).toBeCloseTo(moment(speed) * factor ** 2, 9);
      }),
    );
  });

  it("does not depend on the sign of either angle and grows with both", () => {
    fc.assert(
      fc.property(size, angles, evenly(0.1, 10), (flap, { incidence, deflection }, more) => {
        const moment = (a: number, d: number) =>
          hingeMoment(flap, coefficients, 250, { incidence: deg(a), deflection: deg(d) });
        const before = moment(incidence, deflection);
        expect(moment(-incidence, deflection)).toBe(before);
        expect(moment(incidence, -deflection)).toBe(before);
        expect(moment(Math.abs(incidence) + more, deflection)).toBeGreaterThan(before);
        expect(moment(incidence, Math.abs(deflection) + more)).toBeGreaterThan(before);
      }),
    );
  });

  // Source: test/fixtures/hinge-moment.json; incidence and deflection have one sign in both examples.
  it.each(reference.example_moments)("agrees with the reference's $id", (row) => {
    const flap = flapCoefficients(row.E);
    if (flap === undefined) throw new Error("out of range");
    const moment = hingeMoment(
      { span: mm(row.span_m * 1000), chord: mm(row.flap_chord_m * 1000) },
      flap,
      dynamicPressurePa(mps(row.V), row.rho),
      { incidence: deg(row.alpha_deg), deflection: deg(row.delta_deg) },
    );
    const load = servoLoad(moment, row.linkage_ratio_ddelta_dservo, {
      torque: nm(row.servo_torque_available_Nm),
    });
    expect(moment).toBeCloseTo(Math.abs(row.hinge_moment_Nm), 9);
    expect(load?.needed).toBeCloseTo(row.servo_torque_needed_Nm, 9);
    expect(1 / (load?.share ?? NaN)).toBeCloseTo(row.margin_factor, 8);
  });
});
