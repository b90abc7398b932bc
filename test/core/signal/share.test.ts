import fc from "fast-check";
import { expect, test } from "vitest";
import { toPercent, toPulse } from "../../../packages/core/src/signal/percent.ts";
import { pulseToShare, shareToPulse } from "../../../packages/core/src/signal/share.ts";
import { shareScale } from "../../../packages/core/src/signal/share-scale.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";

const limits = fc
  .tuple(evenly(800, 2200), evenly(800, 2200))
  .filter(([low, high]) => Math.abs(low - high) > 20);

test("a share becomes a pulse and comes back, whichever limit is the lower", () => {
  fc.assert(
    fc.property(limits, evenly(-120, 120), (ends, share) => {
      const pulseUs = shareToPulse(ends, share);
      expect(pulseToShare(ends, pulseUs)).toBeCloseTo(share, 9);
      // Arithmetic: so many hundredths of the way from one end to the other.
      expect(pulseUs).toBeCloseTo(ends[0] + ((share + 100) / 200) * (ends[1] - ends[0]), 9);
    }),
  );
});

test("the scale of shares has the same bits", () => {
  fc.assert(
    fc.property(limits, evenly(-100, 100), evenly(800, 2200), ([a, b], share, pulseUs) => {
      const ends = [Math.min(a, b), Math.max(a, b)] as const;
      const scale = shareScale(ends, { step: pct(1) });
      expect(shareToPulse(ends, share)).toBe(toPulse(scale, pct(share)));
      expect(pulseToShare(ends, pulseUs)).toBe(toPercent(scale, us(pulseUs)));
    }),
  );
});

// By hand: half-way 1550 and half the span 350, so that 40 percent are 140 us.
test("between 1200 and 1900 us the share 40 is 1690 us, and the ends are -100 and 100", () => {
  expect(shareToPulse([1200, 1900], 40)).toBe(1690);
  expect(pulseToShare([1200, 1900], 1690)).toBe(40);
  expect([1200, 1900].map((pulseUs) => pulseToShare([1200, 1900], pulseUs))).toEqual([-100, 100]);
});

test("where both limits are one pulse, every share is that pulse and no pulse has a share", () => {
  expect([-100, 0, 73].map((share) => shareToPulse([1500, 1500], share))).toEqual([1500, 1500, 1500]);
  expect(pulseToShare([1500, 1500], 1500)).toBeUndefined();
});
