import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { calibrateScale, type ScaleCalibration } from "../../../packages/core/src/signal/calibrate-scale.ts";
import { toPulse } from "../../../packages/core/src/signal/percent.ts";
import type { SignalScale } from "../../../packages/core/src/signal/signal-scale.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";
import { scales } from "./arbitraries.ts";

const doubt = us(1);
const usual = [-125, -100, -50, 0, 50, 100, 125];
const signs = fc.array(fc.constantFrom(-1, 0, 1), { minLength: usual.length, maxLength: usual.length });

const read = (percents: readonly number[], pulseUs: (percent: number) => number) =>
  percents.map((percent) => ({ percent: pct(percent), pulse: us(pulseUs(percent)) }));

function calibrated(readings: ReturnType<typeof read>, half = doubt): ScaleCalibration {
  const result = calibrateScale(readings, half);
  if (result.kind !== "calibrated") throw new Error(`expected a scale, got ${JSON.stringify(result)}`);
  return result;
}

const sidesOf = (per100: SignalScale["per100"]) =>
  typeof per100 === "number" ? { below: per100, above: per100 } : per100;

describe("calibrateScale", () => {
  it("finds any scale again from its own pulses, one span or two", () => {
    fc.assert(
      fc.property(scales, (scale) => {
        const found = calibrated(
          read(usual, (percent) => toPulse(scale, pct(percent))),
          us(0),
        );
        expect(found.centre).toBeCloseTo(scale.centre, 6);
        const [is, was] = [sidesOf(found.per100), sidesOf(scale.per100)];
        expect(is.below).toBeCloseTo(was.below, 5);
        expect(is.above).toBeCloseTo(was.above, 5);
        expect([found.fits, found.kinks]).toEqual([true, []]);
      }),
    );
  });

  it("keeps one straight line while all readings agree with one to their doubt", () => {
    fc.assert(
      fc.property(signs, fc.constantFrom(400, 500, 512), (noise, span) => {
        const found = calibrated(
          read(usual, (percent) => 1500 + (percent * span) / 100 + (noise[usual.indexOf(percent)] ?? 0) / 2),
        );
        expect(typeof found.per100).toBe("number");
        expect(found.kinks).toEqual([]);
        expect(Math.abs(found.centre - 1500)).toBeLessThanOrEqual(0.5);
        expect(Math.abs(found.centre - 1500)).toBeLessThan(3 * found.centreDoubtUs);
      }),
    );
  });

  it("leaves residuals that add up to nothing, and names the largest", () => {
    fc.assert(
      fc.property(signs, (noise) => {
        const found = calibrated(
          read(usual, (percent) => 1520 + 4 * percent + (noise[usual.indexOf(percent)] ?? 0)),
          us(2),
        );
        const all = found.residuals.map((one) => one.residualUs);
        expect(Math.abs(all.reduce((a, b) => a + b, 0))).toBeLessThan(1e-9);
        expect(Math.abs(found.largest.residualUs)).toBe(Math.max(...all.map(Math.abs)));
        expect(found.residuals[found.largest.index]).toEqual(found.largest);
      }),
    );
  });

  it("tells two spans from one once they differ by more than the readings' doubt can explain", () => {
    const uneven = (above: number) =>
      calibrated(read([-100, -50, 0, 50, 100], (percent) => 1500 + percent * (percent < 0 ? 5 : above)))
        .per100;
    expect(typeof uneven(5.01)).toBe("number");
    expect(sidesOf(uneven(5.2)).above).toBeCloseTo(520, 9);
    expect(sidesOf(uneven(5.2)).below).toBeCloseTo(500, 9);
  });

  it("names a clamp by its readings and by the percent where it begins, and fits the others", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 101, max: 118, noNaN: true }),
        fc.constantFrom(400, 500, 512),
        (clamp, span) => {
          const percents = [-100, -50, 0, 50, 100, 120, 130, 140];
          const found = calibrated(
            read(percents, (percent) => 1500 + (Math.min(percent, clamp) * span) / 100),
          );
          expect(found.per100).toBeCloseTo(span, 9);
          expect(found.kinks).toHaveLength(1);
          expect(found.kinks[0]).toMatchObject({
            kind: "flat",
            where: "high",
            fromPercent: 120,
            toPercent: 140,
          });
          expect(found.kinks[0]?.meetsPercent).toBeCloseTo(clamp, 9);
          expect(found.residuals.filter((one) => !one.used).map((one) => one.index)).toEqual([5, 6, 7]);
        },
      ),
    );
  });

  it("names clamps at both ends, and a stretch inside where nothing moves", () => {
    const both = calibrated(
      read([-150, -125, -50, 0, 50, 125, 150], (p) => 1500 + 5 * Math.max(-110, Math.min(110, p))),
    );
    expect(both.kinks.map(({ where, pulseUs }) => [where, pulseUs])).toEqual([
      ["low", 950],
      ["high", 2050],
    ]);
    const idle = calibrated(
      read([-100, -50, -10, 10, 50, 100], (p) => 1500 + 5 * (p - Math.max(-10, Math.min(10, p)))),
    );
    expect(idle.kinks).toMatchObject([{ kind: "flat", where: "inside", fromPercent: -10, toPercent: 10 }]);
    expect(idle.fits).toBe(false);
  });

  it("names an end that falls short where one reading lies past a clamp, on one side or on both", () => {
    const clamped = (low: number, high: number) =>
      calibrated(read(usual, (percent) => 1500 + 5 * Math.max(-low, Math.min(high, percent))));
    expect(clamped(150, 110)).toMatchObject({
      centre: 1500,
      per100: 500,
      fits: true,
      kinks: [
        { kind: "short", where: "high", fromPercent: 100, toPercent: 125, pulseUs: 2050, meetsPercent: 110 },
      ],
    });
    expect(clamped(110, 110).kinks.map((kink) => [kink.where, kink.meetsPercent])).toEqual([
      ["low", -110],
      ["high", 110],
    ]);
  });

  it("says that a misread pulse in the middle does not fit, and leaves nothing out for it", () => {
    const found = calibrated(read(usual, (percent) => 1500 + 5 * percent + (percent === 50 ? 20 : 0)));
    expect(found).toMatchObject({ fits: false, kinks: [], largest: { index: 4 } });
    expect(found.residuals.every((one) => one.used)).toBe(true);
    expect(typeof found.per100).toBe("number");
  });

  it("names no clamp where an end goes further than the others let expect", () => {
    const found = calibrated(read(usual, (percent) => 1500 + 5 * percent + (percent === 125 ? 40 : 0)));
    expect(found).toMatchObject({ fits: false, kinks: [] });
  });

  it("names no clamp where only three readings would be left to bear two spans", () => {
    const bulgeUs: Record<number, number> = { [-100]: 1000, [-50]: 1240, 0: 1500, 50: 1775, 100: 2000 };
    const found = calibrated(read([-100, -50, 0, 50, 100], (percent) => bulgeUs[percent] ?? 0));
    expect(found).toMatchObject({ fits: false, kinks: [] });
  });

  it("names no clamp at percents so close together that their pulses agree within the doubt", () => {
    const found = calibrated(read([-100, -50, 0, 50, 100, 100.2], (percent) => 1500 + 5 * percent));
    expect(found).toMatchObject({ fits: true, kinks: [] });
    expect(found.residuals.every((one) => one.used)).toBe(true);
  });

  it("never states a doubt below what the readings' own doubt allows", () => {
    // By hand: readings at -100, 0, 100 of standard doubt 1/sqrt(3): centre /sqrt(3), slope /sqrt(20000) a percent.
    const found = calibrated(read([-100, 0, 100], (percent) => 1500 + 5 * percent));
    expect(found.centreDoubtUs).toBeCloseTo(1 / 3, 12);
    expect(found.per100DoubtUs).toBeCloseTo(100 / Math.sqrt(60000), 12);
  });
});

