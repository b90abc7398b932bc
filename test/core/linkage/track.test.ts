import { describe, expect, it } from "vitest";
import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type { Chain, Track } from "../../../packages/core/src/linkage/linkage.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import reference from "../../fixtures/linkage/slider-crank.json" with { type: "json" };
import { made, relative } from "./made.ts";

// slider-crank.json: x = a cos(theta) + s sqrt(b^2 - (a sin(theta) - e)^2), 40 digits. Crank at the origin, track along x
// at height e, theta anticlockwise from x: theta = armAt - rotation. Branch +1 has the slider ahead of the pin; it is
// declared with the way out running forward from `reach` beyond the slider, branch -1 with it running aft.

const reach = 20;
/** One degree a millimetre: deflection in degrees reads as extension. */
const straight = { kind: "powers", length: mm(1), terms: [{ deflection: deg(1), power: 1 }] } as const;

interface Crank {
  readonly a: number;
  readonly b: number;
  readonly offset: number;
}

const declared = (crank: Crank, levelDeg: number, inAt: number, branch: number, aside = 0): Track => ({
  kind: "track",
  arm: mm(crank.a),
  armAt: deg(levelDeg),
  base: mm(inAt),
  rise: mm(crank.offset),
  aside: mm(aside),
  trackAt: deg(branch > 0 ? 180 : 0),
  travel: mm(400),
  rod: mm(crank.b),
  cam: straight,
});

describe("a track against the slider-crank reference", () => {
  const solved = reference.cases.flatMap((one) =>
    (one.solutions ?? []).map((solution) => ({ ...one, solution })),
  );

  it.each(solved)(
    "$a $b $offset at $theta_deg, branch $solution.branch: place to 1e-9 mm, rate to 1e-9",
    (one) => {
      const { slider_x: sliderMm, branch, dx_dtheta_mm_per_rad: rate } = one.solution;
      const inAt = sliderMm + branch * reach;
      const levelDeg = one.theta_deg + 4;
      const { extension, ratioAt, deflectionAt, rodsAt } = made(declared(one, levelDeg, inAt, branch));
      const rotation = deg(levelDeg - one.theta_deg);
      expect(inAt - branch * (extension?.extensionAt(rotation) ?? Number.NaN)).toBeCloseTo(sliderMm, 9);
      expect(deflectionAt(rotation)).toBeCloseTo(reach, 9);
      // Both the way out on branch +1 and the sense of theta are turned round: there the rates agree in sign.
      const perRad = ((ratioAt(rotation) ?? Number.NaN) * 180) / Math.PI;
      if (Math.abs(rate) < 1e-9) expect(perRad).toBeCloseTo(0, 9);
      else expect(relative(branch * perRad, rate)).toBeLessThan(1e-9);
      const pressure = (one.solution.pressure_angle_deg * Math.PI) / 180;
      expect(rodsAt(rotation)?.[0]?.sineAtHorn).toBeCloseTo(Math.cos(pressure), 9);
    },
  );

  it("ends where the reference says that the rod no longer reaches", () => {
    const limited = reference.cases.find((one) => !one.assembles);
    const limit = reference.limits.find((one) => !one.full_rotation)?.limit_theta_deg_lower ?? Number.NaN;
    if (limited === undefined) throw new Error("fixture");
    const { range, extension } = made(declared(limited, -30, 60, 1));
    expect(range.high.kind).toBe("cannotAssemble");
    expect(-30 - range.high.rotation).toBeCloseTo(limit, 9);
    expect(extension?.extensionAt(deg(-30 - limited.theta_deg))).toBeUndefined();
    expect(drive(declared(limited, limited.theta_deg, 60, 1))).toMatchObject({ kind: "cannotAssemble" });
  });

  it.each(reference.limits.filter((one) => one.full_rotation))(
    "turns back at the ends of the stroke of $a $b $offset",
    (one) => {
      const inAt = (one.x_max ?? 0) + 1;
      const { range } = made(declared(one, 90, inAt, 1));
      expect([range.low.kind, range.high.kind]).toEqual(["turnsBack", "turnsBack"]);
      expect(90 - range.high.rotation).toBeCloseTo(one.theta_at_x_max_deg ?? Number.NaN, 6);
      expect(inAt - range.high.deflection).toBeCloseTo(one.x_max ?? Number.NaN, 9);
      expect(inAt - range.low.deflection).toBeCloseTo(one.x_min ?? Number.NaN, 9);
    },
  );

  it.each(reference.spatial)("$id: a track aside from the crank's plane", (one) => {
    const [, offset = 0, aside = 0] = one.track_point;
    const crank = { a: one.crank.radius, b: one.rod, offset };
    for (const row of one.rows) {
      for (const solution of row.solutions) {
        const inAt = solution.slider_s + solution.branch * reach;
        const levelDeg = row.servo_deg + 9;
        const { extension, ratioAt } = made(declared(crank, levelDeg, inAt, solution.branch, aside));
        const rotation = deg(9);
        const sliderMm = inAt - solution.branch * (extension?.extensionAt(rotation) ?? Number.NaN);
        expect(sliderMm).toBeCloseTo(solution.slider_s, 9);
        const perRad = (solution.branch * (ratioAt(rotation) ?? Number.NaN) * 180) / Math.PI;
        expect(relative(perRad, solution.ds_dtheta_mm_per_rad)).toBeLessThan(1e-9);
      }
    }
  });
});

