import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dimensionsOf } from "../../../packages/core/src/linkage/dimensions.ts";
import { type Drive, isLinkageProblem } from "../../../packages/core/src/linkage/drive.ts";
import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type { Linkage } from "../../../packages/core/src/linkage/linkage.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import { point } from "./made.ts";

// Whole numbers and right angles on purpose: there rods stand in line, cams begin level and terms cancel.
const lengthMm = (min: number, max: number) => fc.integer({ min, max }).map(mm);
const angle = fc
  .oneof(fc.integer({ min: -180, max: 180 }), fc.constantFrom(0, 30, 45, 60, 90, 120, 180, -90))
  .map(deg);
const optional = { noNullPrototype: true };

const pushrods = fc.record(
  {
    kind: fc.constant("pushrod" as const),
    arm: lengthMm(0, 20),
    horn: lengthMm(1, 20),
    base: lengthMm(0, 100),
    rise: lengthMm(-20, 20),
    armAt: angle,
    hornAt: angle,
    rod: lengthMm(1, 120),
  },
  { ...optional, requiredKeys: ["kind", "arm", "horn", "base", "rise", "armAt", "hornAt"] },
);

const axis = fc.constantFrom(
  point(0, 1, 0),
  point(0, 0, 1),
  point(1, 0, 0),
  point(0, -2, 0),
  point(0.3, 1, 0.1),
);
const place = fc
  .tuple(
    fc.integer({ min: -20, max: 80 }),
    fc.integer({ min: -15, max: 15 }),
    fc.integer({ min: -15, max: 15 }),
  )
  .map(([aft, starboard, up]) => point(aft, starboard, up));
const ballRods = fc.record({
  kind: fc.constant("ballRod" as const),
  shaft: axis.map((along) => ({ through: point(0, 0, 0), along })),
  armBall: place,
  hinge: fc.record({ through: place, along: axis }),
  hornBall: place,
});

const bentRods = fc.record({
  kind: fc.constant("bentRod" as const),
  bend: fc.oneof(fc.constantFrom(30, 45, 60, 90), fc.integer({ min: 0, max: 90 })).map(deg),
  skew: fc.oneof(fc.constantFrom(-30, -45, -60, -90, 30), fc.integer({ min: -90, max: 90 })).map(deg),
  tipTo: fc.constantFrom("port" as const, "starboard" as const),
});

const powers = fc.record({
  kind: fc.constant("powers" as const),
  length: fc.constantFrom(0, 20, 30).map(mm),
  terms: fc.array(
    fc.record({
      deflection: fc.integer({ min: -40, max: 40 }).map(deg),
      power: fc.constantFrom(1, 1.5, 2, 3, 2.3, 20),
    }),
    { maxLength: 2 },
  ),
});
const table = fc.record({
  kind: fc.constant("table" as const),
  points: fc
    .tuple(
      fc.constantFrom(0, 0, 2),
      fc.constantFrom(1, 8, 15),
      fc.constantFrom(20, 30),
      fc.integer({ min: 5, max: 30 }),
    )
    .map(([from, half, whole, travel]) => [
      [mm(from), deg(0)] as const,
      [mm(from + travel / 2), deg(half)] as const,
      [mm(from + travel), deg(whole)] as const,
    ]),
});
const tracks = fc.record({
  kind: fc.constant("track" as const),
  arm: lengthMm(5, 25),
  armAt: angle,
  base: lengthMm(10, 90),
  rise: lengthMm(-10, 10),
  aside: lengthMm(0, 10),
  trackAt: fc.constantFrom(0, -6, 90, 180).map(deg),
  travel: lengthMm(5, 30),
  cam: fc.oneof(powers, table),
});

const cables = fc.record({
  kind: fc.constant("cables" as const),
  arm: lengthMm(1, 20),
  horn: lengthMm(1, 20),
  base: lengthMm(1, 200),
  armAft: lengthMm(-5, 5),
  hornAft: lengthMm(-5, 5),
  crossed: fc.boolean(),
});

const torqueRods = fc.record({
  kind: fc.constant("torqueRod" as const),
  sense: fc.constantFrom("same" as const, "opposite" as const),
});

const links = fc.oneof(pushrods, ballRods, bentRods, tracks, cables, torqueRods);
const chains = fc.record({ kind: fc.constant("chain" as const), links: fc.array(links, { maxLength: 3 }) });
const linkages: fc.Arbitrary<Linkage> = fc.oneof(
  { arbitrary: links, weight: 3 },
  { arbitrary: chains, weight: 1 },
);

const askedAt = ({ range: { low, high } }: Drive, part: number) =>
  [0, -180, 180, 500, low.rotation, high.rotation, low.rotation + part * (high.rotation - low.rotation)].map(
    deg,
  );

/** Everything that a drive says, at its ends, in between and far outside. */
const saidBy = (whole: Drive, part: number) =>
  askedAt(whole, part).map((rotation) => {
    const deflection = whole.deflectionAt(rotation);
    const extension = whole.extension?.extensionAt(rotation);
    return {
      deflection,
      extension,
      ratio: whole.ratioAt(rotation),
      rods: whole.rodsAt(rotation),
      drawing: whole.drawingAt(rotation),
      slack: whole.slackAt?.(rotation),
      back: deflection && whole.rotationAt(deflection),
      ways: deflection && whole.rotationsAt(deflection),
      backFromTrack: extension && whole.extension?.rotationAt(extension),
    };
  });

describe("any linkage at all, built well or not", () => {
  it("is a drive or a problem, and a drive says what is finite or nothing, and throws nothing", () => {
    fc.assert(
      fc.property(linkages, fc.double({ min: 0, max: 1, noNaN: true }), (linkage, part) => {
        const whole = drive(linkage);
        const said = isLinkageProblem(whole) ? whole : [whole.range, ...saidBy(whole, part)];
        // JSON has null for NaN and for what is infinite.
        expect(JSON.stringify(said)).not.toContain("null");
      }),
      { numRuns: 1500 },
    );
  });

  it("has the way back to every deflection inside its range", () => {
    fc.assert(
      fc.property(linkages, fc.double({ min: 0.02, max: 0.98, noNaN: true }), (linkage, part) => {
        const whole = drive(linkage);
        fc.pre(!isLinkageProblem(whole));
        const { low, high } = whole.range;
        // A carriage at its stop that would have to go further in either way does not move at all.
        fc.pre(Math.abs(high.deflection - low.deflection) > 1e-3);
        const deflection = whole.deflectionAt(deg(low.rotation + part * (high.rotation - low.rotation)));
        const back = deflection === undefined ? undefined : whole.rotationAt(deflection);
        expect(back).toBeDefined();
        expect(Math.abs((whole.deflectionAt(back ?? deg(0)) ?? 999) - (deflection ?? -999))).toBeLessThan(
          1e-5,
        );
      }),
      { numRuns: 1000 },
    );
  });

  it("has dimensions that another value changes", () => {
    fc.assert(
      fc.property(linkages, (linkage) => {
        for (const { path, value, with: other } of dimensionsOf(linkage)) {
          expect(JSON.stringify(other(value + 1)), path.join()).not.toBe(JSON.stringify(linkage));
        }
      }),
      { numRuns: 300 },
    );
  });
});
