import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  ballRodFromRule,
  type RuleMeasurements,
} from "../../../packages/core/src/linkage/ball-rod-from-rule.ts";
import { dimensionsOf } from "../../../packages/core/src/linkage/dimensions.ts";
import type { BallRod, Linkage, Pushrod, Track } from "../../../packages/core/src/linkage/linkage.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { made } from "./made.ts";

const pushrod: Pushrod = {
  kind: "pushrod",
  arm: mm(12),
  horn: mm(15),
  base: mm(80),
  rise: mm(4),
  armAt: deg(95),
  hornAt: deg(88),
};
const track: Track = {
  kind: "track",
  arm: mm(17),
  armAt: deg(130),
  base: mm(100),
  rise: mm(10),
  trackAt: deg(-6),
  travel: mm(20),
  cam: { kind: "powers", length: mm(20), terms: [{ deflection: deg(25), power: 1 }] },
};

const rule = fc
  .record({
    aft: evenly(60, 120),
    up: evenly(-15, 15),
    starboard: evenly(-15, 15),
    arm: evenly(8, 16),
    armAt: evenly(-120, -60),
    shaft: fc.constantFrom("across" as const, "upright" as const),
    horn: evenly(12, 22),
    hornAt: evenly(-120, -60),
    hingeSweep: evenly(-15, 15),
    hingeTilt: evenly(-15, 15),
  })
  .map(
    (r): RuleMeasurements => ({
      ...r,
      aft: mm(r.aft),
      up: mm(r.up),
      starboard: mm(r.starboard),
      arm: mm(r.arm),
      armAt: deg(r.armAt),
      horn: mm(r.horn),
      hornAt: deg(r.hornAt),
      hingeSweep: deg(r.hingeSweep),
      hingeTilt: deg(r.hingeTilt),
    }),
  );

const pathsOf = (linkage: Linkage) => dimensionsOf(linkage).map(({ path }) => path.join("."));

const find = (linkage: Linkage, path: string) => {
  const found = dimensionsOf(linkage).find((dimension) => dimension.path.join(".") === path);
  if (found === undefined) throw new Error(path);
  return found;
};

describe("dimensionsOf", () => {
  it("names the lengths and angles that are declared, a rod only where it is given", () => {
    expect(pathsOf(pushrod)).toEqual(["arm", "horn", "base", "rise", "armAt", "hornAt"]);
    expect(pathsOf({ ...pushrod, rod: mm(80) })).toContain("rod");
    expect(pathsOf(track)).toEqual(["arm", "base", "rise", "armAt", "trackAt"]);
    expect(pathsOf({ kind: "torqueRod", sense: "same" })).toEqual([]);
    expect(pathsOf({ kind: "bentRod", bend: deg(40), tipTo: "port", skew: deg(3) })).toEqual([
      "bend",
      "skew",
    ]);
    expect(pathsOf({ kind: "cables", arm: mm(20), horn: mm(18), base: mm(300) })).toEqual([
      "arm",
      "horn",
      "base",
    ]);
  });

  it("exchanges one value and leaves the rest", () => {
    expect(find(pushrod, "horn").with(17)).toEqual({ ...pushrod, horn: 17 });
    expect(find(pushrod, "armAt")).toMatchObject({ unit: "deg", value: 95 });
  });

  it("addresses the links of chains within chains", () => {
    const chain: Linkage = { kind: "chain", links: [pushrod, { kind: "chain", links: [pushrod, track] }] };
    const other = find(chain, "links.1.links.1.trackAt").with(-4);
    expect(other).toEqual({
      kind: "chain",
      links: [pushrod, { kind: "chain", links: [pushrod, { ...track, trackAt: -4 }] }],
    });
  });

  it("reads a ball-ended rod as the rule did, and changes it as the rule would", () => {
    const names = ["arm", "horn", "aft", "up", "armAt", "hornAt"] as const;
    fc.assert(
      fc.property(rule, fc.constantFrom(...names), evenly(-3, 3), (measured, name, change) => {
        const dimension = find(ballRodFromRule(measured), name);
        expect(dimension.value).toBeCloseTo(measured[name], 9);
        const changed = dimension.with(measured[name] + change) as BallRod;
        const remeasured = ballRodFromRule({ ...measured, [name]: measured[name] + change });
        for (const part of ["armBall", "hornBall"] as const) {
          for (const i of [0, 1, 2] as const) expect(changed[part][i]).toBeCloseTo(remeasured[part][i], 9);
        }
        for (const rotation of [-10, 0, 10]) {
          const [a, b] = [made(changed), made(remeasured)].map((drive) => drive.deflectionAt(deg(rotation)));
          expect(a).toBeCloseTo(b ?? 999, 8);
        }
      }),
    );
  });

  it("reads the angles the same where an axis is declared the other way round", () => {
    const one = ballRodFromRule({
      aft: mm(90),
      up: mm(4),
      starboard: mm(8),
      arm: mm(12),
      armAt: deg(75),
      horn: mm(15),
      hornAt: deg(-80),
      shaft: "upright",
    });
    const [aft, starboard, up] = one.shaft.along;
    const turned: BallRod = { ...one, shaft: { ...one.shaft, along: [mm(-aft), mm(-starboard), mm(-up)] } };
    expect(find(turned, "armAt").value).toBeCloseTo(75, 9);
    const [a, b] = [find(one, "armAt").with(70) as BallRod, find(turned, "armAt").with(70) as BallRod];
    for (const i of [0, 1, 2] as const) expect(b.armBall[i]).toBeCloseTo(a.armBall[i], 9);
  });

  it("leaves out the angle about an axis that runs aft, and what a ball on its axis would have", () => {
    const rod: BallRod = {
      kind: "ballRod",
      shaft: { through: [mm(0), mm(0), mm(0)], along: [mm(1), mm(0), mm(0)] },
      armBall: [mm(0), mm(0), mm(12)],
      hinge: { through: [mm(60), mm(5), mm(0)], along: [mm(0), mm(1), mm(0)] },
      hornBall: [mm(60), mm(5), mm(14)],
    };
    expect(pathsOf(rod)).toEqual(["arm", "horn", "aft", "up", "hornAt"]);
    expect(pathsOf({ ...rod, armBall: [mm(4), mm(0), mm(0)] })).toEqual(["horn", "aft", "up", "hornAt"]);
  });
});
