import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ballRodFromRule } from "../../../packages/core/src/linkage/ball-rod-from-rule.ts";
import { type Drive, isLinkageProblem } from "../../../packages/core/src/linkage/drive.ts";
import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type { Linkage, Pushrod } from "../../../packages/core/src/linkage/linkage.ts";
import { linkageDoubt } from "../../../packages/core/src/response/linkage-doubt.ts";
import { linearise } from "../../../packages/core/src/uncertainty/linearise.ts";
import { propagate } from "../../../packages/core/src/uncertainty/propagate.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { aileronRod as pushrod } from "../../support/never-read.ts";

const rule = { mm: 0.5, deg: 1 };
const line = { levelUs: 1500, degPerUs: 0.09, rotationZeroDeg: 0, deflectionZeroDeg: 0 };

function made(linkage: Linkage): Drive {
  const found = drive(linkage);
  if (isLinkageProblem(found)) throw new Error(`no drive: ${found.kind}`);
  return found;
}
const doubtOf = (linkage: Linkage, degPerUs = 0.09) =>
  linkageDoubt(linkage, made(linkage), { ...line, degPerUs }, rule);
const standardOf = (linkage: Linkage, pulseUs: number) =>
  propagate(doubtOf(linkage).causesAt(pulseUs)).standard;

const pushrods = fc
  .record({
    arm: evenly(8, 16),
    horn: evenly(12, 24),
    base: evenly(50, 120),
    rise: evenly(-8, 8),
    armAt: evenly(-105, -75),
    hornAt: evenly(-105, -75),
  })
  .map(
    (own): Pushrod => ({
      kind: "pushrod",
      arm: mm(own.arm),
      horn: mm(own.horn),
      base: mm(own.base),
      rise: mm(own.rise),
      armAt: deg(own.armAt),
      hornAt: deg(own.hornAt),
    }),
  );
const ballRod = ballRodFromRule({
  aft: mm(90),
  up: mm(-6),
  starboard: mm(7),
  arm: mm(12),
  armAt: deg(-98),
  horn: mm(18),
  hornAt: deg(-84),
  hingeSweep: deg(4),
});
const bentRod: Linkage = { kind: "bentRod", bend: deg(50), tipTo: "port" };
const cables: Linkage = { kind: "cables", arm: mm(14), horn: mm(16), base: mm(300), hornAft: mm(3) };
const kinds: Readonly<Record<string, Linkage>> = {
  pushrod,
  "pushrod with a rod that does not quite fit": { ...pushrod, rod: mm(63.2) },
  ballRod,
  bentRod,
  cables,
  chain: { kind: "chain", links: [pushrod, ballRod] },
};

