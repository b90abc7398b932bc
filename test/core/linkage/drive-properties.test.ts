import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Drive, isLinkageProblem } from "../../../packages/core/src/linkage/drive.ts";
import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type {
  BallRod,
  BentRod,
  Cables,
  Linkage,
  Point,
  Pushrod,
  Track,
} from "../../../packages/core/src/linkage/linkage.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import { made, point } from "./made.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const lengthMm = (min: number, max: number) => between(min, max).map(mm);
const angle = (min: number, max: number) => between(min, max).map(deg);

const pushrods: fc.Arbitrary<Pushrod> = fc.record({
  kind: fc.constant("pushrod" as const),
  arm: lengthMm(6, 25),
  horn: lengthMm(8, 30),
  base: lengthMm(40, 300),
  rise: lengthMm(-20, 20),
  armAt: angle(50, 130),
  hornAt: fc.oneof(angle(50, 130), angle(-130, -50)),
});

const steps = (size: number): fc.Arbitrary<Point> =>
  fc
    .tuple(between(-size, size), between(-size, size), between(-size, size))
    .map(([x, y, z]) => point(x, y, z));

const ballRods: fc.Arbitrary<BallRod> = fc
  .record({
    shaft: steps(0.3),
    hinge: steps(0.3),
    arm: steps(4),
    horn: steps(4),
    base: between(40, 200),
    upright: fc.boolean(),
  })
  .map(({ shaft, hinge, arm, horn, base, upright }) => ({
    kind: "ballRod",
    shaft: {
      through: point(0, 0, 0),
      along: upright ? point(shaft[0], shaft[1], 1) : point(shaft[0], 1, shaft[2]),
    },
    armBall: upright ? point(arm[0], 14 + arm[1], arm[2]) : point(arm[0], arm[1], 14 + arm[2]),
    hinge: { through: point(base, 6, -4), along: point(hinge[0], 1, hinge[2]) },
    hornBall: point(base + horn[0], 6 + horn[1], 11 + horn[2]),
  }));

const bentRods: fc.Arbitrary<BentRod> = fc.record({
  kind: fc.constant("bentRod" as const),
  bend: angle(10, 60),
  skew: angle(-25, 25),
  tipTo: fc.constantFrom("port", "starboard"),
});

const cables: fc.Arbitrary<Cables> = fc.record({
  kind: fc.constant("cables" as const),
  arm: lengthMm(8, 25),
  horn: lengthMm(8, 25),
  base: lengthMm(150, 900),
  armAft: lengthMm(-2, 2),
  hornAft: lengthMm(-4, 4),
  crossed: fc.boolean(),
});

const tracks: fc.Arbitrary<Track> = fc.record({
  kind: fc.constant("track" as const),
  arm: lengthMm(15, 40),
  armAt: angle(110, 140),
  base: lengthMm(35, 60),
  rise: lengthMm(5, 35),
  trackAt: angle(-15, 5),
  travel: lengthMm(20, 40),
  cam: fc.record({
    kind: fc.constant("powers" as const),
    length: fc.constant(mm(34)),
    terms: fc.tuple(between(2, 8), between(10, 35), between(1.5, 3)).map(([first, rest, power]) => [
      { deflection: deg(first), power: 1 },
      { deflection: deg(rest), power },
    ]),
  }),
});

const chains: fc.Arbitrary<Linkage> = fc
  .array(fc.oneof(pushrods, ballRods, fc.constant<Linkage>({ kind: "torqueRod", sense: "opposite" })), {
    minLength: 1,
    maxLength: 3,
  })
  .map((links) => ({ kind: "chain", links }));

/** A sound linkage of any kind with its drive, and a rotation at a part of its range well inside both ends. */
const placed = fc
  .tuple(fc.oneof(pushrods, ballRods, bentRods, cables, tracks, chains), between(0.03, 0.97))
  .map(([linkage, part]) => {
    const result = drive(linkage);
    return isLinkageProblem(result) ? undefined : { linkage, part, ...at(result, part) };
  })
  .filter((one) => one !== undefined);

function at(whole: Drive, part: number) {
  const { low, high } = whole.range;
  return { whole, rotation: deg(low.rotation + part * (high.rotation - low.rotation)) };
}

