import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { noseClearance } from "../../../packages/core/src/linkage/nose-clearance.ts";
import { rodShift, servoDrift, thermalShift } from "../../../packages/core/src/surface/thermal-shift.ts";
import { deg, degPerUs, mm } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";

describe("rodShift", () => {
  it("is nothing for a rod that grows as its structure does, and the same for warmer and colder", () => {
    fc.assert(
      fc.property(evenly(0, 25e-6), evenly(0, 25e-6), evenly(0, 60), (structurePerK, rodPerK, kelvin) => {
        const rod = { structurePerK, rodPerK, length: mm(900), hornRadius: mm(15) };
        expect(rodShift({ ...rod, rodPerK: structurePerK }, kelvin)).toBe(0);
        expect(rodShift(rod, -kelvin)).toBe(rodShift(rod, kelvin));
      }),
    );
  });

  // Source: trade practice, worked rod: 3.5e-6 of 1100 mm over 30 K is 0.116 mm, on a horn of 19 mm 0.35 degrees.
  it("is 0.35 deg for the worked rod of 1100 mm", () => {
    const rod = { structurePerK: 15.5e-6, rodPerK: 12e-6, length: mm(1100), hornRadius: mm(19) };
    const shift = rodShift(rod, 30);
    expect(((shift * Math.PI * 19) / 180).toFixed(3)).toBe("0.116");
    expect(shift.toFixed(2)).toBe("0.35");
  });
});

describe("thermalShift", () => {
  // The slope near level of the tow plane's left flap, between its readings (1857, 0.2) and (1880, -2.5).
  const slope = degPerUs((0.2 - -2.5) / (1857 - 1880));

  // Source: trade practice: 0.3 us/K over 30 K is 9 us or 1.1 degrees near level.
  it("is 9 us and 1.1 deg for the worked servo over 30 K", () => {
    expect(servoDrift(30).toFixed(0)).toBe("9");
    expect(thermalShift(deg(0), servoDrift(30), slope).toFixed(1)).toBe("1.1");
  });

  // Source: trade practice: from 20 to -5 degrees 7.5 us or 0.9 degrees up, and the right cove's gap from 0.7 to 0.4 mm.
  it("closes the worked flap's gap from 0.7 to 0.4 mm between 20 and -5 degrees Celsius", () => {
    const shift = thermalShift(deg(0), servoDrift(-5 - 20), slope);
    expect(servoDrift(-5 - 20).toFixed(1)).toBe("7.5");
    expect(shift.toFixed(1)).toBe("0.9");
    expect(
      noseClearance([mm(-9), mm(17)], mm(0.7))
        .gapAt(deg(-shift))
        .toFixed(1),
    ).toBe("0.4");
  });

  it("adds rod and servo whatever their signs", () => {
    fc.assert(
      fc.property(evenly(-2, 2), evenly(0, 60), evenly(-0.2, 0.2), (rod, kelvin, slopeDegPerUs) => {
        const drift = servoDrift(kelvin, 0.4);
        const shift = thermalShift(deg(rod), drift, degPerUs(slopeDegPerUs));
        expect(shift).toBeCloseTo(Math.abs(rod) + 0.4 * kelvin * Math.abs(slopeDegPerUs), 12);
      }),
    );
  });
});
