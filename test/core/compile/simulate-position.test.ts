import bramblehook from "@hingeline/examples/bramblehook";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { listDoubts } from "../../../packages/core/src/compile/list-doubts.ts";
import type { DrawOptions } from "../../../packages/core/src/compile/simulate-position.ts";
import { isLinkageProblem } from "../../../packages/core/src/linkage/drive.ts";
import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type { Model } from "../../../packages/core/src/model/model.ts";
import { responseFromReadings } from "../../../packages/core/src/response/from-readings.ts";
import { seededRandom } from "../../../packages/core/src/uncertainty/random.ts";
import { deg, mm, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { neverRead } from "../../support/never-read.ts";
import { readings, smallModel, smallSurface } from "../../support/small-model.ts";

const drawn = (model: Model, draw: DrawOptions) =>
  listDoubts(model, compile(model), { draw }).map((one) => {
    if (one.drawn === undefined) throw new Error("nothing drawn");
    return { ...one, drawn: one.drawn };
  });
const withInstruments = (pulse: number, deflection: number) =>
  smallModel({ instruments: { pulse: us(pulse), deflection: deg(deflection) } });

describe("the doubt drawn by chance", () => {
  it("is the straight-line doubt where the response is straight", () => {
    fc.assert(
      fc.property(evenly(0.2, 8), evenly(0.05, 0.6), fc.nat(1e6), (pulse, deflection, seed) => {
        const draws = 40_000;
        for (const one of drawn(withInstruments(pulse, deflection), { seed, draws })) {
          // Four standard deviations of a mean, and of a standard deviation that is normal at worst.
          const [ofMean, ofStandard] = [Math.sqrt(draws), Math.sqrt(2 * draws)];
          expect(Math.abs(one.drawn.meanDeg - one.deflectionDeg)).toBeLessThan(
            (4 * one.standardDeg) / ofMean,
          );
          expect(Math.abs(one.drawn.standardDeg / one.standardDeg - 1)).toBeLessThan(4 / ofStandard);
          expect(one.drawn.draws).toBe(draws);
        }
      }),
      { numRuns: 8 },
    );
  });

  it("is the same to the last bit for the same seed, whatever else is looked at, and another for another", () => {
    const plan = compile(bramblehook);
    const draw = { seed: 7, draws: 2000 };
    const all = listDoubts(bramblehook, plan, { draw });
    expect(listDoubts(bramblehook, plan, { draw, surface: "flapLeft" })).toEqual(
      all.filter(({ surface }) => surface === "flapLeft"),
    );
    const other = listDoubts(bramblehook, plan, { draw: { seed: 8, draws: 2000 } });
    expect(other[0]?.drawn?.meanDeg).not.toBe(all[0]?.drawn?.meanDeg);
  });

  it("never shrinks when an instrument gets worse", () => {
    fc.assert(
      fc.property(
        evenly(0.2, 5),
        evenly(0.05, 0.5),
        fc.boolean(),
        fc.nat(1e6),
        (pulse, deflection, worse, seed) => {
          const first = (...own: readonly [number, number]) =>
            drawn(withInstruments(...own), { seed, draws: 4000 })[0]?.drawn.standardDeg ?? 0;
          const after = worse ? first(pulse * 3, deflection) : first(pulse, deflection * 3);
          // The same draws, one cause three times as large: only its chance correlation with the others is left.
          expect(after).toBeGreaterThan(first(pulse, deflection) * 0.99);
        },
      ),
      { numRuns: 20 },
    );
  });

  it("holds at its shortest about 95 % and stops by itself once the second digit stands still", () => {
    const [one] = listDoubts(bramblehook, compile(bramblehook), {
      surface: "elevator",
      control: "pitch",
      draw: { seed: 1 },
    });
    expect(one?.drawn?.settled).toBe(true);
    expect(one?.drawn?.draws).toBeGreaterThanOrEqual(20_000);
    const [low, high] = one?.drawn?.shortestDeg ?? [0, 0];
    const wide = (high - low) / 2 / (one?.drawn?.standardDeg ?? 1);
    // Between a rectangle's 0.95 sqrt 3 and the normal distribution's 1.96.
    expect(wide).toBeGreaterThan(1.645);
    expect(wide).toBeLessThan(1.97);
    expect(one?.drawn?.straightLineHolds).toBe(true);
  });

  it("says by how much the straight-line doubt is off where the response is bent within it", () => {
    // Flat below 1500 us, ten times as steep above: a tester of 40 us reaches well into both.
    const bent = smallModel({
      instruments: { pulse: us(40), deflection: deg(0.2) },
      surfaces: {
        flap: smallSurface({
          readings: readings(
            [1200, -6],
            [1350, -3],
            [1480, -0.4],
            [1500, 0],
            [1520, 4],
            [1650, 30],
            [1800, 60],
          ),
        }),
      },
      moves: { lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(0) }, landing: { flap: deg(0) } } },
    });
    const [one] = drawn(bent, { seed: 3, draws: 50_000 });
    expect(one?.drawn.straightLineHolds).toBe(false);
    // Below it the response is flatter than its slope there, above it steeper.
    const { straightLineExcessDeg = 0, shortestDeg: [low, high] = [0, 0] } = one?.drawn ?? {};
    expect(Math.abs(straightLineExcessDeg)).toBeGreaterThan(0.5);
    expect(high + low).toBeGreaterThan(1);
    // A tester anywhere within 40 us, 0.02 deg/us below and 0.2 above: 40 / 4 (0.2 - 0.02) = 1.8 deg.
    expect(one?.drawn.meanDeg).toBeCloseTo(1.8, 0);
  });

  it("counts the draws that go past the readings, where the response goes on straight", () => {
    const atEnd = smallModel({
      surfaces: { flap: smallSurface({ readings: readings([1200, -30], [1500, 0], [1625, 12.5]) }) },
      moves: { lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(0) }, landing: { flap: deg(12.5) } } },
    });
    const [level, , end] = drawn(atEnd, { seed: 5, draws: 20_000 });
    expect(level?.drawn.beyond).toBe(0);
    expect(end?.pulseUs).toBe(1625);
    expect(end?.drawn.beyond).toBeCloseTo(0.5, 1);
    expect(Math.abs((end?.drawn.standardDeg ?? 0) / (end?.standardDeg ?? 1) - 1)).toBeLessThan(0.03);
  });

  // The oracle draws the dimensions itself and solves the linkage anew, as a model that states them would have it.
  it("draws the dimensions and the rotation of a linkage that was never read, and agrees with the straight-line doubt", () => {
    const next = seededRandom(20);
    const about = (value: number, halfWidth: number) => value + halfWidth * (2 * next() - 1);
    // Twelve uniform numbers less six: near enough to normal for a standard deviation.
    const normal = () => Array.from({ length: 12 }, next).reduce((sum, one) => sum + one, -6);
    const draws = 2000;
    for (const one of drawn(neverRead(), { seed: 4, draws })) {
      const solved = Array.from({ length: draws }, () => {
        const made = drive({
          kind: "pushrod",
          arm: mm(about(12, 0.5)),
          horn: mm(about(16, 0.5)),
          base: mm(about(62, 0.5)),
          rise: mm(about(-4, 0.5)),
          armAt: deg(about(-90, 1)),
          hornAt: deg(about(-86, 1)),
        });
        if (isLinkageProblem(made)) throw new Error(made.kind);
        const pulseUs = one.pulseUs + about(0, 1) + about(0, 2.5) + 0.5 * normal();
        const rotationDeg = 0.094 * (1 + 0.02 * normal()) * (pulseUs - 1488);
        return (made.deflectionAt(deg(rotationDeg)) ?? Number.NaN) + about(0, 0.25) + about(0, 0.35);
      });
      const mean = solved.reduce((sum, value) => sum + value, 0) / draws;
      const standard = Math.sqrt(solved.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (draws - 1));
      // Four standard deviations of a standard deviation.
      const room = 4 / Math.sqrt(2 * draws);
      expect(Math.abs(standard / one.standardDeg - 1)).toBeLessThan(room);
      expect(Math.abs(one.drawn.standardDeg / one.standardDeg - 1)).toBeLessThan(room);
      expect(Math.abs(one.drawn.meanDeg - mean)).toBeLessThan((6 * standard) / Math.sqrt(draws));
      expect(one.drawn.beyond).toBe(0);
    }
  });

  // What lets the draws move the response in place of making it anew from the readings drawn.
  it("may move the response as a whole, because readings that move together give the response moved as much", () => {
    const list = (bramblehook.surfaces.flapLeft.servo?.bench.readings ?? []).map(([pulse, at]) => ({
      pulseUs: pulse,
      deflectionDeg: at as number,
    }));
    const doubts = { pulseUs: 1, deflectionDeg: 0.3 };
    const own = responseFromReadings(list, doubts).response;
    fc.assert(
      fc.property(evenly(-5, 5), evenly(-1, 1), evenly(0.1, 0.9), (byUs, byDeg, share) => {
        const moved = responseFromReadings(
          list.map(({ pulseUs, deflectionDeg }) => ({
            pulseUs: pulseUs + byUs,
            deflectionDeg: deflectionDeg + byDeg,
          })),
          doubts,
        ).response;
        const [lowUs, highUs] = own?.pulses ?? [us(0), us(0)];
        const pulseUs = lowUs + share * (highUs - lowUs);
        expect(moved?.deflectionAt(us(pulseUs + byUs))).toBeCloseTo(
          (own?.deflectionAt(us(pulseUs)) ?? Number.NaN) + byDeg,
          9,
        );
      }),
    );
  });
});
