import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { airDensity, dynamicPressurePa, SEA_LEVEL_DENSITY } from "../../../packages/core/src/surface/air.ts";
import { celsius, mps } from "../../../packages/core/src/units/quantity.ts";
import reference from "../../fixtures/atmosphere.json";
import { evenly } from "../../support/evenly.ts";

const heights = evenly(-400, 5000);
const temperatures = evenly(-40, 50);

describe("airDensity", () => {
  it("falls with height and with temperature", () => {
    fc.assert(
      fc.property(
        heights,
        temperatures,
        evenly(1, 500),
        evenly(0.1, 30),
        (heightM, temperature, up, warmer) => {
          const density = airDensity({ heightM, temperature: celsius(temperature) }) ?? NaN;
          expect(airDensity({ heightM: heightM + up, temperature: celsius(temperature) })).toBeLessThan(
            density,
          );
          expect(airDensity({ heightM, temperature: celsius(temperature + warmer) })).toBeLessThan(density);
        },
      ),
    );
  });

  it("is the standard atmosphere's at its own temperature", () => {
    fc.assert(
      fc.property(heights, (heightM) => {
        const standard = airDensity({ heightM }) ?? NaN;
        const stated = airDensity({ heightM, temperature: celsius(15 - 0.0065 * heightM) });
        expect((stated ?? NaN) / standard).toBeCloseTo(1, 12);
      }),
    );
  });

  // Source: ISO 2533:1975, test/fixtures/atmosphere.json.
  it.each(reference.table)("agrees with the standard atmosphere at $altitude_m m", (row) => {
    const expected = row.if_geopotential.rho_ISO_R287_05287;
    expect((airDensity({ heightM: row.altitude_m }) ?? NaN) / expected).toBeCloseTo(1, 9);
  });

  // Source: test/fixtures/atmosphere.json, with the gas constant of US Standard Atmosphere 1976: good to 1e-6.
  it.each(reference.off_standard)("agrees at $altitude_m_geopotential m and $T_K K", (row) => {
    const temperature = celsius(row.T_K - 273.15);
    const density = airDensity({ heightM: row.altitude_m_geopotential, temperature }) ?? NaN;
    expect(Math.abs(density / row.rho - 1)).toBeLessThan(1e-6);
  });

  it("is undefined beyond the heights and temperatures that it knows, not at their ends", () => {
    for (const heightM of [-2000, 11_000]) {
      expect(airDensity({ heightM })).toBeGreaterThan(0);
      for (const end of [-100, 100])
        expect(airDensity({ heightM, temperature: celsius(end) })).toBeGreaterThan(0);
    }
    for (const heightM of [-2001, 11_001, NaN, Infinity]) expect(airDensity({ heightM })).toBeUndefined();
    expect(airDensity({ heightM: 0, temperature: celsius(-101) })).toBeUndefined();
    expect(airDensity({ heightM: 0, temperature: celsius(101) })).toBeUndefined();
  });
});

describe("dynamicPressurePa", () => {
  it("is zero at rest and grows with the square of the airspeed", () => {
    expect(dynamicPressurePa(mps(0))).toBe(0);
    fc.assert(
      fc.property(evenly(1, 100), evenly(0.1, 5), (speed, factor) => {
        const ratio = dynamicPressurePa(mps(speed * factor)) / dynamicPressurePa(mps(speed));
        expect(ratio / factor ** 2).toBeCloseTo(1, 12);
      }),
    );
  });

  // Source: test/fixtures/atmosphere.json; the gas constants of its two standards differ by 1e-6.
  it.each(reference.dynamic_pressure)("agrees at $V m/s and $altitude_m_geopotential m", (row) => {
    const density = airDensity({ heightM: row.altitude_m_geopotential });
    expect(Math.abs(dynamicPressurePa(mps(row.V), density) / row.q_Pa - 1)).toBeLessThan(1e-6);
  });

  it("takes sea level where no density is stated", () => {
    expect(airDensity({ heightM: 0 })).toBeCloseTo(SEA_LEVEL_DENSITY, 7);
    expect(dynamicPressurePa(mps(20))).toBeCloseTo(245, 9);
  });
});
