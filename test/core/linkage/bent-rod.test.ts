import { describe, expect, it } from "vitest";
import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type { BentRod } from "../../../packages/core/src/linkage/linkage.ts";
import { deg } from "../../../packages/core/src/units/quantity.ts";
import reference from "../../fixtures/linkage/bent-rod.json" with { type: "json" };
import { made, relative } from "./made.ts";

// bent-rod.json: computed from geometry, no published source. There the tip points to starboard at phi = 0 and delta is
// positive trailing edge up, so that its rows are ours with the sign of the deflection changed; to port they are equal.

const bent = (bendDeg: number, skewDeg: number, tipTo: BentRod["tipTo"]): BentRod => ({
  kind: "bentRod",
  bend: deg(bendDeg),
  skew: deg(skewDeg),
  tipTo,
});

describe("a bent rod against the reference", () => {
  it.each([...reference.perpendicular, ...reference.skewed])(
    "bend $alpha_deg, skew $rod_skew_sigma_deg: deflection to 1e-9 degrees, ratio to 1e-9",
    (one) => {
      const port = made(bent(one.alpha_deg, one.rod_skew_sigma_deg, "port"));
      const starboard = made(bent(one.alpha_deg, one.rod_skew_sigma_deg, "starboard"));
      for (const row of one.rows) {
        const rotation = deg(row.phi_deg);
        expect(port.deflectionAt(rotation)).toBeCloseTo(row.delta_deg, 9);
        expect(starboard.deflectionAt(rotation)).toBeCloseTo(-row.delta_deg, 9);
        if (row.ddelta_dphi === 0) expect(port.ratioAt(rotation)).toBeCloseTo(0, 12);
        else expect(relative(port.ratioAt(rotation), row.ddelta_dphi)).toBeLessThan(1e-9);
        if (row.phi_deg !== 0) expect(port.rotationAt(deg(row.delta_deg))).toBeCloseTo(row.phi_deg, 6);
      }
    },
  );

  it.each(reference.inverse)(
    "bend $alpha_deg reaches $delta_deg degrees at $phi_deg, or not at all",
    (one) => {
      const { rotationAt, rotationsAt } = made(bent(one.alpha_deg, 0, "port"));
      if (one.phi_deg === null) {
        expect(rotationAt(deg(one.delta_deg))).toBeUndefined();
        expect(rotationsAt(deg(one.delta_deg))).toEqual([]);
        return;
      }
      // At 90 degrees of rotation the deflection turns back: there rounding of 1e-16 leaves 1e-8 of the rotation.
      expect(rotationAt(deg(one.delta_deg))).toBeCloseTo(one.phi_deg, one.phi_deg === 90 ? 5 : 9);
      expect(rotationsAt(deg(one.delta_deg)).map((r) => Math.round(r * 1e4) / 1e4)).toContain(
        Math.round((180 - one.phi_deg) * 1e4) / 1e4,
      );
    },
  );

  it.each(reference.phi_from_normal_plane.flatMap((one) => one.rows.map((row) => ({ ...one, ...row }))))(
    "bend $alpha_deg counted from the bend standing up: $phi_from_normal_plane_deg gives $delta_deg",
    (one) => {
      const { deflectionAt } = made(bent(one.alpha_deg, 0, "port"));
      expect(deflectionAt(deg(90 - one.phi_from_normal_plane_deg))).toBeCloseTo(one.delta_deg, 9);
    },
  );

  it.each(reference.coaxial)("a wire along the hinge turns the surface with it: $phi_deg", (one) => {
    const { deflectionAt, ratioAt } = made(bent(one.alpha_deg, -90, "port"));
    expect(deflectionAt(deg(one.phi_deg))).toBeCloseTo(one.delta_deg, 9);
    expect(ratioAt(deg(one.phi_deg))).toBeCloseTo(1, 12);
  });
});

describe("a bent rod", () => {
  it("turns back at the bend angle, a quarter turn either way", () => {
    const { low, high } = made(bent(35, 0, "port")).range;
    expect(low).toMatchObject({ kind: "turnsBack" });
    expect(low.rotation).toBeCloseTo(-90, 9);
    expect(high.rotation).toBeCloseTo(90, 9);
    expect(high.deflection).toBeCloseTo(35, 9);
  });

  it("is refused where the bend is none, or where the tip comes to lie along the hinge, at level or half a turn on", () => {
    for (const spec of [
      bent(0, 0, "port"),
      bent(95, 0, "port"),
      bent(50, 40, "port"),
      bent(40, -91, "port"),
      bent(45, -45, "port"),
      bent(60, -30, "starboard"),
      bent(60, -30 + 1e-13, "starboard"),
    ]) {
      expect(drive(spec)).toMatchObject({ kind: "bendOutOfRange", bendDeg: spec.bend });
    }
  });

  it.each([
    [45, 0.01],
    [45, 2e-9],
    [45, -2e-9],
    [60, 2e-9],
    [10, -2e-9],
    [80, 2e-9],
  ])(
    "with a bend of %f, %f degrees off the hinge half a turn on, has a way and a way back",
    (bend, offDeg) => {
      const { range, deflectionAt, rotationAt } = made(bent(bend, bend - 90 + offDeg, "port"));
      // By the formula: short of the hinge line it turns back short of 90, past it the surface goes all the way round.
      expect(range.high.kind).toBe(offDeg > 0 ? "turnsBack" : "full");
      expect(range.high.deflection).toBeCloseTo(offDeg > 0 ? 90 : 180, offDeg === 0.01 ? -1 : 2);
      let before: number = range.low.deflection;
      for (let part = 0.01; part < 1; part += 0.01) {
        const rotation = deg(range.low.rotation + part * (range.high.rotation - range.low.rotation));
        const deflection = deflectionAt(rotation) ?? deg(-999);
        expect(deflection).toBeGreaterThan(before);
        expect(deflectionAt(rotationAt(deflection) ?? deg(999))).toBeCloseTo(deflection, 9);
        before = deflection;
      }
    },
  );

  it("goes half a turn either way, each with its own sign, where the tip passes beyond the hinge", () => {
    const { range, deflectionAt, rotationAt } = made(bent(60, -60, "port"));
    for (const end of [range.low, range.high]) {
      expect(deflectionAt(end.rotation)).toBe(end.deflection);
      expect(rotationAt(end.deflection)).toBe(end.rotation);
    }
    expect([range.low.deflection, range.high.deflection].map(Math.round)).toEqual([-180, 180]);
    expect([deflectionAt(deg(-180)), deflectionAt(deg(180))]).toEqual([
      range.low.deflection,
      range.high.deflection,
    ]);
    expect(deflectionAt(deg(370))).toBeCloseTo(deflectionAt(deg(10)) ?? 999, 12);
  });

  it("is drawn with its tip in the plane of the pocket", () => {
    const { drawingAt, deflectionAt } = made(bent(35, 10, "starboard"));
    for (const rotation of [-50, 0, 20]) {
      const [aft = 0, , up = 0] = drawingAt(deg(rotation))?.points.tip ?? [];
      const deflection = (Math.atan2(-up, aft) * 180) / Math.PI;
      expect(deflection).toBeCloseTo(deflectionAt(deg(rotation)) ?? Number.NaN, 9);
    }
  });
});
