import {
  airDensity,
  bucklingForce,
  coefficientsPerDeg,
  type Drive,
  deg,
  degPerUs,
  drive,
  dynamicPressurePa,
  expandTo,
  explainMisfit,
  fitLinkage,
  freePlayAngle,
  hingeMoment,
  isLinearValid,
  isLinkageProblem,
  type Linkage,
  limitSpeed,
  linearise,
  mm,
  mps,
  newtons,
  nm,
  noseClearance,
  type Pushrod,
  propagate,
  responseFromLinkage,
  responseFromReadings,
  rodForce,
  rodShift,
  seededRandom,
  servoLoad,
  simulate,
  slotGapAt,
  trackForce,
  trackTorque,
  trueDeflection,
  us,
} from "@hingeline/core";
import { describe, expect, it } from "vitest";
import fourBar from "../fixtures/linkage/four-bar.json" with { type: "json" };

// What a user of the library does without a model and a plan, through the package's own entry. Numbers come from
// four-bar.json (40-digit solutions), from the sources named, or from a line of arithmetic beside the check.

const offset: Pushrod = {
  kind: "pushrod",
  arm: mm(11),
  horn: mm(16),
  base: mm(55),
  rise: mm(-8),
  armAt: deg(100),
  hornAt: deg(75),
};
/** The same linkage in the reference, its angles anticlockwise. */
const rows = (fourBar.sweeps.find(({ id }) => id === "sweep-offset")?.rows ?? []).flatMap((row) =>
  row.deflection_deg === undefined
    ? []
    : [{ rotationDeg: -row.servo_deg, deflectionDeg: -row.deflection_deg, ratio: row.ratio_ddefl_dservo }],
);

function made(linkage: Linkage): Drive {
  const result = drive(linkage);
  if (isLinkageProblem(result)) throw new Error(result.kind);
  return result;
}

describe("a linkage by itself", () => {
  it("goes from rotation to deflection and ratio, and back, as the reference does", () => {
    const { deflectionAt, ratioAt, rotationAt, range } = made(offset);
    expect(rows.length).toBeGreaterThan(15);
    for (const { rotationDeg, deflectionDeg, ratio } of rows) {
      expect(deflectionAt(deg(rotationDeg))).toBeCloseTo(deflectionDeg, 9);
      expect(ratioAt(deg(rotationDeg))).toBeCloseTo(ratio ?? NaN, 9);
      const isInside = rotationDeg > range.low.rotation && rotationDeg < range.high.rotation;
      if (isInside) expect(rotationAt(deg(deflectionDeg))).toBeCloseTo(rotationDeg, 9);
    }
  });

  it("is a problem with numbers where it cannot be put together", () => {
    expect(drive({ ...offset, rod: mm(20) })).toMatchObject({ kind: "cannotAssemble", rodMm: 20 });
  });

  it("says where a nose meets its cove, and how wide a slot stands", () => {
    // 5 mm ahead of the hinge and level with it: a turn draws it back, to both sides. Above the hinge it comes forward.
    expect(noseClearance([mm(-5), mm(0)], mm(1)).contact).toEqual({});
    const { gapAt, contact } = noseClearance([mm(-3), mm(4)], mm(1));
    // -3 cos d + 4 sin d = -4: d = -16.26 degrees, 2 atan(1/7).
    expect(contact.up).toBeCloseTo((-2 * Math.atan(1 / 7) * 180) / Math.PI, 9);
    expect(gapAt(deg(90))).toBeCloseTo(8, 9);
    // The nose, 3-4-5 from the lip, less its radius.
    expect(slotGapAt({ lip: [mm(-6), mm(8)], nose: [mm(-3), mm(4)], radius: mm(2) }, deg(0))).toBeCloseTo(
      3,
      12,
    );
  });
});

