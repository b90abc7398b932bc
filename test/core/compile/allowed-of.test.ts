import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { deg } from "../../../packages/core/src/units/quantity.ts";
import { codesOf } from "../../support/expect-finding.ts";
import { smallModel, smallServo, smallSurface, straightReadings } from "../../support/small-model.ts";

const allowing = (first: number, second: number) =>
  smallModel({ surfaces: { flap: { ...smallSurface(), allowed: [deg(first), deg(second)] } } });

describe("what a model allows of a surface", () => {
  test("holds the channel where degrees are known", () => {
    expect(compile(allowing(-5, 26)).channels[0]?.safeUs).toEqual([1450, 1760]);
  });

  test("ends at the last reading where the readings end first, and leaves nothing where they never come to it", () => {
    const readTo15Deg = (first: number, second: number) =>
      smallModel({
        surfaces: {
          flap: {
            ...smallSurface({ readings: straightReadings.slice(0, 4) }),
            allowed: [deg(first), deg(second)],
          },
        },
        moves: { lever: { stowed: {}, takeoff: {}, landing: { flap: deg(12) } } },
      });
    expect(compile(readTo15Deg(-5, 22)).channels[0]?.safeUs).toEqual([1450, 1650]);
    expect(codesOf(readTo15Deg(20, 22))).toContain("nothing-measured-inside");
  });

  test("is the one finding where it is reversed or has no width", () => {
    expect(codesOf(allowing(26, -5))).toEqual(["range-reversed"]);
    expect(codesOf(allowing(5, 5))).toEqual(["range-reversed"]);
  });

  test("stops the plan where no readings tell the pulses", () => {
    const { readings: _, ...bench } = smallServo().bench;
    const model = smallModel({
      surfaces: { flap: { servo: { channel: 1, bench }, allowed: [deg(-5), deg(5)] } },
      moves: { lever: { stowed: {}, takeoff: {}, landing: { flap: { kind: "part", part: 0.9 } } } },
    });
    expect(codesOf(model)).toEqual(["allowed-not-held"]);
    expect(compile(model).procedure).toEqual([]);
  });
});
