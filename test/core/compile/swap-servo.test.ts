import bramblehook from "@hingeline/examples/bramblehook";
import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { type ServoSwap, swapServo } from "../../../packages/core/src/compile/swap-servo.ts";
import type { Model, Reading } from "../../../packages/core/src/model/model.ts";
import { deg, us } from "../../../packages/core/src/units/quantity.ts";
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
