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
          expect(found.largest.used).toBe(true);
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
    expect(idle.residuals.every((one) => one.used)).toBe(true);
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
    const onFour = calibrated(read([-100, 0, 100, 125], (percent) => 1500 + 5 * Math.min(110, percent)));
    expect(onFour.kinks).toMatchObject([{ kind: "short", where: "high", meetsPercent: 110 }]);
  });

  it("names clamps of a radio with two spans by the span of their side", () => {
    const found = calibrated(
      read([-150, -130, -100, -50, 0, 50, 100, 130, 150], (percent) => {
        const moved = Math.max(-120, Math.min(110, percent));
        return 1500 + moved * (moved < 0 ? 4 : 5);
      }),
    );
    expect(found.kinks.map((kink) => kink.where)).toEqual(["low", "high"]);
    expect(found.kinks[0]?.meetsPercent).toBeCloseTo(-120, 9);
    expect(found.kinks[1]?.meetsPercent).toBeCloseTo(110, 9);
  });

  it("finds the same whatever the order of the readings, and where each percent is read twice", () => {
    const clamps = fc.double({ min: 105, max: 160, noNaN: true });
    const found = (readings: ReturnType<typeof read>) => {
      const { kinks, fits, centre, per100 } = calibrated(readings);
      return { kinks, fits, centre: centre.toFixed(6), per100: sidesOf(per100).above.toFixed(6) };
    };
    fc.assert(
      fc.property(
        clamps,
        clamps,
        fc.shuffledSubarray([...usual, ...usual], { minLength: 14 }),
        (low, high, shuffled) => {
          const pulseUs = (percent: number) => 1500 + 5 * Math.max(-low, Math.min(high, percent));
          const once = found(read(usual, pulseUs));
          const twice = found(read(shuffled, pulseUs));
          expect({ ...twice, kinks: [] }).toEqual({ ...once, kinks: [] });
          expect(twice.kinks.map(({ where, pulseUs: atUs }) => [where, atUs])).toEqual(
            once.kinks.map(({ where, pulseUs: atUs }) => [where, atUs]),
          );
        },
      ),
    );
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
    const bothShifted = calibrated(
      read(usual, (percent) => 1500 + 5 * percent - (Math.abs(percent) === 125 ? 40 : 0)),
    );
    expect(bothShifted).toMatchObject({ fits: false, kinks: [] });
  });

  it("names no clamp where an end is short by no more than two readings' doubts", () => {
    const percents = Array.from({ length: 22 }, (_, at) => 10 * at - 100);
    const shortBy = (missingUs: number) =>
      calibrated(
        read(percents, (percent) => 1500 + 5 * percent - (percent === 110 ? missingUs : 0)),
        us(5),
      );
    expect(shortBy(9.9)).toMatchObject({ fits: false, kinks: [] });
    expect(shortBy(10.1)).toMatchObject({ fits: true, kinks: [{ kind: "short", where: "high" }] });
  });

  it("leaves no end out while all readings fit, far as the others alone would miss it", () => {
    const pulseUs: Record<number, number> = { 0: 1500, 1: 1505.5, 2: 1511, 100: 2000 };
    const found = calibrated(read([0, 1, 2, 100], (percent) => pulseUs[percent] ?? 0));
    expect(found).toMatchObject({ fits: true, kinks: [] });
    expect(found.residuals.every((one) => one.used)).toBe(true);
  });

  it("says of three readings on one side that they do not fit, and leaves none out", () => {
    const found = calibrated(read([0, 50, 100], (percent) => 1500 + 5 * percent + (percent === 50 ? 20 : 0)));
    expect(found).toMatchObject({ fits: false, kinks: [] });
    expect(typeof found.per100).toBe("number");
  });

  it("keeps one line while all readings fit it, however many of them show two slopes", () => {
    const percents = Array.from({ length: 41 }, (_, at) => 5 * at - 100);
    const found = calibrated(read(percents, (percent) => 1500 + percent * (percent < 0 ? 5 : 5.03)));
    expect(found).toMatchObject({ fits: true, kinks: [] });
    expect(typeof found.per100).toBe("number");
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

  it("states the doubt of each of two spans", () => {
    // By hand as for percents -1, 0, 1 (fit-line.test.ts): the centre has the reading's doubt, each slope root 2 times it.
    const found = calibrated(
      read([-100, 0, 100], (percent) => 1500 + percent * (percent < 0 ? 5 : 5.1)),
      us(2),
    );
    expect(found.centreDoubtUs).toBeCloseTo(2 / Math.sqrt(3), 12);
    const per100DoubtUs = found.per100DoubtUs as { readonly below: number; readonly above: number };
    expect(per100DoubtUs.below).toBeCloseTo(2 * Math.sqrt(2 / 3), 12);
    expect(per100DoubtUs.above).toBeCloseTo(2 * Math.sqrt(2 / 3), 12);
  });

  it("takes the doubt from the readings' scatter where that is the larger", () => {
    // By hand: squares 2 * 3 * 3 over 2 degrees of freedom, so 3 us a reading; centre / 2, slope / sqrt(20000) a percent.
    const measured = [1000, 1503, 1497, 2000];
    const found = calibrateScale(
      [-100, 0, 0, 100].map((percent, at) => ({ percent: pct(percent), pulse: us(measured[at] ?? 0) })),
      doubt,
    );
    if (found.kind !== "calibrated") throw new Error("expected a scale");
    expect(found.fits).toBe(false);
    expect(found.centreDoubtUs).toBeCloseTo(1.5, 12);
    expect(found.per100DoubtUs).toBeCloseTo(300 / Math.sqrt(20000), 12);
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
    expect(calibrateScale(read([50, 50, 100], line), doubt)).toMatchObject({
      kind: "too-few-percents",
      distinct: 2,
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
    expect(calibrateScale(bad.toReversed(), doubt)).toEqual({ kind: "not-finite", index: 0 });
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

  it("rise on one side only", () => {
    const percents = [-100, -50, 0, 50, 100];
    const valley = read(percents, (percent) => 1500 + 5 * Math.abs(percent));
    const ridge = read(percents, (percent) => 1500 - 5 * Math.abs(percent));
    expect(calibrateScale(valley, doubt)).toMatchObject({ kind: "not-rising", abovePer100Us: 500 });
    expect(calibrateScale(ridge, doubt)).toMatchObject({ kind: "not-rising", belowPer100Us: 500 });
  });
});