describe("readings that give no scale", () => {
  it("are too few, or at too few percents, with and without a clamp", () => {
    const line = (percent: number) => 1500 + 5 * percent;
    expect(calibrateScale(read([0, 100], line), doubt)).toEqual({
      kind: "too-few-readings",
      count: 2,
      needed: 3,
    });
    expect(calibrateScale(read([50, 50, 50], line), doubt)).toEqual({
      kind: "too-few-percents",
      distinct: 1,
      leftOut: 0,
      needed: 3,
    });
    const clamped = (percent: number) => line(Math.max(-110, Math.min(110, percent)));
    expect(calibrateScale(read([-150, -125, 0, 125, 150], clamped), doubt)).toEqual({
      kind: "too-few-percents",
      distinct: 1,
      leftOut: 4,
      needed: 3,
    });
  });

  it("are not finite, as from JavaScript", () => {
    const bad = [
      ...read([-100, 0], (percent) => 1500 + percent),
      { percent: pct(100), pulse: Number.NaN as never },
    ];
    expect(calibrateScale(bad, doubt)).toEqual({ kind: "not-finite", index: 2 });
  });

  it("do not rise: a reversed channel, or one that does not move", () => {
    const falling = calibrateScale(
      read([-100, 0, 100], (percent) => 1500 - 5 * percent),
      doubt,
    );
    expect(falling).toEqual({ kind: "not-rising", belowPer100Us: -500, abovePer100Us: -500 });
    expect(
      calibrateScale(
        read([-100, 0, 100], () => 1500),
        doubt,
      ).kind,
    ).toBe("not-rising");
  });
});
