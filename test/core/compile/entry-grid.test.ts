import fc from "fast-check";
import { expect, test } from "vitest";
import { entryGrid } from "../../../packages/core/src/compile/entry-grid.ts";
import type { Radio } from "../../../packages/core/src/model/model.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";
import { arbitraryRadio } from "../../support/arbitrary-model.ts";
import { evenly } from "../../support/evenly.ts";
import { smallModel } from "../../support/small-model.ts";

// The tow plane's left flap at 5 us a percent, worked by hand (common practice, no source): safe from 1182 to 1870 us, so that the
// limits are -63 and +74 percent, 1185 and 1870 us; half-way between them stand 1527.5 us, 342.5 us from either.
const safeUs = [1182, 1870] as const;
const gridOf = (endPoints: Radio["endPoints"]) => entryGrid({ ...smallModel().radio, endPoints }, safeUs);

test("limits lie on the grid inside the safe pulses, whichever way they act", () => {
  for (const endPoints of ["clamp", "scale"] as const)
    expect(gridOf(endPoints)?.limits).toEqual({
      low: { percent: -63, pulseUs: 1185 },
      high: { percent: 74, pulseUs: 1870 },
    });
});

test("where limits cut, the percent is on the grid and the share only tells where that is", () => {
  // 1697.7 us are 39.54 percent; 40 are 1700 us, 172.5 of 342.5 us above half-way.
  expect(gridOf("clamp")?.nearest(1697.7, safeUs)).toEqual({ percent: 40, pulseUs: 1700, sharePercent: 50 });
});

test("where limits stretch, the share is on the grid and the percent is what it comes to", () => {
  // 170.2 of 342.5 us are 49.69 percent of the way; 50 are 171.25 us, at 1698.75 us or 39.75 percent.
  expect(gridOf("scale")?.nearest(1697.7, safeUs)).toEqual({
    percent: 39.75,
    pulseUs: 1698.75,
    sharePercent: 50,
  });
});

test("of the values on either side none leaves the safe pulses", () => {
  for (const endPoints of ["clamp", "scale"] as const)
    for (let pulseUs = 1182; pulseUs <= 1870; pulseUs += 1.7)
      for (const entry of gridOf(endPoints)?.around(pulseUs, safeUs) ?? []) {
        expect(entry.pulseUs).toBeGreaterThanOrEqual(1185);
        expect(entry.pulseUs).toBeLessThanOrEqual(1870);
        expect(Math.abs(entry.pulseUs - pulseUs)).toBeLessThan(5);
      }
});

test("both limits can be entered, as the shares -100 and +100 where limits stretch, and no value passes them", () => {
  const safe = fc.tuple(evenly(900, 1490), evenly(1510, 2100));
  fc.assert(
    fc.property(arbitraryRadio, safe, evenly(900, 2100), (radio, ends, pulseUs) => {
      const grid = entryGrid({ ...radio, reach: pct(150), per100: us(512) }, ends);
      if (grid === undefined) throw new Error("no grid");
      const { low, high } = grid.limits;
      for (const [limit, share] of [
        [low, -100],
        [high, 100],
      ] as const) {
        const entry = grid.nearest(limit.pulseUs, ends);
        expect(entry?.sharePercent).toBe(share);
        expect(Math.abs((entry?.pulseUs ?? 0) - limit.pulseUs)).toBeLessThan(1e-9);
        expect(Math.abs((entry?.percent ?? 0) - limit.percent)).toBeLessThan(1e-9);
      }
      for (const entry of grid.around(pulseUs, ends)) {
        expect(entry.pulseUs).toBeGreaterThanOrEqual(low.pulseUs);
        expect(entry.pulseUs).toBeLessThanOrEqual(high.pulseUs);
      }
    }),
    { numRuns: 500 },
  );
});
