import convert from "convert-units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as units from "../../../packages/core/src/units/conversions.ts";
import { deg, degPerS, grams, mm, mps, nm } from "../../../packages/core/src/units/quantity.ts";
import signals from "../../fixtures/signals.json" with { type: "json" };

const { UNITS } = units;

/** Every pair, with the range in which a builder meets it. */
const pairs = [
  { name: "KgfCm", from: units.fromKgfCm, to: (value: number) => units.toKgfCm(nm(value)), most: 100 },
  { name: "OzfIn", from: units.fromOzfIn, to: (value: number) => units.toOzfIn(nm(value)), most: 1000 },
  { name: "Inch", from: units.fromInch, to: (value: number) => units.toInch(mm(value)), most: 200 },
  { name: "Foot", from: units.fromFoot, to: (value: number) => units.toFoot(mm(value)), most: 30 },
  {
    name: "SecondsPer60Deg",
    from: units.fromSecondsPer60Deg,
    to: (value: number) => units.toSecondsPer60Deg(degPerS(value)),
    most: 1,
  },
  { name: "KmPerH", from: units.fromKmPerH, to: (value: number) => units.toKmPerH(mps(value)), most: 500 },
  { name: "Mph", from: units.fromMph, to: (value: number) => units.toMph(mps(value)), most: 300 },
  { name: "Knots", from: units.fromKnots, to: (value: number) => units.toKnots(mps(value)), most: 300 },
  { name: "Rad", from: units.fromRad, to: (value: number) => units.toRad(deg(value)), most: 7 },
  { name: "Ounce", from: units.fromOunce, to: (value: number) => units.toOunce(grams(value)), most: 1000 },
];

describe("every conversion", () => {
  it.each(pairs)("to$name undoes from$name to 1e-15 relative", ({ from, to, most }) => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: most, noNaN: true }), (value) => {
        expect(Math.abs(to(from(value)) / value - 1)).toBeLessThan(1e-15);
      }),
    );
  });

  it.each(pairs)("from$name refuses NaN and infinities", ({ from }) => {
    expect(() => from(Number.NaN)).toThrow(RangeError);
    expect(() => from(Number.POSITIVE_INFINITY * (from === units.fromSecondsPer60Deg ? 0 : 1))).toThrow(
      RangeError,
    );
  });

  it.each(pairs)("to$name refuses what is no quantity, as from JavaScript", ({ to }) => {
    expect(() => to(Number.NaN)).toThrow(RangeError);
  });
});

// convert-units 2.3.4 has no force or torque; those are held by the definitions below.
describe("the general-purpose library convert-units agrees", () => {
  it.each([
    { name: "inch", ours: units.fromInch, from: "in", to: "mm" },
    { name: "foot", ours: units.fromFoot, from: "ft", to: "mm" },
    { name: "km/h", ours: units.fromKmPerH, from: "km/h", to: "m/s" },
    { name: "mile per hour", ours: units.fromMph, from: "m/h", to: "m/s" },
    { name: "knot", ours: units.fromKnots, from: "knot", to: "m/s" },
    { name: "radian", ours: units.fromRad, from: "rad", to: "deg" },
    { name: "ounce", ours: units.fromOunce, from: "oz", to: "g" },
  ] as const)("on the $name", ({ ours, from, to }) => {
    for (const value of [0.25, 1, 7, 123.4]) {
      // Its knot, mile and ounce are rounded: to 1e-5 and better.
      expect(Math.abs(ours(value) / convert(value).from(from).to(to) - 1)).toBeLessThan(1e-5);
    }
  });
});

describe("exact definitions", () => {
  it("kgf cm and ozf in follow from standard gravity, the pound and the inch", () => {
    // BIPM SI brochure: g_n = 9.80665 m/s2; NIST SP 811 appendix B: 1 lb = 0.45359237 kg, 1 in = 0.0254 m.
    // Whole numbers, so that no double is rounded: 45359237 * 980665 * 254 / (16 * 1e8 * 1e5 * 1e4).
    expect(UNITS.nmPerKgfCm).toBe(UNITS.newtonsPerKgf / 100);
    const digits = (45359237n * 980665n * 254n * 10n ** 13n) / 16n;
    expect(UNITS.nmPerOzfIn).toBe(Number(`${digits}e-30`));
    const torque = signals.facts.find((fact) => fact.id === "torque-unit");
    // The reference value of the ozf in is one unit in the last place below the double nearest to the definition.
    expect(torque?.values.kgf_cm_to_Nm).toBe(UNITS.nmPerKgfCm);
    expect(torque?.values.ozf_in_to_Nm).toBeCloseTo(UNITS.nmPerOzfIn, 17);
  });

  it("a mile is 1609.344 m, a knot a nautical mile an hour, an ounce a sixteenth of a pound", () => {
    expect(UNITS.mpsPerMph).toBe(1609.344 / 3600);
    expect(units.fromKnots(3600)).toBe(1852);
    expect(units.fromKmPerH(36)).toBe(10);
    expect(UNITS.gramsPerOunce).toBe(453.59237 / 16);
    expect(UNITS.mmPerFoot * 10).toBe(UNITS.mmPerInch * 120);
  });

  it("a half turn is pi radians", () => {
    expect(units.toRad(deg(180))).toBe(Math.PI);
    expect(units.fromRad(Math.PI / 2)).toBe(90);
  });
});

describe("what a servo sheet says", () => {
  it("3.5 kgf cm is 0.343 N m, and 50 ozf in about the same", () => {
    expect(units.fromKgfCm(3.5)).toBeCloseTo(0.34323275, 12);
    expect(units.fromOzfIn(50)).toBeCloseTo(0.3530776, 7);
  });

  it("0.16 s for 60 degrees is 375 degrees per second, and zero seconds is refused", () => {
    expect(units.fromSecondsPer60Deg(0.16)).toBe(375);
    expect(() => units.fromSecondsPer60Deg(0)).toThrow(RangeError);
    expect(() => units.toSecondsPer60Deg(degPerS(0))).toThrow("expected a speed above zero");
  });
});
