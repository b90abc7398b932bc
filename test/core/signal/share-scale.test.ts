import fc from "fast-check";
import { expect, test } from "vitest";
import { toPercent, toPulse } from "../../../packages/core/src/signal/percent.ts";
import { shareScale } from "../../../packages/core/src/signal/share-scale.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";

const limits = fc
  .tuple(fc.double({ min: 800, max: 1500, noNaN: true }), fc.double({ min: 100, max: 1200, noNaN: true }))
  .map(([lowUs, spanUs]) => [lowUs, lowUs + spanUs] as const);

test("a share is the way from the low limit to the high one: -100 at the one, +100 at the other, straight between", () => {
  fc.assert(
    fc.property(limits, fc.double({ min: -100, max: 100, noNaN: true }), ([lowUs, highUs], share) => {
      const scale = shareScale([lowUs, highUs], { step: pct(0.5) });
      const pulseUs = lowUs + ((highUs - lowUs) * (share + 100)) / 200;
      expect(toPulse(scale, pct(share))).toBeCloseTo(pulseUs, 8);
      expect(toPercent(scale, us(pulseUs))).toBeCloseTo(share, 8);
    }),
  );
});

// 1141.5 + 393.45 = 1534.95 and 51 x 393.45 / 100 = 200.6595, by hand.
test("limits at 1141.5 and 1928.4 us give 1735.6095 us at a share of 51", () => {
  const scale = shareScale([1141.5, 1928.4], { step: pct(0.5) });
  expect(toPulse(scale, pct(51))).toBeCloseTo(1735.6095, 9);
  expect([scale.reach, scale.step]).toEqual([100, 0.5]);
});