describe("linkageDoubt", () => {
  it.each(Object.entries(kinds))("is nothing at the pulse where level was set, for a %s", (_, linkage) => {
    const causes = doubtOf(linkage).causesAt(1500);
    expect(causes.map(({ name }) => name)).toContain("rotation");
    for (const { sensitivity } of causes) expect(sensitivity).toBeCloseTo(0, 9);
  });

  it("grows away from level to either side", () => {
    fc.assert(
      fc.property(
        pushrods,
        fc.constantFrom(-1, 1),
        evenly(20, 150),
        evenly(20, 100),
        (own, way, from, more) => {
          const near = standardOf(own, 1500 + way * from);
          expect(near).toBeGreaterThan(0);
          expect(standardOf(own, 1500 + way * (from + more))).toBeGreaterThan(near);
        },
      ),
      { numRuns: 40 },
    );
  });

  // The same by another way: every input changed in the response made anew.
  it.each(Object.entries(kinds))(
    "has the sensitivities of the response made anew, for a %s",
    (_, linkage) => {
      const { inputs, causesAt, responseWith } = doubtOf(linkage);
      for (const pulseUs of [1320, 1440, 1590, 1700]) {
        const found = causesAt(pulseUs);
        const expected = linearise((values) => responseWith(values)(pulseUs), inputs) ?? [];
        expect(found.map(({ name }) => name)).toEqual(expected.map(({ name }) => name));
        expected.forEach(({ sensitivity }, index) => {
          expect(found[index]?.sensitivity).toBeCloseTo(sensitivity, 4);
        });
      }
    },
  );

  // Source: any textbook of geometry: a tip bent by b, its wire turned by t, stands at atan(tan b sin t); differentiated by hand.
  it("is what a bent rod has in closed form", () => {
    const [bendRad, turnRad] = [(50 * Math.PI) / 180, (18 * Math.PI) / 180];
    const across = Math.tan(bendRad) * Math.sin(turnRad);
    const byBend = Math.sin(turnRad) / Math.cos(bendRad) ** 2 / (1 + across ** 2);
    const byTurn = (Math.tan(bendRad) * Math.cos(turnRad)) / (1 + across ** 2);
    const causes = doubtOf(bentRod).causesAt(1700);
    const of = (name: string) => causes.find((one) => one.name === name);
    expect(of("bend")?.sensitivity).toBeCloseTo(byBend, 6);
    expect(of("bend")?.standard).toBeCloseTo(1 / Math.sqrt(3), 12);
    const { standard = 0, sensitivity = 0 } = of("rotation") ?? {};
    expect(standard * sensitivity).toBeCloseTo(byTurn * 0.02 * 18, 6);
  });

  it("is two percent of the deflection where the shaft is the surface's own", () => {
    const torqueRod: Linkage = { kind: "torqueRod", sense: "same" };
    fc.assert(
      fc.property(evenly(-300, 300), evenly(0.05, 0.12), fc.boolean(), (spanUs, size, reversed) => {
        const { causesAt } = doubtOf(torqueRod, reversed ? -size : size);
        const { standard } = propagate(causesAt(1500 + spanUs));
        expect(standard).toBeCloseTo(0.02 * Math.abs(size * spanUs), 9);
      }),
    );
  });

  // Arm 12 -> 12.5 mm moved a position of -18 deg by 0.7 deg, rotation 0.094 -> 0.099 by 0.9: two models compiled beside each other.
  it("foretells what a wrong arm and a wrong rotation do", () => {
    const { inputs, causesAt, responseWith } = doubtOf(pushrod);
    const values = inputs.map(({ value }) => value);
    const own = responseWith(values)(1250) ?? 0;
    for (const [name, by] of [
      ["arm", 0.5],
      ["rotation", 0.09 * 0.02],
    ] as const) {
      const at = inputs.findIndex((one) => one.name === name);
      const other = responseWith(values.with(at, (values[at] ?? 0) + by))(1250) ?? 0;
      const sensitivity = causesAt(1250)[at]?.sensitivity ?? 0;
      expect(Math.abs(other - own)).toBeGreaterThan(0.3);
      expect(other - own).toBeCloseTo(sensitivity * by, 1);
    }
  });

  it("uses the one side that reaches where a carriage stands at its stop at level", () => {
    const armRad = (100 * Math.PI) / 180;
    const track: Linkage = {
      kind: "track",
      arm: mm(20),
      armAt: deg(100),
      base: mm(90),
      rise: mm(0),
      rod: mm(Math.hypot(90 - 20 * Math.cos(armRad), 20 * Math.sin(armRad))),
      trackAt: deg(0),
      travel: mm(15),
      cam: { kind: "powers", length: mm(15), terms: [{ deflection: deg(30), power: 1 }] },
    };
    const causes = doubtOf(track).causesAt(1600);
    for (const { sensitivity } of causes) expect(Number.isFinite(sensitivity)).toBe(true);
    expect(Math.abs(causes.find(({ name }) => name === "arm")?.sensitivity ?? 0)).toBeGreaterThan(0.1);
  });

  it("has no response where the linkage cannot be as asked", () => {
    const { inputs, responseWith } = doubtOf(pushrod);
    const gone = inputs.map(({ name, value }) => (name === "arm" ? -1 : value));
    expect(responseWith(gone)(1500)).toBeUndefined();
  });
});
