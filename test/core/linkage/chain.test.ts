import { describe, expect, it } from "vitest";
import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type { Cables, Chain, Pushrod } from "../../../packages/core/src/linkage/linkage.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import { made } from "./made.ts";

const first: Pushrod = {
  kind: "pushrod",
  arm: mm(12),
  horn: mm(15),
  base: mm(80),
  rise: mm(4),
  armAt: deg(95),
  hornAt: deg(88),
};
const second: Pushrod = { ...first, arm: mm(14), horn: mm(11), base: mm(50), rise: mm(-6), armAt: deg(80) };
const chain: Chain = { kind: "chain", links: [first, second] };
const inner = [-40, -15, 0, 10, 35];

describe("a chain", () => {
  it("is each link's deflection handed to the next as rotation, and the product of their ratios", () => {
    const [a, b, whole] = [made(first), made(second), made(chain)];
    for (const rotation of inner) {
      const between = a.deflectionAt(deg(rotation)) ?? deg(999);
      expect(whole.deflectionAt(deg(rotation))).toBe(b.deflectionAt(between));
      const product = (a.ratioAt(deg(rotation)) ?? 0) * (b.ratioAt(between) ?? 0);
      expect(whole.ratioAt(deg(rotation))).toBeCloseTo(product, 12);
    }
  });

  it("finds the rotation again through all its links", () => {
    const whole = made({ kind: "chain", links: [chain, first, { kind: "torqueRod", sense: "opposite" }] });
    for (const rotation of inner) {
      const deflection = whole.deflectionAt(deg(rotation)) ?? deg(999);
      expect(whole.rotationAt(deflection)).toBeCloseTo(rotation, 9);
      expect(whole.rotationsAt(deflection).some((found) => Math.abs(found - rotation) < 1e-8)).toBe(true);
    }
  });

  it("does the same work at the hinge as at the shaft through every rod", () => {
    // Virtual work: torque = moment * ratio; the first rod's force times its lever about the shaft is that torque.
    const whole = made(chain);
    for (const rotation of inner) {
      const rods = whole.rodsAt(deg(rotation)) ?? [];
      expect(rods).toHaveLength(2);
      const torque = (rods[0]?.shaftLever ?? 0) / (rods[0]?.surfaceLever ?? 1);
      expect(torque).toBeCloseTo(whole.ratioAt(deg(rotation)) ?? Number.NaN, 10);
    }
  });

  it("where a later link turns back, the rods before it have no lever; without rods before it, its own are all", () => {
    const end = made(first).range.high;
    expect(end.kind).toBe("turnsBack");
    const ahead = (link: Pushrod | { readonly kind: "torqueRod"; readonly sense: "same" }) =>
      made({ kind: "chain", links: [link, first] });
    expect(ahead({ kind: "torqueRod", sense: "same" }).rodsAt(end.rotation)).toEqual(
      made(first).rodsAt(end.rotation),
    );
    const whole = ahead({ ...second, horn: mm(7) });
    expect(whole.range.high.kind).toBe("turnsBack");
    const ratio = Math.abs(whole.ratioAt(whole.range.high.rotation) ?? 0);
    // Rounding may leave a ratio of 1e-17 where there is none: then the lever is beyond all measure, and no force.
    const lever = whole.rodsAt(whole.range.high.rotation)?.[0]?.surfaceLever ?? Number.POSITIVE_INFINITY;
    expect(ratio).toBeLessThan(1e-7);
    expect(Math.abs(lever)).toBeGreaterThan(1e6);
  });

  it("ends where the first of its links ends, with that end's kind and rotation", () => {
    const [a, b, whole] = [made(first), made(second), made(chain)];
    for (const side of ["low", "high"] as const) {
      const end = whole.range[side];
      const between = a.deflectionAt(end.rotation) ?? deg(999);
      const own = Math.abs(end.rotation - a.range[side].rotation) < 1e-9;
      const later = Math.abs(between - b.range[side].rotation) < 1e-9;
      expect(own || later).toBe(true);
      expect(end.kind).toBe((own ? a : b).range[side].kind);
      // At a dead centre 1e-15 of the rotation is 1e-7 of the deflection.
      expect(whole.deflectionAt(end.rotation)).toBeCloseTo(end.deflection, 5);
    }
  });

  it("an opposed torque rod ahead exchanges the ends", () => {
    const turned = made({ kind: "chain", links: [{ kind: "torqueRod", sense: "opposite" }, first] }).range;
    const plain = made(first).range;
    expect(turned.low.rotation).toBeCloseTo(-plain.high.rotation, 9);
    expect(turned.high.kind).toBe(plain.low.kind);
  });

  it("names the link that has a problem, and a chain of nothing", () => {
    expect(drive({ kind: "chain", links: [first, { ...second, rod: mm(5) }] })).toMatchObject({
      kind: "link",
      index: 1,
      problem: { kind: "cannotAssemble", rodMm: 5 },
    });
    expect(drive({ kind: "chain", links: [] })).toEqual({ kind: "noLinks" });
  });

  it("names the link that is turned out of its own reach at level", () => {
    // A rod 9 mm too short turns the first horn far over at level; the short-rod link behind ends before that.
    const shifted = { ...first, rod: mm(70) };
    const shortRange: Pushrod = { ...first, arm: mm(30), horn: mm(8) };
    expect(drive({ kind: "chain", links: [shifted, shortRange] })).toMatchObject({
      kind: "linkOutOfReach",
      index: 1,
    });
  });
});

