import bramblehook from "@hingeline/examples/bramblehook";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { type ServoSwap, swapServo } from "../../../packages/core/src/compile/swap-servo.ts";
import { isLinkageProblem } from "../../../packages/core/src/linkage/drive.ts";
import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type { Model, Reading, Servo } from "../../../packages/core/src/model/model.ts";
import { deg, degPerUs, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { aileronRod, neverRead } from "../../support/never-read.ts";
import { readings, smallModel, smallServo, smallSurface } from "../../support/small-model.ts";

function swapOf(model: Model, servo: string, read: readonly Reading[]): ServoSwap {
  const swap = swapServo(model, servo, read);
  if (swap.kind !== "mapped") throw new Error(`no map: ${swap.kind}`);
  return swap;
}

// The small bench is 0.1 deg per us about 1500 us; the new servo needs 1.02 times the pulse span about 1510 us.
const newUs = (oldUs: number) => 1510 + 1.02 * (oldUs - 1500);
const three = readings([newUs(1250), -25], [newUs(1780), 28], [newUs(1560), 6]);

describe("swapServo", () => {
  test("maps level and the readings between the new ones, in the order of the bench", () => {
    const swap = swapOf(smallModel(), "flap", three);
    expect(swap.map.accepted).toBe(true);
    expect(swap.levelUs).toBeCloseTo(1510, 6);
    expect(swap.readings.map(([pulse, at]) => [Number(pulse.toFixed(6)), at])).toEqual([
      [newUs(1350), -15],
      [newUs(1500), 0],
      [newUs(1650), 15],
    ]);
  });

  test("keeps the guard, and as many degrees of it", () => {
    expect(swapOf(smallModel(), "flap", three).guardUs).toBeCloseTo(10.2, 9);
    const shorter = readings([1250, -50], [1780, 56], [1560, 12]).map(
      ([pulse, at]) => [pulse, deg(Number(at) / 2)] as const,
    );
    expect(swapOf(smallModel(), "flap", shorter as readonly Reading[]).guardUs).toBeCloseTo(10, 9);
    const { guard: _, ...bench } = smallServo().bench;
    expect(
      swapOf(smallModel({ surfaces: { flap: { servo: smallServo({ bench }) } } }), "flap", three),
    ).not.toHaveProperty("guardUs");
  });

  test("never maps a stop, and says what is to be measured again", () => {
    const { measureAgain } = swapOf(smallModel(), "flap", three);
    expect(measureAgain).toEqual({
      stops: ["up", "down"],
      level: false,
      readings: readings([1200, -30], [1800, 30]),
    });
    const { up: _, ...bench } = smallServo().bench;
    const noUp = smallModel({ surfaces: { flap: { servo: smallServo({ bench }) } } });
    expect(swapOf(noUp, "flap", three).measureAgain.stops).toEqual(["down"]);
  });

  test("a level outside the new readings is to be measured again too", () => {
    const above = readings([newUs(1520), 2], [newUs(1790), 29], [newUs(1650), 15]);
    const swap = swapOf(smallModel(), "flap", above);
    expect([swap.levelUs, swap.measureAgain.level]).toEqual([undefined, true]);
  });

  test("the mapped bench, its stops found again, compiles to the same deflections at other pulses", () => {
    const swap = swapOf(smallModel(), "flap", three);
    const surfaces = {
      flap: smallSurface({
        up: us(1230),
        level: us(swap.levelUs ?? 0),
        down: us(1790),
        readings: [...readings([1230, -27.45]), ...swap.readings, ...readings([1790, 27.45])],
      }),
    };
    const plan = compile(smallModel({ surfaces }));
    expect(plan.findings.filter(({ severity }) => severity === "error")).toEqual([]);
    const landing = plan.channels[0]?.settings.find(({ detent }) => detent === "landing");
    expect(landing?.exact.pulseUs).toBeCloseTo(newUs(1750), 1);
  });

  // An arm one tooth of 15 deg out is no longer the same linkage: 8 deg of the flap in the middle, refused by far.
  test("is refused where the test misses by more than the doubt of a position", () => {
    const read = readings([1221, 42], [1838, 1.5], [1662, 14]);
    const swap = swapOf(bramblehook as Model, "flapLeft", read);
    expect(swap.label).toBe("F-L-07");
    expect(swap.map.accepted).toBe(false);
    expect(Math.abs(swap.map.worst.missDeg)).toBeGreaterThan(swap.map.worst.doubtDeg);
  });

  // A servo of 0.0897 deg/us in place of one of 0.094, its level elsewhere, its readings simulated through the same linkage.
  test("of a linkage that was never read gives the rotation that brings every position back", () => {
    fc.assert(
      fc.property(evenly(0.085, 0.1), evenly(1450, 1530), (rotation, levelUs) => {
        const old = neverRead();
        const made = drive(aileronRod);
        if (isLinkageProblem(made)) throw new Error(made.kind);
        const readAt = (pulse: number): Reading => [
          us(pulse),
          deg(Number((made.deflectionAt(deg(rotation * (pulse - levelUs))) ?? Number.NaN).toFixed(1))),
        ];
        const around = (degrees: number) => readAt(Math.round(levelUs + degrees / rotation));
        const swap = swapOf(old, "flap", [around(-26), around(0), around(24)]);
        expect(swap.map.accepted).toBe(true);
        expect(swap.readings).toEqual([]);
        expect(swap.rotation?.oldDegPerUs).toBe(0.094);
        const degPerUs = swap.rotation?.degPerUs ?? Number.NaN;
        // Two readings to 0.05 deg over 36 deg of the surface.
        expect(Math.abs(degPerUs / rotation - 1)).toBeLessThan(0.004);

        const pasted = neverRead({}, aileronRod, degPerUs);
        const servo = pasted.surfaces.flap?.servo;
        const bench = { up: us(1140), level: us(swap.levelUs ?? 0), down: us(1845) };
        const plan = compile({ ...pasted, surfaces: { flap: servo ? { servo: { ...servo, bench } } : {} } });
        const settings = plan.channels[0]?.settings ?? [];
        expect(settings).toHaveLength(3);
        for (const { gives, enter } of settings) {
          const truly = made.deflectionAt(deg(rotation * (enter.pulseUs - levelUs))) ?? Number.NaN;
          // Far inside the doubt of a reading: with the old rotation 18 deg come out 0.8 deg off.
          expect(Math.abs(truly - (gives?.deflectionDeg ?? 0))).toBeLessThan(0.15);
          expect(gives?.uncertaintyDeg).toBeGreaterThan(0.15);
        }
      }),
      { numRuns: 20 },
    );
  });

  test("offers the new readings of such a linkage once they are enough to fit it to", () => {
    const read = readings([1250, -16.8], [1400, -6.2], [1488, 0], [1700, 14.6]);
    expect(swapOf(neverRead(), "flap", read).taken).toEqual(read);
    expect(swapOf(neverRead(), "flap", read.slice(1))).not.toHaveProperty("taken");
    expect(swapOf(smallModel(), "flap", three)).not.toHaveProperty("taken");
  });

  test("is tested against what a reading is true to, though a linkage that was never read is less sure", () => {
    const read = readings([1250, -16.8], [1400, -6.2], [1700, 14.6]);
    const { map } = swapOf(neverRead(), "flap", read);
    // Source: JCGM 100:2008 5.1.2: meter and zero 0.25 deg, play 0.35, alignment 0.05, pulse 1.6 us at 0.07 deg/us.
    const standard = Math.hypot(0.25 / Math.sqrt(3), 0.25 / Math.sqrt(3), 0.35 / Math.sqrt(3), 0.05, 0.12);
    expect(map.worst.doubtDeg).toBeCloseTo(2 * standard, 1);
  });

  test("gives a rotation where the linkage of a bench with readings states one too, and none where nothing asks for it", () => {
    const stated = { type: { rotation: degPerUs(0.1) } };
    const square = { kind: "torqueRod", sense: "same" } as const;
    const of = (over: Partial<Servo>) =>
      swapOf(smallModel({ surfaces: { flap: smallSurface({}, over) } }), "flap", three).rotation;
    expect(of({ ...stated, turns: "clockwise", linkage: square })?.degPerUs).toBeCloseTo(0.1 / 1.02, 6);
    expect(of(stated)).toBeUndefined();
    expect(of({ linkage: square })).toBeUndefined();
  });

  test("says why there is nothing to map", () => {
    expect(swapServo(smallModel(), "flop", three)).toEqual({
      kind: "unknown-servo",
      servo: "flop",
      known: ["flap"],
    });
    const { readings: _, ...bench } = smallServo().bench;
    const bare = smallModel({ surfaces: { flap: { servo: smallServo({ bench }) } } });
    expect(swapServo(bare, "flap", three)).toEqual({ kind: "no-response", servo: "flap" });
    const byThrow: Reading = [us(1500), { kind: "throw", mm: 5 as never }];
    expect(swapServo(smallModel(), "flap", [byThrow])).toEqual({ kind: "impossible-reading", index: 0 });
    expect(swapServo(smallModel(), "flap", [[us(1500), deg(0)]])).toMatchObject({ kind: "too-few-readings" });
  });
});