describe("a track's own ends and problems", () => {
  const track: Track = {
    kind: "track",
    arm: mm(34),
    armAt: deg(122),
    base: mm(38),
    rise: mm(30),
    trackAt: deg(-6),
    travel: mm(34.2),
    cam: {
      kind: "table",
      points: [
        [mm(0), deg(0)],
        [mm(12), deg(4)],
        [mm(24), deg(17)],
        [mm(36), deg(37)],
      ],
    },
  };

  it("level stands fully in, and the range ends at the ends of the track", () => {
    const { range, extension, rotationAt } = made(track);
    expect(range.low).toMatchObject({ rotation: 0, deflection: 0, kind: "trackEnd" });
    expect(range.high.kind).toBe("trackEnd");
    expect(extension?.extensionAt(range.high.rotation)).toBeCloseTo(34.2, 8);
    expect(extension?.extensionAt(deg(range.high.rotation + 0.01))).toBeUndefined();
    expect(extension?.rotationAt(mm(34.2))).toBeCloseTo(range.high.rotation, 7);
    expect(extension?.rotationAt(mm(34.3))).toBeUndefined();
    expect(rotationAt(deg(-1))).toBeUndefined();
  });

  it("extension and rotation are each other's inverse, and the table is kept exactly", () => {
    const { extension, deflectionAt, rotationAt } = made(track);
    for (const [out, deflection] of [
      [12, 4],
      [24, 17],
    ] as const) {
      const rotation = extension?.rotationAt(mm(out)) ?? deg(-1);
      expect(extension?.extensionAt(rotation)).toBeCloseTo(out, 10);
      expect(deflectionAt(rotation)).toBeCloseTo(deflection, 9);
      expect(rotationAt(deg(deflection))).toBeCloseTo(rotation, 9);
    }
  });

  it.each([
    { kind: "powers", length: mm(34), terms: [{ deflection: deg(37), power: 2 }] },
    { kind: "powers", length: mm(34), terms: [{ deflection: deg(-37), power: 1.5 }] },
    {
      kind: "table",
      points: [
        [mm(0), deg(0)],
        [mm(12), deg(1)],
        [mm(36), deg(37)],
      ],
    },
  ] as const)("a cam that begins level has no lever there, and one from there on: %#", (cam) => {
    const { ratioAt, rodsAt, drawingAt } = made({ ...track, cam });
    expect(ratioAt(deg(0))).toBeCloseTo(0, 12);
    expect(rodsAt(deg(0))).toBeUndefined();
    expect(drawingAt(deg(0))).toBeDefined();
    const [rod] = rodsAt(deg(20)) ?? [];
    expect((rod?.shaftLever ?? 0) / (rod?.surfaceLever ?? 1)).toBeCloseTo(ratioAt(deg(20)) ?? Number.NaN, 12);
    const behind = made({
      kind: "chain",
      links: [
        { kind: "torqueRod", sense: "same" },
        { ...track, cam },
      ],
    });
    expect(behind.rodsAt(deg(0))).toBeUndefined();
    expect(behind.rodsAt(deg(20))).toEqual(rodsAt(deg(20)));
  });

  it("the carriage is drawn on its track, one rod away from the arm's pin", () => {
    const { drawingAt, extension } = made({ ...track, aside: mm(5) });
    const rods = [0, 15, 40].map((rotation) => {
      const points = drawingAt(deg(rotation))?.points;
      const out = (points?.carriage ?? []).map((x, i) => x - (points?.trackIn?.[i] ?? 0));
      expect(Math.hypot(...out)).toBeCloseTo(extension?.extensionAt(deg(rotation)) ?? Number.NaN, 9);
      return Math.hypot(...(points?.armPin ?? []).map((x, i) => x - (points?.carriage?.[i] ?? 0)));
    });
    for (const rod of rods) expect(rod).toBeCloseTo(rods[0] ?? 0, 9);
  });

  it.each([
    [
      { ...track, travel: mm(40) },
      { kind: "camTooShort", camMm: 36, travelMm: 40 },
    ],
    [
      { ...track, rod: mm(1) },
      { kind: "cannotAssemble", rodMm: 1 },
    ],
    [{ ...track, rod: mm(50) }, { kind: "offTrackAtLevel" }],
    [
      { ...track, arm: mm(0) },
      { kind: "notALength", name: "arm" },
    ],
    [
      {
        ...track,
        cam: {
          kind: "table",
          points: [
            [mm(0), deg(0)],
            [mm(20), deg(9)],
            [mm(36), deg(8)],
          ],
        },
      },
      { kind: "camNotMonotone", extensionMm: 36 },
    ],
    [
      {
        ...track,
        cam: {
          kind: "powers",
          length: mm(34),
          terms: [
            { deflection: deg(9), power: 1 },
            { deflection: deg(-6), power: 2 },
          ],
        },
      },
      { kind: "camNotMonotone" },
    ],
    [
      { ...track, cam: { kind: "powers", length: mm(34), terms: [{ deflection: deg(9), power: 0.5 }] } },
      { kind: "camNotMonotone", extensionMm: 0 },
    ],
  ] as const)("problem %#: named with its numbers", (spec, problem) => {
    expect(drive(spec as Track)).toMatchObject(problem);
  });
});

