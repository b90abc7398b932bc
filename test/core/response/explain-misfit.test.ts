import { describe, expect, it } from "vitest";
import type { Chain, Pushrod } from "../../../packages/core/src/linkage/linkage.ts";
import { chiSquareLimit } from "../../../packages/core/src/response/chi-square-limit.ts";
import { explainMisfit } from "../../../packages/core/src/response/explain-misfit.ts";
import { seededRandom } from "../../../packages/core/src/uncertainty/random.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import { demoLinkages } from "./demo-linkages.ts";
import { demoDoubts, demoReadings } from "./demo-readings.ts";
import { normal, readBench } from "./synthetic-readings.ts";

const doubtDeg = demoDoubts.deflectionDeg;
const levelUs = 1500;

/** As declared: the arm's hole at 10 mm; the next holes are 2 mm apart. */
const declared: Pushrod = {
  kind: "pushrod",
  arm: mm(10),
  horn: mm(17),
  base: mm(88),
  rise: mm(-16),
  armAt: deg(-74),
  hornAt: deg(-60),
};

/** Readings with 0.15 degrees of scatter on a servo that turns within about 1 percent of what it should. */
function read(real: Pushrod, seed: number, rotationsDeg: readonly number[]) {
  const random = seededRandom(seed);
  const degPerUs = 0.09 * (1 + 0.01 * normal(random));
  const rotationZeroDeg = normal(random);
  return readBench(real, { levelUs, degPerUs, rotationZeroDeg, rotationsDeg, scatterDeg: 0.15, random });
}

const eight = [-38, -25, -15, -5, 5, 16, 28, 40];
const seven = [-36, -24, -12, 0, 12, 25, 38];
const servo = { levelUs, degPerUs: 0.09 };

describe("explainMisfit", () => {
  for (const [what, armMm] of [
    ["the wrong arm hole", 12],
    ["half the hole spacing too much", 11],
    ["half the hole spacing too little", 9],
  ] as const) {
    it(`names the arm where a linkage has ${what}, and its real length`, () => {
      for (const [seed, rotationsDeg] of [
        [1, eight],
        [2, seven],
        [3, eight],
      ] as const) {
        const points = read({ ...declared, arm: mm(armMm) }, seed, rotationsDeg);
        const misfit = explainMisfit(declared, points, doubtDeg, servo);
        const best = misfit?.explanations[0];
        expect(best).toMatchObject({ of: "linkage", path: ["arm"], unit: "mm", declared: 10 });
        expect(best?.agreement.agrees).toBe(true);
        expect(Math.abs((best?.fitted ?? 0) - armMm)).toBeLessThan(2.5 * (best?.doubt ?? 0));
        expect(best?.doubt).toBeLessThan(0.5);
      }
    });
  }

  it("names the horn as well, because a short horn and a long arm do nearly the same", () => {
    const points = read({ ...declared, arm: mm(12) }, 1, eight);
    const misfit = explainMisfit(declared, points, doubtDeg, servo);
    expect(misfit?.explanations.map(({ path }) => path)).toContainEqual(["horn"]);
    const sums = misfit?.explanations.map(({ agreement }) => agreement.chiSquare) ?? [];
    expect(sums).toEqual(sums.toSorted((a, b) => a - b));
    expect((sums.at(-1) ?? 99) - (sums[0] ?? 0)).toBeLessThan(4);
  });

  it("names the arm's angle where the arm sits a tooth of 15 degrees off", () => {
    const points = read({ ...declared, armAt: deg(-59) }, 4, eight.slice(0, -1));
    const misfit = explainMisfit(declared, points, doubtDeg, servo);
    expect(misfit?.explanations.map(({ path }) => path)).toContainEqual(["armAt"]);
  });

  it("names the servo where it turns a quarter more than declared", () => {
    const straight: Pushrod = { ...declared, rise: mm(0), armAt: deg(-90), hornAt: deg(-90) };
    const points = readBench(straight, { levelUs, degPerUs: 0.1125, rotationsDeg: seven });
    const misfit = explainMisfit(straight, points, doubtDeg, servo);
    const found = misfit?.explanations.find(({ of }) => of === "servo");
    expect(found).toMatchObject({ path: ["degPerUs"], unit: "degPerUs", declared: 0.09 });
    expect(found?.fitted).toBeCloseTo(0.1125, 2);
  });

  it("addresses a dimension inside a chain", () => {
    const bellcrank: Pushrod = { ...declared, arm: mm(15), horn: mm(15), armAt: deg(90), hornAt: deg(90) };
    const chain = (arm: number): Chain => ({
      kind: "chain",
      links: [bellcrank, { ...declared, arm: mm(arm) }],
    });
    const points = readBench(chain(12), { levelUs, degPerUs: 0.09, rotationsDeg: seven });
    const misfit = explainMisfit(chain(10), points, doubtDeg, servo);
    expect(misfit?.explanations.map(({ path }) => path)).toContainEqual(["links", 1, "arm"]);
  });

  it("names nothing where there are too few readings to tell a dimension, but says that they differ", () => {
    const points = read({ ...declared, arm: mm(12) }, 1, [-36, -12, 12, 38]);
    const misfit = explainMisfit(declared, points, doubtDeg, servo);
    expect(misfit).toMatchObject({ agreement: { agrees: false, dof: 2 }, explanations: [] });
  });

  it("says nothing where the shaft turns the other way", () => {
    const points = read(declared, 1, seven);
    expect(explainMisfit(declared, points, doubtDeg, { levelUs, degPerUs: -0.09 })).toBeUndefined();
  });

  it("says nothing of the true models at the doubt of their readings", () => {
    for (const { table, linkage, levelUs: level, statedDegPerUs } of demoLinkages) {
      const start = { levelUs: level, degPerUs: statedDegPerUs };
      expect(explainMisfit(linkage, demoReadings(table), doubtDeg, start), table).toBeUndefined();
    }
  });

  it("raises no alarm at more than 1 in 50 sound benches", () => {
    const alarms = Array.from({ length: 100 }, (_, i) => i + 100).filter((seed) => {
      const points = read(declared, seed, seven);
      return explainMisfit(declared, points, 0.15, servo) !== undefined;
    });
    expect(alarms.length).toBeLessThanOrEqual(2);
  });
});

describe("chiSquareLimit", () => {
  it("is the 99 percent point of the chi-square distribution to 1.5 percent", () => {
    // Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4 (values from memory).
    const table = [
      [1, 6.635],
      [2, 9.21],
      [5, 15.086],
      [10, 23.209],
      [20, 37.566],
    ] as const;
    for (const [dof, limit] of table) expect(Math.abs(chiSquareLimit(dof) / limit - 1)).toBeLessThan(0.015);
  });
});