describe("every drive", () => {
  it("has, all through its range, a finite deflection, ratio, rods and drawing", () => {
    fc.assert(
      fc.property(placed, ({ whole, rotation }) => {
        expect(whole.deflectionAt(rotation)).toSatisfy(Number.isFinite);
        expect(whole.ratioAt(rotation)).toSatisfy(Number.isFinite);
        expect(JSON.stringify(whole.rodsAt(rotation))).not.toMatch(/null|undefined/);
        expect(JSON.stringify(whole.drawingAt(rotation))).not.toMatch(/null|undefined/);
      }),
      { numRuns: 300 },
    );
  });

  it("is strictly monotone in its range, from the deflection of one end to that of the other", () => {
    fc.assert(
      fc.property(placed, ({ whole }) => {
        const { low, high } = whole.range;
        const rises = high.deflection > low.deflection;
        let before: number = low.deflection;
        for (let part = 0.02; part < 0.99; part += 0.04) {
          const here = whole.deflectionAt(at(whole, part).rotation) ?? Number.NaN;
          expect(here > before).toBe(rises);
          before = here;
        }
        expect(high.deflection > before).toBe(rises);
      }),
      { numRuns: 200 },
    );
  });

  it("reaches both ends of its range and comes back to them", () => {
    fc.assert(
      fc.property(placed, ({ whole }) => {
        for (const end of [whole.range.low, whole.range.high]) {
          expect(whole.deflectionAt(end.rotation)).toBeCloseTo(end.deflection, 5);
          // Where it turns back, a deflection rounded by 1e-14 is a rotation moved by some 1e-6 degrees.
          expect(whole.rotationAt(end.deflection)).toBeCloseTo(end.rotation, 4);
        }
      }),
      { numRuns: 200 },
    );
  });

  it("finds the rotation from the deflection, alone and among all of the branch", () => {
    fc.assert(
      fc.property(placed, ({ whole, rotation }) => {
        const deflection = whole.deflectionAt(rotation) ?? deg(1e6);
        // A flat ratio makes the rotation as much worse known as it is below one.
        const bound = 1e-9 / Math.min(1, Math.abs(whole.ratioAt(rotation) ?? 0));
        expect(Math.abs((whole.rotationAt(deflection) ?? Number.NaN) - rotation)).toBeLessThan(bound);
        const all = whole.rotationsAt(deflection);
        expect(Math.min(...all.map((found) => Math.abs(found - rotation)))).toBeLessThan(bound);
        for (const found of all) expect(whole.deflectionAt(found)).toBeCloseTo(deflection, 6);
      }),
      { numRuns: 300 },
    );
  });

  it("has no rotation for a deflection outside its range", () => {
    fc.assert(
      fc.property(placed, ({ whole }) => {
        const { low, high } = whole.range;
        expect(whole.rotationAt(deg(Math.max(low.deflection, high.deflection) + 1e-3))).toBeUndefined();
        expect(whole.rotationAt(deg(Math.min(low.deflection, high.deflection) - 1e-3))).toBeUndefined();
      }),
      { numRuns: 100 },
    );
  });

  it("has the ratio that small differences of its deflection give", () => {
    fc.assert(
      fc.property(placed, ({ whole, rotation, linkage }) => {
        const step = 1e-4;
        fc.pre(linkage.kind !== "cables" || Math.abs(rotation) > step);
        const up = whole.deflectionAt(deg(rotation + step)) ?? Number.NaN;
        const down = whole.deflectionAt(deg(rotation - step)) ?? Number.NaN;
        const ratio = whole.ratioAt(rotation) ?? Number.NaN;
        expect(Math.abs((up - down) / (2 * step) - ratio)).toBeLessThan(1e-6 * (1 + Math.abs(ratio) ** 3));
      }),
      { numRuns: 300 },
    );
  });

  it("keeps every rod's length in its drawing", () => {
    fc.assert(
      fc.property(placed, ({ whole, rotation }) => {
        const now = whole.drawingAt(rotation);
        const level = whole.drawingAt(deg(0));
        for (const {
          part,
          between: [from, to],
        } of level?.segments ?? []) {
          if (part === "cable") continue;
          const long = (drawn: typeof now) =>
            Math.hypot(
              ...(drawn?.points[from] ?? []).map((x, i) => x - (drawn?.points[to]?.[i] ?? Number.NaN)),
            );
          expect(long(now)).toBeCloseTo(long(level), 8);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("does the same work at the hinge as at the shaft", () => {
    fc.assert(
      fc.property(placed, ({ whole, rotation }) => {
        const [rod] = whole.rodsAt(rotation) ?? [];
        fc.pre(rod !== undefined);
        const ratio = whole.ratioAt(rotation) ?? Number.NaN;
        const byLevers = (rod?.shaftLever ?? 0) / (rod?.surfaceLever ?? 1);
        expect(Math.abs(Math.abs(byLevers) - Math.abs(ratio))).toBeLessThan(1e-9 * (1 + Math.abs(ratio)));
      }),
      { numRuns: 200 },
    );
  });
});

describe("rods between two axes", () => {
  const rotations = [-25, -8, 0, 12, 30];

  it("a planar rod is the spatial one with parallel axes, wherever the whole is put and however it is turned", () => {
    fc.assert(
      fc.property(pushrods, steps(50), between(-180, 180), between(-80, 80), (planar, place, yaw, roll) => {
        const turned = (aft: number, starboard: number, up: number): readonly [number, number, number] => {
          const [c, s] = [Math.cos((yaw * Math.PI) / 180), Math.sin((yaw * Math.PI) / 180)];
          const [C, S] = [Math.cos((roll * Math.PI) / 180), Math.sin((roll * Math.PI) / 180)];
          const [x, y] = [c * aft - s * starboard, s * aft + c * starboard];
          return [x, C * y - S * up, S * y + C * up];
        };
        const put = (aft: number, up: number) => {
          const [x, y, z] = turned(aft, 0, up);
          return point(x + place[0], y + place[1], z + place[2]);
        };
        const polar = (radius: number, angleDeg: number) =>
          [
            radius * Math.cos((angleDeg * Math.PI) / 180),
            radius * Math.sin((angleDeg * Math.PI) / 180),
          ] as const;
        const [armAft, armUp] = polar(planar.arm, planar.armAt);
        const [hornAft, hornUp] = polar(planar.horn, planar.hornAt);
        const along = point(...turned(0, 3, 0));
        const spatial: Linkage = {
          kind: "ballRod",
          shaft: { through: put(0, 0), along },
          armBall: put(armAft, armUp),
          hinge: { through: put(planar.base, planar.rise), along },
          hornBall: put(planar.base + hornAft, planar.rise + hornUp),
        };
        for (const rotation of rotations) {
          const wanted = made(planar).deflectionAt(deg(rotation));
          const ratio = Math.abs(made(planar).ratioAt(deg(rotation)) ?? 1);
          const found = made(spatial).deflectionAt(deg(rotation));
          // A dead centre multiplies the rounding of the turned geometry by the ratio.
          if (wanted !== undefined && ratio < 10) expect(found).toBeCloseTo(wanted, 8);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("a mirror image turns and deflects the other way", () => {
    fc.assert(
      fc.property(pushrods, (one) => {
        const image = { ...one, rise: mm(-one.rise), armAt: deg(-one.armAt), hornAt: deg(-one.hornAt) };
        for (const rotation of rotations) {
          const wanted = made(one).deflectionAt(deg(rotation));
          const found = made(image).deflectionAt(deg(-rotation));
          if (wanted === undefined) expect(found).toBeUndefined();
          else expect(found).toBeCloseTo(-wanted, 8);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("the other wing's image in space turns and deflects the same way", () => {
    // Mirrored left to right: an axis keeps pointing to starboard, its sweep and tilt change sign.
    const mirror = ([x, y, z]: Point) => point(x, -y, z);
    fc.assert(
      fc.property(ballRods, (one) => {
        fc.pre(one.shaft.along[1] === 1);
        const along = ([x, y, z]: Point) => point(-x, y, -z);
        const image: Linkage = {
          ...one,
          shaft: { through: mirror(one.shaft.through), along: along(one.shaft.along) },
          armBall: mirror(one.armBall),
          hinge: { through: mirror(one.hinge.through), along: along(one.hinge.along) },
          hornBall: mirror(one.hornBall),
        };
        for (const rotation of rotations) {
          const wanted = made(one).deflectionAt(deg(rotation));
          if (wanted === undefined) expect(made(image).deflectionAt(deg(rotation))).toBeUndefined();
          else expect(made(image).deflectionAt(deg(rotation))).toBeCloseTo(wanted, 7);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("scaling all lengths changes neither deflection nor ratio", () => {
    fc.assert(
      fc.property(pushrods, between(0.1, 20), (one, scale) => {
        const larger = {
          ...one,
          arm: mm(one.arm * scale),
          horn: mm(one.horn * scale),
          base: mm(one.base * scale),
          rise: mm(one.rise * scale),
        };
        for (const rotation of rotations) {
          const wanted = made(one).deflectionAt(deg(rotation));
          const ratio = made(one).ratioAt(deg(rotation)) ?? Number.POSITIVE_INFINITY;
          if (wanted === undefined || Math.abs(ratio) > 10) continue;
          expect(made(larger).deflectionAt(deg(rotation))).toBeCloseTo(wanted, 8);
          expect(made(larger).ratioAt(deg(rotation))).toBeCloseTo(ratio, 8);
        }
      }),
      { numRuns: 100 },
    );
  });
});