describe("a torque rod", () => {
  it("turns the surface degree for degree, with or against the shaft", () => {
    const same = made({ kind: "torqueRod", sense: "same" });
    const opposite = made({ kind: "torqueRod", sense: "opposite" });
    for (const rotation of [-30, 0, 12.5]) {
      expect(same.deflectionAt(deg(rotation))).toBe(rotation);
      expect(opposite.deflectionAt(deg(rotation))).toBeCloseTo(-rotation, 15);
      expect(opposite.rotationAt(opposite.deflectionAt(deg(rotation)) ?? deg(99))).toBe(rotation);
    }
    expect([same.ratioAt(deg(3)), opposite.ratioAt(deg(3))]).toEqual([1, -1]);
    expect(same.rotationAt(deg(181))).toBeUndefined();
  });
});

describe("pull-pull cables", () => {
  const cables: Cables = { kind: "cables", arm: mm(15), horn: mm(15), base: mm(300) };

  it("come back to level from a deflection that is there but for rounding, of either sign", () => {
    for (const horn of [9, 11, 13.7, 15, 18.3])
      for (const hornAft of [-2, 0, 1.3]) {
        const { deflectionAt, rotationAt } = made({ ...cables, horn: mm(horn), hornAft: mm(hornAft) });
        const wanted = [deflectionAt(deg(0)) ?? deg(999), deg(1e-17), deg(-1e-17), deg(3e-15), deg(-3e-15)];
        for (const level of wanted) expect(rotationAt(level)).toBeCloseTo(0, 12);
      }
  });
  const distances = (spec: Cables, rotation: number) => {
    const points = made(spec).drawingAt(deg(rotation))?.points ?? {};
    const between = (a = "", b = "") =>
      Math.hypot(...(points[a] ?? []).map((x, i) => x - (points[b]?.[i] ?? Number.NaN)));
    return [between("armPin", "hornPin"), between("otherArmPin", "otherHornPin")] as const;
  };

  it("equal arms without setback turn the surface degree for degree and stay taut", () => {
    for (const rotation of [-40, -5, 0, 20, 60]) {
      expect(made(cables).deflectionAt(deg(rotation))).toBeCloseTo(rotation, 9);
      expect(made(cables).slackAt?.(deg(rotation))).toBeCloseTo(0, 9);
    }
  });

  it.each([
    ["horn pins behind the hinge", { ...cables, hornAft: mm(4) }],
    ["a shorter horn", { ...cables, horn: mm(11) }],
    ["crossed", { ...cables, crossed: true, horn: mm(13) }],
  ] as const)(
    "%s: the pulling cable keeps its length, the other's slack is what its pins come nearer",
    (_, spec) => {
      const [taut] = distances(spec, 0);
      for (const rotation of [-35, -10, 15, 30]) {
        const [one, other] = distances(spec, rotation);
        const [pulling, hanging] = rotation > 0 ? [one, other] : [other, one];
        expect(pulling).toBeCloseTo(taut, 9);
        expect(made(spec).slackAt?.(deg(rotation))).toBeCloseTo(taut - hanging, 9);
      }
    },
  );

  it("pins set behind the hinge at the horn alone bind, ahead of it they go slack", () => {
    const slack = (hornAft: number) => made({ ...cables, hornAft: mm(hornAft) }).slackAt?.(deg(30)) ?? 0;
    expect(Math.sign(slack(4))).toBe(-Math.sign(slack(-4)));
    expect(Math.abs(slack(4))).toBeGreaterThan(0.1);
  });

  it("mirror themselves about level, forward, inverse, ratio and range", () => {
    const { deflectionAt, rotationAt, rotationsAt, ratioAt, range } = made({
      ...cables,
      horn: mm(11),
      hornAft: mm(2),
    });
    for (const rotation of [5, 20, 35]) {
      const deflection = deflectionAt(deg(rotation)) ?? deg(999);
      expect(deflectionAt(deg(-rotation))).toBeCloseTo(-deflection, 12);
      expect(rotationAt(deflection)).toBeCloseTo(rotation, 9);
      expect(rotationAt(deg(-deflection))).toBeCloseTo(-rotation, 9);
      expect(rotationsAt(deg(-deflection)).some((found) => Math.abs(found + rotation) < 1e-9)).toBe(true);
      expect(ratioAt(deg(-rotation))).toBe(ratioAt(deg(rotation)));
    }
    expect(range.low.rotation).toBe(-range.high.rotation);
  });

  it("crossed cables turn the surface against the shaft", () => {
    const { deflectionAt, rotationAt } = made({ ...cables, crossed: true });
    const deflection = deflectionAt(deg(10)) ?? deg(999);
    expect(deflection).toBeLessThan(-5);
    expect(rotationAt(deflection)).toBeCloseTo(10, 9);
  });
});
