import fc from "fast-check";
import { expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { deg, pct, us } from "../../../packages/core/src/units/quantity.ts";
import { smallModel, smallSurface } from "../../support/small-model.ts";

// The other side's level is off by parts of a step, so that the two are rounded together, and only one of them has the stick.
test("a place that is asked of a channel twice is entered as one value, though its twin is asked for it once", () => {
  const offsets = fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 }));
  const rests = fc.integer({ min: -20, max: 20 }).map((tenths) => deg(tenths / 10));
  fc.assert(
    fc.property(offsets, rests, (offset, rest) => {
      const side = (channel: number, by: number) => {
        const { readings = [], ...bench } = smallSurface().servo?.bench ?? {
          level: us(1500),
          down: us(1800),
        };
        return smallSurface(
          {
            ...bench,
            level: us(1500 + by),
            readings: readings.map(([pulseUs, angle]) => [us(pulseUs + by), angle]),
          },
          { channel },
        );
      };
      const plan = compile(
        smallModel({
          radio: { ...smallModel().radio, step: pct(1) },
          surfaces: { left: side(1, offset[0]), right: side(2, offset[1]) },
          groups: { pair: { kind: "matched", surfaces: ["left", "right"], within: deg(1) } },
          controls: {
            lever: { kind: "selector", detents: ["stowed", "landing"] },
            brake: { kind: "stick", rests: 1 },
          },
          moves: {
            lever: { stowed: { pair: rest }, landing: { pair: deg(12) } },
            brake: { left: [deg(5), deg(0)] },
          },
          failsafe: {},
        }),
      );
      expect(plan.findings.filter(({ severity }) => severity === "error")).toEqual([]);
      for (const { settings, neutral } of plan.channels)
        for (const { detent, stick, enter } of settings)
          if (detent === "stowed" || stick === 1) expect(enter.percent).toBe(neutral.percent);
    }),
  );
});
