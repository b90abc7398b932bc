import fc from "fast-check";
import { expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import type { Model } from "../../../packages/core/src/model/model.ts";
import { monotoneCurve } from "../../../packages/core/src/numeric/monotone-curve.ts";
import type { PlanChannel } from "../../../packages/core/src/plan/setup-plan.ts";
import { typedPercent } from "../../../packages/core/src/plan/typed-percent.ts";
import { pct } from "../../../packages/core/src/units/quantity.ts";
import { arbitraryModel } from "../../support/arbitrary-model.ts";
import { readings, smallModel, smallSurface } from "../../support/small-model.ts";

const bent = readings([1200, -20], [1350, -11], [1500, 0], [1650, 14], [1800, 32]);

function curved(points: number, curveSpacing: "equal" | "free" = "equal", step = 0.1): PlanChannel {
  const { radio } = smallModel();
  const model: Model = smallModel({
    radio: { ...radio, curvePoints: points, curveSpacing, step: pct(step) },
    surfaces: { flap: smallSurface({ readings: bent }) },
  });
  const [channel] = compile(model).channels;
  if (channel === undefined) throw new Error("the flap has a channel");
  return channel;
}

const onGrid = (percent: number, step: number) =>
  Math.abs(percent / step - Math.round(percent / step)) < 1e-6;

test("a curve has the radio's points, equally spaced or on the grid, each on the grid and inside the limits, rising or falling throughout", () => {
  fc.assert(
    fc.property(arbitraryModel, (model) => {
      for (const { curve, limits, direction } of compile(model).channels) {
        if (curve === undefined) continue;
        expect(curve).toHaveLength(model.radio.curvePoints);
        curve.forEach((point, index) => {
          const { commandPercent, pulseUs } = point;
          if (model.radio.curveSpacing === "free")
            expect(onGrid(commandPercent, model.radio.step) || Math.abs(commandPercent) === 100).toBe(true);
          else expect(commandPercent).toBeCloseTo(-100 + (200 * index) / (curve.length - 1), 9);
          expect(pulseUs).toBeGreaterThanOrEqual(limits.low.pulseUs);
          expect(pulseUs).toBeLessThanOrEqual(limits.high.pulseUs);
          expect(onGrid(typedPercent(point, model.radio), model.radio.step)).toBe(true);
          const before = curve[index - 1];
          if (before !== undefined)
            expect((pulseUs - before.pulseUs) * (direction === "rising" ? 1 : -1)).toBeGreaterThanOrEqual(0);
        });
      }
    }),
    { numRuns: 40 },
  );
});

/** The worst errors of a curve by an independent, dense walk along it. */
function walkAlong({ curve = [], safeUs }: PlanChannel): { readonly us: number; readonly deg: number } {
  const response = monotoneCurve(
    bent.map(([pulse]) => pulse),
    bent.map(([, at]) => at as number),
  );
  const [lowDeg = 0, highDeg = 0] = safeUs.map((pulse) => response.valueAt(pulse));
  const worst = { us: 0, deg: 0 };
  for (let command = -100; command <= 100; command += 0.01) {
    const to = Math.max(
      1,
      curve.findIndex((point) => point.commandPercent >= command),
    );
    const [a, b] = [curve[to - 1], curve[to]];
    if (a === undefined || b === undefined) throw new Error("the curve spans the command");
    const pulse =
      a.pulseUs +
      ((command - a.commandPercent) / (b.commandPercent - a.commandPercent)) * (b.pulseUs - a.pulseUs);
    const wanted = lowDeg + ((command + 100) / 200) * (highDeg - lowDeg);
    worst.deg = Math.max(worst.deg, Math.abs((response.valueAt(pulse) ?? Number.NaN) - wanted));
    worst.us = Math.max(worst.us, Math.abs((response.inverseAt(wanted) ?? Number.NaN) - pulse));
  }
  return worst;
}

test.each(["equal", "free"] as const)("curveWorstDeg is what a walk along the curve finds: %s", (spacing) => {
  const channel = curved(5, spacing);
  expect(channel.curveWorstDeg).toBeCloseTo(walkAlong(channel).deg, 3);
});

test("more points are better, and five are far better than the straight line of two", () => {
  const [two, three, five, nine] = [2, 3, 5, 9].map((points) => curved(points).curveWorstDeg ?? Number.NaN);
  expect(two).toBeGreaterThan(3);
  expect(three).toBeLessThan((two ?? 0) / 2);
  expect(five).toBeLessThan((three ?? 0) / 2);
  expect(nine).toBeLessThan(five ?? 0);
});

test("points that may stand anywhere do better than equally spaced ones where the response bends unevenly", () => {
  for (const points of [3, 4, 5, 7]) {
    const [equal, free] = [curved(points), curved(points, "free")];
    expect(walkAlong(free).us).toBeLessThan(walkAlong(equal).us);
  }
});

test("a radio without curves, and a bench without degrees, get none", () => {
  expect(curved(0)).not.toHaveProperty("curve");
  const { radio } = smallModel();
  const { readings: _, ...bench } = smallSurface().servo?.bench ?? {
    level: radio.centre,
    down: radio.centre,
  };
  const bare = smallModel({
    radio: { ...radio, curvePoints: 5 },
    surfaces: { flap: { servo: { channel: 1, bench } } },
    moves: { lever: { stowed: {}, takeoff: {}, landing: { flap: { kind: "part", part: 0.5 } } } },
  });
  expect(compile(bare).channels[0]).not.toHaveProperty("curve");
});
