import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as format from "../../../packages/core/src/units/format.ts";
import {
  amps,
  celsius,
  deg,
  degPerS,
  degPerUs,
  grams,
  m,
  mm,
  mps,
  newtons,
  nm,
  pct,
  s,
  us,
  volts,
} from "../../../packages/core/src/units/quantity.ts";

const { formatNumber, formatTrimmed } = format;
const decimals = fc.integer({ min: 0, max: 9 });
const value = fc.double({ min: -3000, max: 3000, noNaN: true });

describe("formatNumber", () => {
  it("gives plain digits with exactly the decimals asked, within half a unit of the last", () => {
    fc.assert(
      fc.property(value, decimals, (number, places) => {
        const text = formatNumber(number, places);
        expect(text).toMatch(places === 0 ? /^-?\d+$/ : new RegExp(`^-?\\d+\\.\\d{${places}}$`));
        expect(Math.abs(Number(text) - number)).toBeLessThanOrEqual(0.5 * 10 ** -places * (1 + 1e-6));
      }),
    );
  });

  it("never writes a minus before zero", () => {
    fc.assert(
      fc.property(value, decimals, (number, places) => {
        const text = formatNumber(number / 10 ** places, places);
        expect(Object.is(Number(text), -0)).toBe(false);
      }),
    );
    expect(formatNumber(-0.04, 1)).toBe("0.0");
    expect(formatNumber(-0, 0)).toBe("0");
    expect(formatNumber(-0.06, 1)).toBe("-0.1");
  });

  it("rounds a tie away from zero on both sides", () => {
    expect([0.5, 2.5, -0.5, -2.5].map((tie) => formatNumber(tie, 0))).toEqual(["1", "3", "-1", "-3"]);
  });
});

describe("formatTrimmed", () => {
  it("states the same number as formatNumber in no more digits than needed", () => {
    fc.assert(
      fc.property(value, decimals, (number, places) => {
        const text = formatTrimmed(number, places);
        expect(Number(text)).toBe(Number(formatNumber(number, places)));
        expect(text).not.toMatch(/\.\d*0$|\.$/);
      }),
    );
  });

  it("keeps the zeros of a whole number", () => {
    expect(formatTrimmed(1500, 0)).toBe("1500");
    expect(formatTrimmed(1500, 2)).toBe("1500");
    expect(formatTrimmed(72.5, 2)).toBe("72.5");
    expect(formatTrimmed(-0.001, 2)).toBe("0");
  });
});

describe("a quantity as text", () => {
  it("has its unit in ASCII and the decimals usual for it", () => {
    expect([
      format.formatUs(us(1872.224)),
      format.formatPercent(pct(72.7)),
      format.formatDeg(deg(-16)),
      format.formatMm(mm(29)),
      format.formatSeconds(s(2.5)),
      format.formatNm(nm(0.45)),
      format.formatDegPerS(degPerS(375)),
      format.formatDegPerUs(degPerUs(0.09)),
      format.formatMetres(m(850)),
      format.formatMps(mps(17)),
      format.formatVolts(volts(6)),
      format.formatAmps(amps(3.14)),
      format.formatNewtons(newtons(152.4)),
      format.formatGrams(grams(41.6)),
      format.formatCelsius(celsius(-0.2)),
    ]).toEqual([
      "1872.2 us",
      "72.7 %",
      "-16.0 deg",
      "29.0 mm",
      "2.50 s",
      "0.45 N m",
      "375 deg/s",
      "0.090 deg/us",
      "850 m",
      "17.0 m/s",
      "6.0 V",
      "3.1 A",
      "152 N",
      "42 g",
      "0 degC",
    ]);
  });

  it("takes other decimals, and the unit's own sign", () => {
    expect(format.formatUs(us(1872.224), 3)).toBe("1872.224 us");
    expect(format.formatUs(us(1872.224), undefined, "symbol")).toBe("1872.2 µs");
    expect(format.formatDeg(deg(-0.04), 1, "symbol")).toBe("0.0°");
    expect(format.formatNm(nm(1.37), 1, "symbol")).toBe("1.4 N·m");
    expect(format.formatCelsius(celsius(31), undefined, "symbol")).toBe("31 °C");
  });
});
