import { describe, expect, it } from "vitest";
import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type { Pushrod } from "../../../packages/core/src/linkage/linkage.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import fourBar from "../../fixtures/linkage/four-bar.json" with { type: "json" };
import { apart, made, relative } from "./made.ts";

// four-bar.json: 40-digit solutions, circle intersection and tangent-half-angle form; sources stand in each case.
// Its angles run anticlockwise from aft: theta2 = armAt - rotation, theta4 = hornAt - deflection.

interface Bars {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

const radians = (angleDeg: number) => (angleDeg * Math.PI) / 180;

/** From the arm's pin at theta2 to the hinge: distance and direction, degrees. */
function toHinge({ a, d }: Bars, theta2Deg: number) {
  const aft = d - a * Math.cos(radians(theta2Deg));
  const up = -a * Math.sin(radians(theta2Deg));
  return { distance: Math.hypot(aft, up), direction: (Math.atan2(up, aft) * 180) / Math.PI };
}

/** Declared with the arm at theta2 and the horn square to the line pin to hinge, on the side of the orientation. */
function declared(bars: Bars, theta2Deg: number, orientation: number): Pushrod {
  return {
    kind: "pushrod",
    arm: mm(bars.a),
    horn: mm(bars.c),
    base: mm(bars.d),
    rise: mm(0),
    armAt: deg(theta2Deg),
    hornAt: deg(toHinge(bars, theta2Deg).direction + orientation * 90),
    rod: mm(bars.b),
  };
}

const assemblesAt = (bars: Bars, theta2Deg: number) => {
  const { distance } = toHinge(bars, theta2Deg);
  return distance < bars.b + bars.c && distance > Math.abs(bars.b - bars.c);
};

/** A level position beside the one asked for, so that it is the linkage that must find it. */
function levelBeside(bars: Bars, theta2Deg: number): number {
  for (const aside of [7, -7, 3, -3]) if (assemblesAt(bars, theta2Deg + aside)) return theta2Deg + aside;
  throw new Error("no level position near");
}

describe("a pushrod against the four-bar reference", () => {
  const solved = fourBar.cases.flatMap((one) =>
    (one.solutions ?? []).map((solution) => ({ ...one, solution })),
  );

  it.each(solved)("$id $solution.branch: deflection to 1e-9 degrees, ratio to 1e-9", (one) => {
    const levelDeg = levelBeside(one, one.theta2_deg);
    const spec = declared(one, levelDeg, one.solution.orientation);
    const { deflectionAt, ratioAt } = made(spec);
    const rotation = deg(levelDeg - one.theta2_deg);
    const theta4Deg = spec.hornAt - (deflectionAt(rotation) ?? Number.NaN);
    // Near a dead centre the output goes as the square root of what is left to it, so the rounding of theta2 itself
    // (1e-14 degrees) grows: at 1e-6 degrees some 1e4 times, at 1e-9 degrees 3e5 times, which is past 1e-9 degrees.
    const beside = Number(one.offset_from_toggle_deg ?? 1);
    expect(apart(theta4Deg, one.solution.theta4_deg)).toBeLessThan(beside < 1e-8 ? 1e-7 : 1e-9);
    if (beside > 1e-2) expect(relative(ratioAt(rotation), one.solution.dtheta4_dtheta2)).toBeLessThan(1e-9);
  });

  it.each(fourBar.cases.filter((one) => !one.assembles))("$id: cannot be assembled, as a value", (one) => {
    const problem = drive(declared(one, one.theta2_deg, 1));
    expect(problem).toMatchObject({ kind: "cannotAssemble", rodMm: one.b });
    if (!("longestMm" in problem)) throw new Error("no bounds");
    const { distance } = toHinge(one, one.theta2_deg);
    expect(problem.shortestMm).toBeCloseTo(Math.abs(distance - one.c), 9);
    expect(problem.longestMm).toBeCloseTo(distance + one.c, 9);
  });

  it.each(fourBar.cases.filter((one) => "offset_beyond_toggle_deg" in one))(
    "$id: no deflection just beyond a dead centre reached from an assembled level",
    (one) => {
      const levelDeg = levelBeside(one, one.theta2_deg);
      const { deflectionAt, ratioAt } = made(declared(one, levelDeg, 1));
      expect(deflectionAt(deg(levelDeg - one.theta2_deg))).toBeUndefined();
      expect(ratioAt(deg(levelDeg - one.theta2_deg))).toBeUndefined();
    },
  );

  it.each(fourBar.limits)("ends of range of $a, $b, $c, $d are the listed limits", (one) => {
    const toggles = one.input_toggle_theta2_deg_plus_minus.flatMap((t) => [t.theta2_deg, -t.theta2_deg]);
    const limits = one.output_limit.flatMap((l) => [
      l,
      { theta2_deg: -l.theta2_deg, theta4_deg: -l.theta4_deg },
    ]);
    const met = new Set<number>();
    for (const orientation of [1, -1]) {
      for (let levelDeg = -175; levelDeg < 180; levelDeg += 10) {
        if (!assemblesAt(one, levelDeg)) continue;
        const spec = declared(one, levelDeg, orientation);
        const { low, high } = made(spec).range;
        for (const end of [low, high]) {
          const theta2Deg = levelDeg - end.rotation;
          if (end.kind === "deadCentreHorn") {
            const found = toggles.findIndex((toggle) => apart(toggle, theta2Deg) < 1e-9);
            expect(found).toBeGreaterThanOrEqual(0);
            met.add(found);
          } else if (end.kind === "turnsBack") {
            const theta4Deg = spec.hornAt - end.deflection;
            const found = limits.findIndex(
              (limit) =>
                apart(limit.theta2_deg, theta2Deg) < 1e-9 && apart(limit.theta4_deg, theta4Deg) < 1e-9,
            );
            expect(found).toBeGreaterThanOrEqual(0);
            met.add(toggles.length + found);
          }
        }
      }
    }
    expect(met.size).toBe(toggles.length + limits.length);
  });

  it.each(fourBar.sweeps)(
    "$id: deflection, ratio and both angles of the rod over the whole sweep",
    (sweep) => {
      const { deflectionAt, ratioAt, rodsAt } = made({
        kind: "pushrod",
        arm: mm(sweep.arm),
        horn: mm(sweep.horn),
        base: mm(sweep.hinge[0] ?? 0),
        rise: mm(sweep.hinge[1] ?? 0),
        armAt: deg(sweep.arm_neutral_abs_deg),
        hornAt: deg(sweep.horn_neutral_abs_deg),
      });
      for (const row of sweep.rows) {
        const rotation = deg(-row.servo_deg);
        if (row.deflection_deg === undefined) {
          expect(deflectionAt(rotation)).toBeUndefined();
          expect(rodsAt(rotation)).toBeUndefined();
          continue;
        }
        expect(deflectionAt(rotation)).toBeCloseTo(-row.deflection_deg, 9);
        expect(relative(ratioAt(rotation), row.ratio_ddefl_dservo)).toBeLessThan(1e-9);
        const rod = rodsAt(rotation)?.[0];
        expect(rod?.sineAtHorn).toBeCloseTo(Math.abs(Math.sin(radians(row.transmission_horn_deg))), 9);
        expect(rod?.sineAtArm).toBeCloseTo(Math.abs(Math.sin(radians(row.rod_to_arm_line_deg))), 9);
      }
    },
  );
});

describe("the sailplane's flap", () => {
  // A demo model's geometry and numbers (trade notes C12 and mistake 30): arm 12.5 at -38 degrees from straight down,
  // forward positive, horn hole (3, -11) from the hinge, shaft 66 ahead of and 3 below it.
  const flap = made({
    kind: "pushrod",
    arm: mm(12.5),
    armAt: deg(-90 + 38),
    base: mm(66),
    rise: mm(3),
    horn: mm(Math.hypot(3, 11)),
    hornAt: deg((Math.atan2(-11, 3) * 180) / Math.PI),
  });
  const rotationOf = (deflectionDeg: number) => flap.rotationAt(deg(deflectionDeg)) ?? deg(1e6);

  it.each([
    [0, 0.91],
    [50, 1.4],
    [65, 1.84],
  ])("at %d degrees the ratio is %d", (deflectionDeg, ratio) => {
    expect(flap.ratioAt(rotationOf(deflectionDeg))).toBeCloseTo(ratio, 2);
  });

  it.each([
    [50, 50],
    [65, 33],
  ])("at %d degrees the rod meets the horn at %d degrees", (deflectionDeg, meetingDeg) => {
    const sine = flap.rodsAt(rotationOf(deflectionDeg))?.[0]?.sineAtHorn ?? Number.NaN;
    expect(Math.abs((Math.asin(sine) * 180) / Math.PI - meetingDeg)).toBeLessThan(1);
  });

  it("ends at a dead centre of the horn, arm at 25 degrees, flap at about 90", () => {
    const { rotation, deflection, kind } = flap.range.high;
    expect(kind).toBe("deadCentreHorn");
    expect(Math.abs(rotation - 38 - 25)).toBeLessThan(1);
    expect(Math.abs(deflection - 90)).toBeLessThan(5);
  });
});

describe("a pushrod at its edges", () => {
  const parallel: Pushrod = {
    kind: "pushrod",
    arm: mm(15),
    horn: mm(15),
    base: mm(60),
    rise: mm(0),
    armAt: deg(90),
    hornAt: deg(90),
  };

  it("a parallelogram ends where all its bars lie in line, because two branches meet there", () => {
    const { low, high } = made(parallel).range;
    expect([low.kind, high.kind]).toEqual(["deadCentreHorn", "deadCentreHorn"]);
    expect(low.rotation).toBeCloseTo(-90, 4);
    expect(high.rotation).toBeCloseTo(90, 4);
    expect(made(parallel).ratioAt(deg(40))).toBeCloseTo(1, 12);
  });

  it("a horn in line with its rod at level is a problem, not a number", () => {
    expect(drive({ ...parallel, rise: mm(15), armAt: deg(90), hornAt: deg(0) })).toMatchObject({
      kind: "deadCentreAtLevel",
    });
  });

  it("a horn whose pin stands on the shaft at level is a problem: the arm turns and moves nothing", () => {
    const idle = {
      ...parallel,
      arm: mm(6),
      base: mm(0),
      rise: mm(-10),
      horn: mm(10),
      armAt: deg(180),
      hornAt: deg(90),
    };
    expect(drive(idle)).toEqual({ kind: "deadCentreAtLevel" });
    expect(
      Math.abs(made({ ...idle, armAt: deg(100), hornAt: deg(95) }).ratioAt(deg(0)) ?? 0),
    ).toBeGreaterThan(0.01);
  });

  it("a dead centre within two degrees of level, passed again at once, ends the range", () => {
    // By hand: level with the arm 0.49 degrees off the line to the hinge. There the pins are 44.27 - 37 mm apart, which is
    // less than rod less horn, 43.97 - 36.69 mm.
    const near = made({
      kind: "pushrod",
      arm: mm(Math.hypot(42, 14)),
      armAt: deg((Math.atan2(-14, 42) * 180) / Math.PI),
      base: mm(35),
      rise: mm(-12),
      horn: mm(Math.hypot(35, 11)),
      hornAt: deg((Math.atan2(11, -35) * 180) / Math.PI),
    });
    expect(near.range.high.kind).toBe("deadCentreHorn");
    expect(near.range.high.rotation).toBeGreaterThan(0);
    expect(near.range.high.rotation).toBeLessThan(0.5);
    expect(near.rotationAt(near.range.high.deflection)).toBeCloseTo(near.range.high.rotation, 6);
  });

  it("a length of zero or less is named", () => {
    expect(drive({ ...parallel, arm: mm(0) })).toEqual({ kind: "notALength", name: "arm", lengthMm: 0 });
    expect(drive({ ...parallel, rod: mm(-3) })).toEqual({ kind: "notALength", name: "rod", lengthMm: -3 });
  });

  it("an arm locked in line with its rod at level has its range on the side of positive rotation", () => {
    const locked = made({ ...parallel, rise: mm(-20), horn: mm(20), armAt: deg(0) });
    expect(locked.range.low).toMatchObject({ rotation: 0, kind: "turnsBack" });
    expect(locked.range.high.rotation).toBeGreaterThan(30);
    const up = locked.deflectionAt(deg(20)) ?? Number.NaN;
    expect(locked.rotationAt(deg(up))).toBeCloseTo(20, 9);
    expect(locked.rotationsAt(deg(up))).toHaveLength(2);
  });
});