describe("a response by itself", () => {
  const setting = { level: us(1500), rotation: degPerUs(0.09), pulses: [us(900), us(2100)] } as const;
  const readings = rows
    .filter(({ rotationDeg }) => Math.abs(rotationDeg) <= 40)
    .map(({ rotationDeg, deflectionDeg }) => ({ pulseUs: 1500 + rotationDeg / 0.09, deflectionDeg }));

  it("from a linkage: the pulse of each deflection of the reference", () => {
    const made30 = responseFromLinkage(made(offset), setting);
    const row = rows.find(({ rotationDeg }) => rotationDeg === 30);
    expect(made30?.response.pulseAt(deg(row?.deflectionDeg ?? NaN))).toBeCloseTo(1500 + 30 / 0.09, 6);
    expect(made30?.cut.low ?? made30?.cut.high).toBeUndefined();
  });

  it("from readings: the readings themselves, nothing beyond, and no curve through one", () => {
    const doubts = { pulseUs: 2, deflectionDeg: 0.2 };
    const { response, problems } = responseFromReadings(readings, doubts);
    expect(problems).toEqual([]);
    for (const { pulseUs, deflectionDeg } of readings)
      expect(response?.pulseAt(deg(deflectionDeg))).toBeCloseTo(pulseUs, 9);
    expect(response?.deflectionAt(us(900))).toBeUndefined();
    expect(responseFromReadings(readings.slice(0, 1), doubts).problems).toMatchObject([{ kind: "tooFew" }]);
  });

  it("from both: gives the servo's rotation back, and finds the hole that was counted wrong", () => {
    const start = { levelUs: 1500, degPerUs: 0.09 };
    const fit = fitLinkage(offset, readings, 0.1, start);
    if ("kind" in fit) throw new Error(fit.kind);
    expect(fit.degPerUs.value).toBeCloseTo(0.09, 6);
    expect(fit.agreement.agrees).toBe(true);
    const misfit = explainMisfit({ ...offset, horn: mm(13) }, readings, 0.01, start);
    const horn = misfit?.explanations.find(({ path }) => path[0] === "horn");
    expect(horn?.fitted).toBeCloseTo(16, 1);
  });
});

describe("a load by itself", () => {
  it("from airspeed to share of torque and back to a speed", () => {
    // 1.2 kg/m3 at 20 m/s: 240 Pa. On 0.5 m by 0.06 m: 240 * 0.5 * 0.0036 * (0.0125 a degree * 20 degrees) = 0.108 N m.
    const moment = hingeMoment(
      { span: mm(500), chord: mm(60) },
      coefficientsPerDeg(-0.0055, -0.0125),
      dynamicPressurePa(mps(20), 1.2),
      { incidence: deg(0), deflection: deg(20) },
    );
    expect(moment).toBeCloseTo(0.108, 12);
    // Through a ratio of 0.75 0.081 N m, a fifth of 0.405; half of it at 20 sqrt(0.5 / 0.2) m/s.
    const load = servoLoad(moment, 0.75, { torque: nm(0.405) });
    expect(load?.share).toBeCloseTo(0.2, 12);
    expect(limitSpeed(mps(20), load?.share ?? NaN)).toBeCloseTo(20 * Math.sqrt(2.5), 9);
    // 0.108 N m at a lever of 12 mm.
    expect(rodForce(moment, mm(12))).toBeCloseTo(9, 9);
  });

  it("in the air of the standard atmosphere", () => {
    // ISO 2533:1975, table: 1.11166 kg/m3 at 1000 m.
    expect(airDensity({ heightM: 1000 })).toBeCloseTo(1.11166, 4);
  });

  it("on rod, track, hinge and meter", () => {
    // Euler: pi^3 E d^4 / (64 L^2) of 2 mm steel, 300 mm.
    const rod = { material: "steel", diameter: mm(2), length: mm(300) } as const;
    expect(bucklingForce(rod)).toBeCloseTo((Math.PI ** 3 * 200_000 * 16) / (64 * 300 ** 2), 9);
    // At 30 degrees half of 10 N, and friction of a tenth: 6 N; over 15 mm a radian 0.09 N m.
    const force = trackForce(newtons(10), deg(30), 0.1);
    expect(trackTorque(force, 15)).toBeCloseTo(0.09, 12);
    // A millimetre at 180/pi mm is a degree.
    expect(freePlayAngle({ chord: mm(180 / Math.PI) }, mm(1))).toBeCloseTo(1, 4);
    // 3.5e-6 a kelvin over 1100 mm and 30 K, on a horn of 19 mm: 0.1155 mm, 0.348 degrees.
    const growth = { structurePerK: 4e-6, rodPerK: 0.5e-6, length: mm(1100), hornRadius: mm(19) };
    expect(rodShift(growth, 30)).toBeCloseTo(0.3483, 4);
    // Half a right angle along a line of flight swept by 60 degrees: tan = 1/2.
    const shown = deg((Math.atan(0.5) * 180) / Math.PI);
    expect(trueDeflection({ meter: "alongFlight", sweep: deg(60) }, shown)).toMatchObject({
      kind: "angle",
      angle: expect.closeTo(45, 9),
    });
  });
});

