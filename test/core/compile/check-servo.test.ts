import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import type { Bench, Model, Servo } from "../../../packages/core/src/model/model.ts";
import { amps, celsius, us } from "../../../packages/core/src/units/quantity.ts";
import { smallModel, smallServo, smallSurface, straightReadings } from "../../support/small-model.ts";

/** 40 K from a bench at 20 degrees: at 0.3 us a kelvin the drift is 12 us. */
const cold = (servo: Servo, over: Partial<Model> = {}) =>
  smallModel({ surfaces: { flap: { servo } }, temperatures: [celsius(-20), celsius(30)], ...over });
const shiftOf = (model: Model) => compile(model).findings.find(({ code }) => code === "thermal-shift");
const guarded = (guard: number, over: Partial<Servo> = {}) =>
  smallServo({ ...over, bench: { ...smallServo().bench, guard: us(guard) } });

describe("the drift of a servo with heat", () => {
  test("is held against the guard alone: what a device may add or the model allows covers none of it", () => {
    for (const added of [0, 40]) {
      expect(shiftOf(cold(guarded(2, { added: us(added) })))?.numbers).toMatchObject({
        shiftUs: 12,
        guardUs: 2,
      });
      expect(shiftOf(cold(guarded(12, { added: us(added) })))).toBeUndefined();
    }
  });

  test("is held against the guard of the stops that were measured", () => {
    const bench = (guard: number): Bench => ({
      level: us(1500),
      down: us(1800),
      guard: us(guard),
      readings: straightReadings.slice(2),
    });
    expect(shiftOf(cold(smallServo({ bench: bench(12) })))).toBeUndefined();
    expect(shiftOf(cold(smallServo({ bench: bench(11) })))?.numbers).toMatchObject({ guardUs: 11 });
  });

  test("is told in degrees only where the bench knows them", () => {
    expect(shiftOf(cold(guarded(2)))?.message).toContain("12 us, 1.2 deg of the surface at rest; its guard");
    const { readings: _, ...bench } = smallServo().bench;
    const place = { kind: "part", part: 0.2 } as const;
    const moves = { lever: { stowed: {}, takeoff: {}, landing: { flap: place } } };
    const unknown = shiftOf(cold({ channel: 1, bench: { ...bench, guard: us(2) } }, { moves }));
    expect(unknown?.message).toContain("12 us; its guard");
    expect(unknown?.numbers).toEqual({ kelvin: 40, shiftUs: 12, guardUs: 2 });
  });
});

describe("what a supply must deliver", () => {
  const fed = (stalls: readonly (number | undefined)[], current: number) =>
    compile(
      smallModel({
        surfaces: Object.fromEntries(
          stalls.map((stall, index) => [
            index === 0 ? "flap" : `other${index}`,
            smallSurface(
              {},
              { channel: index + 1, ...(stall === undefined ? {} : { type: { stallCurrent: amps(stall) } }) },
            ),
          ]),
        ),
        supply: { current: amps(current) },
      }),
    ).findings.find(({ code }) => code === "supply-short");

  test("counts every servo, those whose stall current is not stated as well", () => {
    // Three servos hold 0.25 A each, and the one of 3 A stalls.
    expect(fed([2, undefined, 3], 3)?.numbers).toEqual({ neededAmps: 3.75, supplyAmps: 3, servos: 3 });
    expect(fed([2, undefined, 3], 3.75)).toBeUndefined();
  });

  test("is not told where no stall current is stated", () => {
    expect(fed([undefined, undefined], 0.1)).toBeUndefined();
  });
});