describe("the scale twin's track flap", () => {
  // A demo model's geometry and readings (trade notes, section 5 iii), simulated there with 0.15 to 0.25 degrees of
  // scatter: pulse, extension, deflection; gain 0.0915 and -0.0921 degrees a microsecond.
  const flap = (
    arm: number,
    armAt: number,
    pivotAft: number,
    pivotUp: number,
    inLean: number,
    rods: [number, number],
  ): Chain => ({
    kind: "chain",
    links: [
      {
        kind: "pushrod",
        arm: mm(arm),
        armAt: deg(armAt),
        base: mm(pivotAft),
        rise: mm(pivotUp),
        horn: mm(19),
        hornAt: deg(90 + inLean),
        rod: mm(rods[0]),
      },
      {
        kind: "track",
        arm: mm(34),
        armAt: deg(88 + inLean),
        base: mm(156 - pivotAft),
        rise: mm(10 - pivotUp),
        trackAt: deg(-6),
        travel: mm(34.2),
        rod: mm(rods[1]),
        cam: {
          kind: "powers",
          length: mm(34),
          terms: [
            { deflection: deg(34 * 0.12), power: 1 },
            { deflection: deg(34 * 0.88), power: 2.3 },
          ],
        },
      },
    ],
  });
  const left = flap(17, 130, 118, -20, 34, [119.6, 56]);
  const right = flap(16.8, 131, 118.4, -20.2, 34.5, [119.9, 55.9]);

  it.each([
    [
      "left",
      left,
      0.0915,
      [
        [1128, -0.1, -0.3],
        [1240, 4.4, 0.9],
        [1370, 10.3, 3.1],
        [1500, 16.1, 7.2],
        [1628, 22.5, 14.6],
        [1750, 28.3, 22.7],
        [1868, 33.6, 33.7],
      ],
    ],
    [
      "right",
      right,
      -0.0921,
      [
        [1876, 0.0, -0.4],
        [1765, 4.3, 0.5],
        [1638, 9.8, 2.8],
        [1510, 15.7, 7.1],
        [1384, 21.8, 13.2],
        [1262, 27.7, 22.1],
        [1144, 32.9, 32.0],
      ],
    ],
  ] as const)("%s: meets its readings to within three times their scatter", (_, spec, gain, readings) => {
    const { deflectionAt, extension } = made(spec);
    const levelUs = readings[0][0];
    for (const [pulseUs, outMm, deflectionDeg] of readings) {
      const rotation = deg((pulseUs - levelUs) * gain);
      expect(Math.abs((extension?.extensionAt(rotation) ?? Number.NaN) - outMm)).toBeLessThan(0.75);
      expect(Math.abs((deflectionAt(rotation) ?? Number.NaN) - deflectionDeg)).toBeLessThan(0.75);
    }
  });

  it("the wanted extensions lie at the pulses that the trade's table gives, to 4 microseconds", () => {
    const { extension } = made(left);
    for (const [outMm, pulseUs] of [
      [0.5, 1143.7],
      [12, 1408.4],
      [18, 1538.9],
      [31.5, 1820.4],
    ] as const) {
      const rotation = extension?.rotationAt(mm(outMm)) ?? Number.NaN;
      expect(Math.abs(1130 + rotation / 0.0915 - pulseUs)).toBeLessThan(4);
    }
  });

  it("its bell-crank stands in one place in the drawing of both links", () => {
    const points = made(left).drawingAt(deg(30))?.points;
    expect(points?.["link2.shaft"]).toEqual(points?.["link1.hinge"]);
    expect(points?.["link2.trackIn"]?.[0]).toBeCloseTo(156, 9);
    expect(points?.["link2.trackIn"]?.[2]).toBeCloseTo(10, 9);
  });
});