describe("doubt by itself", () => {
  // R. L. Norton, Design of Machinery, example 4-1; the sensitivities of its output angle stand in four-bar.json.
  const norton = fourBar.cases.find(({ id }) => id === "norton-ex-4-1")?.solutions?.[0];
  const published =
    norton !== undefined && "sensitivity_of_theta4" in norton ? norton.sensitivity_of_theta4 : undefined;
  const deflectionOf = ([arm = 0, rod = 0, horn = 0, base = 0]: readonly number[]) =>
    made({
      kind: "pushrod",
      arm: mm(arm),
      rod: mm(rod),
      horn: mm(horn),
      base: mm(base),
      rise: mm(0),
      armAt: deg(40),
      hornAt: deg(60),
    }).deflectionAt(deg(0));
  const inputs = [
    { name: "arm", value: 40, standard: 0.1 },
    { name: "rod", value: 120, standard: 0.2 },
    { name: "horn", value: 80, standard: 0.1 },
    { name: "base", value: 100, standard: 0.3 },
  ];
  const contributions = linearise(deflectionOf, inputs) ?? [];

  it("of a deflection, from the lengths of its linkage", () => {
    // Deflection runs against the reference's angle.
    const { per_mm_a_deg, per_mm_b_deg, per_mm_c_deg, per_mm_d_deg } = published ?? {};
    const expected = [per_mm_a_deg, per_mm_b_deg, per_mm_c_deg, per_mm_d_deg];
    expect(contributions.map(({ sensitivity }) => sensitivity)).toEqual(
      expected.map((perMm) => expect.closeTo(-(perMm ?? NaN), 7)),
    );
    expect(propagate(contributions).budget[0]?.name).toBe("base");
  });

  it("is what drawing the lengths by chance shows, and a straight line will do", () => {
    const { standard } = propagate(contributions);
    const simulated = simulate(
      (random) =>
        deflectionOf(inputs.map(({ value, standard: u }) => value + u * Math.sqrt(12) * (random() - 0.5))),
      { seed: 1, trials: 5000 },
    );
    if (simulated === undefined) throw new Error("too few trials");
    expect(simulated.failed).toBe(0);
    expect(simulated.standard / standard).toBeCloseTo(1, 1);
    // Four rectangular causes, one of which is the largest: 95 of 100 lie within somewhat less than two standard doubts.
    const linear = { value: simulated.mean, expanded: 1.9 * standard };
    expect(isLinearValid(linear, simulated)).toBe(true);
    expect(isLinearValid({ ...linear, expanded: 1.5 * standard }, simulated)).toBe(false);
  });

  it("expanded by Student's t, and drawn from a generator that keeps its promise", () => {
    // JCGM 100:2008, table G.2: 2.23 for 10 degrees of freedom at 95 percent.
    expect(expandTo(0.95, { standard: 1, dof: 10 }).k).toBeCloseTo(2.23, 2);
    const [one, other] = [seededRandom(7), seededRandom(7)];
    expect([one(), one()]).toEqual([other(), other()]);
  });
});
