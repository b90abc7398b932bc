import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { celsius, degPerUs, mm, mps, nm, us } from "../../../packages/core/src/units/quantity.ts";
import { codesOf, findingOf } from "../../support/expect-finding.ts";
import { smallModel, smallSurface } from "../../support/small-model.ts";

const inTheAir = (section: number, chord = 50) =>
  smallModel({
    surfaces: {
      flap: {
        ...smallSurface({}, { type: { torque: nm(1), rotation: degPerUs(0.1) } }),
        chord: mm(chord),
        span: mm(400),
        section: mm(section),
      },
    },
    airspeed: { otherwise: mps(10) },
  });

describe("a range whose first is not the lower", () => {
  test("is an error at the temperatures of flight, but one temperature alone is none", () => {
    const flown = (first: number, second: number) =>
      smallModel({ temperatures: [celsius(first), celsius(second)] });
    expect(findingOf(flown(30, 20), "range-reversed", "temperatures").message).toBe(
      "The temperature of flight is 30 to 20 deg C: the first must be the lower.",
    );
    expect(codesOf(flown(20, 20))).toEqual([]);
  });

  test("is an error at what a servo accepts, and its stops are then not held against it", () => {
    const model = smallModel({
      surfaces: { flap: smallSurface({}, { type: { accepts: [us(2200), us(800)] } }) },
    });
    const at = "surfaces.flap.servo.type.accepts";
    expect(findingOf(model, "range-reversed", at).numbers).toEqual({ first: 2200, second: 800 });
    expect(codesOf(model)).toEqual(["range-reversed"]);
  });
});

describe("the section of a surface", () => {
  test("is an error where it is shorter than the chord, and a warning where the chord is less than a hundredth", () => {
    expect(compile(inTheAir(49)).findings.map(({ code, severity }) => [code, severity])).toEqual([
      ["section-short", "error"],
    ]);
    expect(codesOf(inTheAir(5000, 49))).toEqual(["implausible"]);
  });

  test("has no finding wherever a load can be told", () => {
    for (const section of [50, 200, 5000]) {
      expect(codesOf(inTheAir(section))).toEqual([]);
      expect(compile(inTheAir(section)).channels[0]?.load?.worstNm).toBeGreaterThan(0);
    }
  });
});
