import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { type MeasuredRadio, measureRadio } from "../../../packages/core/src/compile/measure-radio.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { smallModel } from "../../support/small-model.ts";

const stated = { name: "field set", step: pct(1), endPoints: "clamp", curvePoints: 0 } as const;

function measured(rows: readonly (readonly [number, number])[], doubtUs = 1): MeasuredRadio {
  const readings = rows.map(([percent, pulse]) => ({ percent: pct(percent), pulse: us(pulse) }));
  const radio = measureRadio(readings, us(doubtUs), stated);
  if (radio.kind !== "measured") throw new Error(radio.kind);
  return radio;
}

describe("measureRadio", () => {
  test("finds any radio back from readings within their doubt, to within the doubt that it states", () => {
    const errors = fc.array(evenly(-1, 1), { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(evenly(1400, 1600), evenly(350, 650), errors, (centreUs, per100Us, off) => {
        const percents = [-100, -50, 0, 50, 100];
        const rows = percents.map(
          (percent, index) => [percent, centreUs + (percent * per100Us) / 100 + (off[index] ?? 0)] as const,
        );
        const { radio, centreUncertaintyUs, per100UncertaintyUs } = measured(rows);
        if (typeof radio.per100 !== "number" || typeof per100UncertaintyUs !== "number") return;
        // All errors at their worst, and the rounding.
        expect(Math.abs(radio.centre - centreUs)).toBeLessThan(1.1 * centreUncertaintyUs);
        expect(Math.abs(radio.per100 - per100Us)).toBeLessThan(2 * per100UncertaintyUs);
        // Errors at their worst may look like an end that falls short.
        expect(radio.reach).toBeGreaterThanOrEqual(98);
      }),
    );
  });

  test("the radio is one that a model compiles with", () => {
    const { radio } = measured([
      [-100, 1001],
      [0, 1500],
      [100, 2000],
    ]);
    const { findings } = compile(smallModel({ radio }));
    expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
  });

  // By hand: 512 us per 100 % about 1500 us.
  test("a straight radio without any error is itself, and its doubt is that of the readings", () => {
    const { radio, centreUncertaintyUs, calibration } = measured([
      [-100, 988],
      [0, 1500],
      [100, 2012],
    ]);
    expect(radio).toEqual({ ...stated, centre: 1500, per100: 512, reach: 100 });
    // The meter's half-width of 1 us over root 3, times two: its own error is in all three readings.
    expect(centreUncertaintyUs).toBeCloseTo(2 / Math.sqrt(3), 9);
    expect(calibration.kinks).toEqual([]);
  });

  test("two spans where the sides differ", () => {
    const { radio } = measured(
      [-100, -50, 0, 50, 100].map((p) => [p, 1500 + (p < 0 ? 4.8 : 5.2) * p] as const),
    );
    expect(radio.per100).toEqual({ below: 480, above: 520 });
  });

  test("the reach ends where a clamp begins, on the step, and is told as a kink", () => {
    const { radio, calibration } = measured(
      [-125, -100, -50, 0, 50, 100, 125].map((p) => [p, Math.min(2012, 1500 + 4.97 * p)] as const),
    );
    expect(calibration.kinks).toMatchObject([{ where: "high" }]);
    // 512 us above the centre is 103.02 %.
    expect(radio.reach).toBe(103);
  });

  test("says why there is no radio", () => {
    const readings = [-50, 50].map((p) => ({ percent: pct(p), pulse: us(1500 + p) }));
    expect(measureRadio(readings, us(1), stated)).toMatchObject({ kind: "too-few-readings" });
    const three = [-50, 0, 50].map((p) => ({ percent: pct(p), pulse: us(1500 - p) }));
    expect(measureRadio(three, us(1), stated)).toMatchObject({ kind: "not-rising" });
    const rising = [-50, 0, 50].map((p) => ({ percent: pct(p), pulse: us(1500 + 5 * p) }));
    expect(measureRadio(rising, us(1), { ...stated, step: pct(60) })).toMatchObject({ kind: "not-positive" });
  });
});
