import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dimensionsOf } from "../../../packages/core/src/linkage/dimensions.ts";
import type { Pushrod } from "../../../packages/core/src/linkage/linkage.ts";
import {
  type FitProblem,
  fitLinkage,
  type LinkageFit,
} from "../../../packages/core/src/response/fit-linkage.ts";
import { seededRandom } from "../../../packages/core/src/uncertainty/random.ts";
import { deg, mm, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { made } from "../linkage/made.ts";
import { demoLinkages, towFlap } from "./demo-linkages.ts";
import { demoDoubts, demoReadings } from "./demo-readings.ts";
import { readBench } from "./synthetic-readings.ts";

const doubtDeg = demoDoubts.deflectionDeg;

function fitted(result: LinkageFit | FitProblem): LinkageFit {
  if ("kind" in result) throw new Error(JSON.stringify(result));
  return result;
}

/** Bent enough that scale and zeros are well told apart. */
const flap: Pushrod = {
  kind: "pushrod",
  arm: mm(10),
  horn: mm(17),
  base: mm(88),
  rise: mm(-16),
  armAt: deg(-74),
  hornAt: deg(-40),
};
const rotationsDeg = [-10, 0, 8, 16, 25, 34, 43, 52];

describe("fitLinkage", () => {
  it("gives back gain and zeros of readings without scatter", () => {
    const bench = fc.record({
      degPerUs: evenly(0.07, 0.12),
      sense: fc.constantFrom(-1, 1),
      rotationZeroDeg: evenly(-1, 1),
      deflectionZeroDeg: evenly(-1, 1),
    });
    fc.assert(
      fc.property(bench, ({ degPerUs, sense, ...zeros }) => {
        const truth = { levelUs: 1500, degPerUs: degPerUs * sense, ...zeros };
        const fit = fitted(
          fitLinkage(flap, readBench(flap, { ...truth, rotationsDeg }), 1e-4, { levelUs: 1500 }),
        );
        expect(fit.degPerUs.value / truth.degPerUs).toBeCloseTo(1, 6);
        expect(fit.rotationZeroDeg.value).toBeCloseTo(zeros.rotationZeroDeg, 4);
        expect(fit.deflectionZeroDeg.value).toBeCloseTo(zeros.deflectionZeroDeg, 4);
        expect(fit.largestDeg).toBeLessThan(1e-5);
        expect(fit.response.rising).toBe(sense > 0);
      }),
      { numRuns: 25 },
    );
  });

  it("agrees with the readings of every invented model, whether the servo's rotation is known or not", () => {
    for (const { table, linkage, levelUs, degPerUs, statedDegPerUs } of demoLinkages) {
      const points = demoReadings(table);
      for (const start of [{ levelUs }, { levelUs, degPerUs: statedDegPerUs }]) {
        const fit = fitted(fitLinkage(linkage, points, doubtDeg, start));
        expect(fit.agreement.agrees, table).toBe(true);
        expect(fit.rmsDeg, table).toBeLessThan(doubtDeg);
        // The simulation's own rotation, within two standard doubts and the four places it is stated to.
        expect(Math.abs(fit.degPerUs.value - degPerUs)).toBeLessThan(2 * fit.degPerUs.doubt + 5e-5);
      }
    }
  });

  it("places the tow plane's flap where its model does", () => {
    // Pulses of the invented model for its wanted deflections; readings and model are each good to about 0.1 degrees.
    const fit = fitted(
      fitLinkage(towFlap, demoReadings("tow plane, left flap"), doubtDeg, { levelUs: 1859 }),
    );
    const wanted = [
      [0, 1858.9],
      [6, 1795.6],
      [14, 1697.7],
      [42, 1235.4],
    ] as const;
    for (const [deflection, pulse] of wanted) {
      expect(Math.abs((fit.response.deflectionAt(us(pulse)) ?? 99) - deflection)).toBeLessThan(0.2);
    }
  });

  it("covers the hull of the readings and no more", () => {
    const points = demoReadings("tow plane, left flap");
    const { response, cut } = fitted(fitLinkage(towFlap, points, doubtDeg, { levelUs: 1859 }));
    expect(response.pulses).toEqual([1172, 1880]);
    expect(cut).toEqual({});
    expect(response.deflectionAt(us(1171.9))).toBeUndefined();
  });

  it("states each reading's miss as what was read minus what the response gives", () => {
    const points = demoReadings("tow plane, right flap");
    const demo = demoLinkages.find(({ table }) => table === "tow plane, right flap");
    const fit = fitted(fitLinkage(demo?.linkage ?? towFlap, points, doubtDeg, { levelUs: 1154 }));
    expect(fit.residuals.map(({ pulseUs }) => pulseUs)).toEqual(points.map(({ pulseUs }) => pulseUs));
    for (const { pulseUs, deflectionDeg, missDeg } of fit.residuals) {
      const given = fit.response.deflectionAt(us(pulseUs)) ?? Number.NaN;
      expect(missDeg).toBeCloseTo(deflectionDeg - given, 9);
    }
    expect(fit.largestDeg).toBe(Math.max(...fit.residuals.map(({ missDeg }) => Math.abs(missDeg))));
  });

  it("states doubts that hold: two out of three fits lie within one, nineteen of twenty within two", () => {
    const random = seededRandom(7);
    const truth = { levelUs: 1500, degPerUs: 0.091 };
    const scores = Array.from({ length: 200 }, () => {
      const points = readBench(flap, { ...truth, rotationsDeg, scatterDeg: 0.15, random });
      const fit = fitted(fitLinkage(flap, points, 0.15, { levelUs: 1500 }));
      return Math.abs(fit.degPerUs.value - truth.degPerUs) / fit.degPerUs.doubt;
    });
    const within = (limit: number) => scores.filter((score) => score < limit).length / scores.length;
    expect(within(1)).toBeGreaterThan(0.6);
    expect(within(1)).toBeLessThan(0.78);
    expect(within(2)).toBeGreaterThan(0.91);
  });

  it("fits one dimension as well where it is set free, and needs a reading more for it", () => {
    const [arm] = dimensionsOf(flap);
    const points = readBench({ ...flap, arm: mm(11) }, { levelUs: 1500, degPerUs: 0.09, rotationsDeg });
    const start = { levelUs: 1500, degPerUs: 0.09 };
    const fit = fitted(fitLinkage(flap, points, 0.01, start, arm));
    expect(fit.free?.value).toBeCloseTo(11, 1);
    expect(fit.largestDeg).toBeLessThan(0.01);
    expect(fit.agreement.agrees).toBe(true);
    expect(fitted(fitLinkage(flap, points, 0.01, start)).agreement.agrees).toBe(false);
    expect(fitLinkage(flap, points.slice(0, 4), 0.01, start, arm)).toMatchObject({
      kind: "tooFewReadings",
      needed: 5,
    });
  });

  it("fits a straight drive, whose two zeros no reading can tell apart", () => {
    const points = [1100, 1300, 1500, 1700, 1900].map((pulseUs) => ({
      pulseUs,
      deflectionDeg: 0.09 * (pulseUs - 1510),
    }));
    const fit = fitted(fitLinkage({ kind: "torqueRod", sense: "same" }, points, 0.2, { levelUs: 1500 }));
    expect(fit.degPerUs.value).toBeCloseTo(0.09, 9);
    expect(fit.response.pulseAt(deg(0))).toBeCloseTo(1510, 1);
    expect(fit.rotationZeroDeg.doubt).toBeGreaterThan(3);
  });

  it("gives the same bits twice", () => {
    const points = demoReadings("sailplane, left flap");
    const demo = demoLinkages.find(({ table }) => table === "sailplane, left flap");
    const once = () =>
      JSON.stringify(fitLinkage(demo?.linkage ?? towFlap, points, doubtDeg, { levelUs: 1893 }));
    expect(once()).toBe(once());
  });

  it("needs readings at more pulses than it fits values", () => {
    const points = demoReadings("tow plane, left flap").slice(0, 3);
    expect(fitLinkage(towFlap, [...points, ...points], doubtDeg, { levelUs: 1859 })).toEqual({
      kind: "tooFewReadings",
      pulses: 3,
      needed: 4,
    });
  });

  it("says that the shaft turns the other way, in numbers", () => {
    const points = demoReadings("tow plane, left flap");
    const result = fitLinkage(towFlap, points, doubtDeg, { levelUs: 1859, degPerUs: 0.09 });
    expect(result).toMatchObject({ kind: "turnsOtherWay", degPerUs: 0.09 });
    expect("readDegPerUs" in result && result.readDegPerUs).toBeLessThan(-0.08);
  });

  it("says that a reading stands beyond a dead centre of the declared dimensions", () => {
    // An arm of 20 in place of 12 reaches the horn's dead centre inside the travel that was read.
    const rotations = [-40, -25, -10, 0, 10, 25, 40];
    const real: Pushrod = { ...flap, arm: mm(12), horn: mm(13), hornAt: deg(-80), armAt: deg(-90) };
    const declared = { ...real, arm: mm(20) };
    const points = readBench(real, { levelUs: 1500, degPerUs: 0.09, rotationsDeg: rotations });
    const result = fitLinkage(declared, points, doubtDeg, { levelUs: 1500, degPerUs: 0.09 });
    expect(result).toMatchObject({ kind: "readingOutOfReach", end: { kind: "deadCentreHorn" } });
    if (!("kind" in result) || result.kind !== "readingOutOfReach") throw new Error("no problem");
    expect(points[result.index]).toEqual({ pulseUs: result.pulseUs, deflectionDeg: result.deflectionDeg });
    expect(Math.abs(result.rotationDeg)).toBeGreaterThan(Math.abs(result.end.rotation));
  });

  it("says so too where a smaller scale would squeeze the reading inside", () => {
    const declared: Pushrod = { ...flap, arm: mm(12), horn: mm(13), hornAt: deg(-80), armAt: deg(-90) };
    const end = made(declared).range.high;
    const rotations = [-30, -15, 0, 15, 30, 1.08 * end.rotation];
    const points = rotations.map((rotation) => ({
      pulseUs: 1500 + rotation / 0.09,
      deflectionDeg: made(declared).deflectionAt(deg(rotation / 1.09)) ?? Number.NaN,
    }));
    const result = fitLinkage(declared, points, doubtDeg, { levelUs: 1500, degPerUs: 0.09 });
    expect(result).toMatchObject({ kind: "readingOutOfReach", index: 5, end: { rotation: end.rotation } });
    expect("rotationDeg" in result && result.rotationDeg).toBeCloseTo(1.08 * end.rotation, 9);
    // A servo whose rotation is not so well known leaves room for it.
    const loose = { levelUs: 1500, degPerUs: 0.09, degPerUsDoubt: 0.1 };
    expect(fitted(fitLinkage(declared, points, doubtDeg, loose)).agreement.agrees).toBe(true);
  });

  it("answers any readings of any linkage with finite numbers or a problem", () => {
    const linkage = fc
      .record({
        arm: evenly(5, 40),
        horn: evenly(5, 40),
        base: evenly(-50, 120),
        rise: evenly(-40, 40),
        armAt: evenly(-180, 180),
        hornAt: evenly(-180, 180),
      })
      .map(
        ({ arm, horn, base, rise, armAt, hornAt }): Pushrod => ({
          kind: "pushrod",
          arm: mm(arm),
          horn: mm(horn),
          base: mm(base),
          rise: mm(rise),
          armAt: deg(armAt),
          hornAt: deg(hornAt),
        }),
      );
    const point = fc.record({ pulseUs: evenly(800, 2200), deflectionDeg: evenly(-60, 60) });
    const points = fc.array(point, { minLength: 3, maxLength: 8 });
    const degPerUs = fc.constantFrom({}, { degPerUs: 0.09 }, { degPerUs: -0.09 });
    fc.assert(
      fc.property(linkage, points, degPerUs, (any, read, known) => {
        const start = { levelUs: 1500, ...known };
        const [arm] = dimensionsOf(any);
        for (const free of [undefined, arm]) {
          const text = JSON.stringify(fitLinkage(any, read, doubtDeg, start, free));
          // JSON writes NaN and infinities as null.
          expect(text).not.toContain("null");
        }
      }),
      { numRuns: 40 },
    );
  });

  it("cuts the response short at the end of a track that a reading passes by less than its doubt", () => {
    const demo = demoLinkages.find(({ table }) => table === "twin, left flap");
    if (demo === undefined) throw new Error("no demo");
    const points = [...demoReadings("twin, left flap"), { pulseUs: 1090, deflectionDeg: -0.2 }];
    const fit = fitted(fitLinkage(demo.linkage, points, doubtDeg, { levelUs: demo.levelUs }));
    expect(fit.cut.low?.end.kind).toBe("trackEnd");
    expect(fit.response.pulses[0]).toBeGreaterThan(1090);
    expect(fit.response.pulses[0]).toBe(fit.cut.low?.pulse);
  });

  it("hands on what is wrong with the linkage itself", () => {
    const result = fitLinkage({ ...flap, rod: mm(5) }, demoReadings("tow plane, left flap"), doubtDeg, {
      levelUs: 1859,
    });
    expect(result).toMatchObject({ kind: "linkage", problem: { kind: "cannotAssemble" } });
  });
});
