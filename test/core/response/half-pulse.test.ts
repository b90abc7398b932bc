import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { responseFromReadings } from "../../../packages/core/src/response/from-readings.ts";
import { halfPulse } from "../../../packages/core/src/response/half-pulse.ts";
import { us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { demoDoubts, demoReadings, readings } from "./demo-readings.ts";

const { response: flap } = responseFromReadings(demoReadings("tow plane, left flap"), demoDoubts);
const { response: line } = responseFromReadings(
  readings([
    [1000, -30],
    [2000, 50],
  ]),
  demoDoubts,
);
if (flap === undefined || line === undefined) throw new Error("no response");
const pulses = evenly(1172, 1880).map(us);

describe("halfPulse", () => {
  it("finds half the pulse span at 24.4 degrees where 21 are wanted", () => {
    // Worked beforehand for the invented tow plane: level at 1858.9 us, landing at 1235.4 us.
    const half = halfPulse(flap, us(1858.9), us(1235.4));
    expect(half?.pulseUs).toBeCloseTo(1547.15, 9);
    expect(half?.deflectionDeg).toBeCloseTo(24.4, 1);
    expect(half?.wantedDeg).toBeCloseTo(21, 1);
    expect(half?.errorDeg).toBeCloseTo(3.4, 1);
  });

  it("is the same from either end", () => {
    fc.assert(
      fc.property(pulses, pulses, (from, to) => {
        expect(halfPulse(flap, from, to)).toEqual(halfPulse(flap, to, from));
      }),
    );
  });

  it("has no error on a straight response", () => {
    fc.assert(
      fc.property(pulses, pulses, (from, to) => {
        expect(halfPulse(line, from, to)?.errorDeg).toBeCloseTo(0, 11);
      }),
    );
  });

  it("knows nothing where an end was not measured", () => {
    expect(halfPulse(flap, us(1858.9), us(1171))).toBeUndefined();
    expect(halfPulse(flap, us(1881), us(1235.4))).toBeUndefined();
  });
});
