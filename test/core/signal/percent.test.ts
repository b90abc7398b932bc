import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toPercent, toPulse } from "../../../packages/core/src/signal/percent.ts";
import type { SignalScale } from "../../../packages/core/src/signal/signal-scale.ts";
import { type Percent, pct, type Us, us } from "../../../packages/core/src/units/quantity.ts";
import signals from "../../fixtures/signals.json" with { type: "json" };
import { pulses, scales } from "./arbitraries.ts";

const percents = fc.double({ min: -150, max: 150, noNaN: true }).map(pct);

function scaleOf<Name extends string>(
  name: Name,
  centreUs: number,
  per100: SignalScale["per100"],
): SignalScale<Name> {
  return { name, centre: us(centreUs), per100, reach: pct(150), step: pct(1) };
}

describe("toPercent and toPulse", () => {
  it("return any pulse to 1e-12 relative", () => {
    fc.assert(
      fc.property(scales, pulses, (scale, pulse) => {
        expect(Math.abs(toPulse(scale, toPercent(scale, pulse)) / pulse - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it("return any percent to 1e-12 of 100 percent, and 0 exactly", () => {
    fc.assert(
      fc.property(scales, percents, (scale, percent) => {
        expect(Math.abs(toPercent(scale, toPulse(scale, percent)) - percent)).toBeLessThan(1e-10);
        expect(toPulse(scale, pct(0))).toBe(scale.centre);
        expect(toPercent(scale, scale.centre)).toBe(0);
      }),
    );
  });

  it("never fall where the other grows", () => {
    fc.assert(
      fc.property(scales, percents, percents, (scale, a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(toPulse(scale, low)).toBeLessThanOrEqual(toPulse(scale, high));
        const [lowUs, highUs] = [us(1500 + 5 * low), us(1500 + 5 * high)];
        expect(toPercent(scale, lowUs)).toBeLessThanOrEqual(toPercent(scale, highUs));
      }),
    );
  });

  it.each(signals.table.rows)("agree with the table of common spans: $pulse_us us is $percent %", (row) => {
    // Common practice, no source: 1000/1500/2000 us, spans of 400, 500 and 512 us, centre 1500 or 1520 us.
    const scale = scaleOf("table", row.centre_us, us(row.us_per_percent * 100));
    expect(toPercent(scale, us(row.pulse_us))).toBeCloseTo(row.percent, 12);
    expect(toPulse(scale, pct(row.percent))).toBeCloseTo(row.pulse_us, 10);
  });

  it("give another percent for the same pulse on another radio", () => {
    // 1697.7 us, worked by hand: 197.7 / 5 and 177.7 / 4.
    expect(toPercent(scaleOf("five", 1500, us(500)), us(1697.7))).toBeCloseTo(39.54, 10);
    expect(toPercent(scaleOf("four", 1520, us(400)), us(1697.7))).toBeCloseTo(44.425, 10);
  });

  it("use the span of the side that the value is on", () => {
    const scale = scaleOf("uneven", 1500, { below: us(400), above: us(500) });
    expect([-100, -50, 0, 50, 100].map((percent) => toPulse(scale, pct(percent)))).toEqual([
      1100, 1300, 1500, 1750, 2000,
    ]);
    expect([1100, 1300, 1500, 1750, 2000].map((pulse) => toPercent(scale, us(pulse)))).toEqual([
      -100, -50, 0, 50, 100,
    ]);
  });
});

describe("the name of a scale in the type of a percent", () => {
  const field = scaleOf("field", 1500, us(512));
  const desk = scaleOf("desk", 1500, us(400));

  it("keeps one radio's percent from another's scale, when compiling", () => {
    const ofDesk: Percent<"desk"> = toPercent(desk, us(1700));
    const accepted: Us = toPulse(desk, ofDesk);
    // @ts-expect-error a percent of the desk radio is not one of the field radio
    const mistaken: Us = toPulse(field, ofDesk);
    // What the mistake would do: the same number, another pulse.
    expect([accepted, mistaken]).toEqual([1700, 1756]);
  });

  it("lets a percent of no named scale fit all, and asks for the name where it is known", () => {
    expect([toPulse(field, pct(50)), toPulse(desk, pct(50))]).toEqual([1756, 1700]);
    const ofField = toPercent(field, us(1756));
    // @ts-expect-error a percent of the field radio is not one of the desk radio
    const mistaken: Percent<"desk"> = ofField;
    expect(mistaken).toBe(50);
  });
});
