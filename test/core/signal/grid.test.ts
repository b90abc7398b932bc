import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  gridNeighbours,
  roundInside,
  roundInward,
  roundPercent,
} from "../../../packages/core/src/signal/grid.ts";
import { toPercent, toPulse } from "../../../packages/core/src/signal/percent.ts";
import type { SignalScale } from "../../../packages/core/src/signal/signal-scale.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";
import { everyPercent, pulses, ranges, scales } from "./arbitraries.ts";

const percents = fc.double({ min: -150, max: 150, noNaN: true }).map(pct);

function scaleOf(per100Us: number, stepPercent: number, reachPercent = 125): SignalScale<"bench"> {
  return {
    name: "bench",
    centre: us(1500),
    per100: us(per100Us),
    reach: pct(reachPercent),
    step: pct(stepPercent),
  };
}

describe("roundPercent", () => {
  it("gives clean multiples of the step inside the reach, on the side asked, by less than one step", () => {
    fc.assert(
      fc.property(scales, percents, fc.constantFrom("nearest", "up", "down"), (scale, percent, rounding) => {
        const grid = everyPercent(scale);
        const above = grid.find((one) => one >= percent);
        const below = grid.findLast((one) => one <= percent);
        const rounded = roundPercent(scale, percent, rounding);
        const isPastReach = Math.abs(percent) > scale.reach + 1e-9 * scale.step;
        if (isPastReach) expect(rounded).toBeUndefined();
        else if (rounding === "up") expect(rounded).toBe(above);
        else if (rounding === "down") expect(rounded).toBe(below);
        else expect([above, below]).toContain(rounded);
      }),
    );
  });

  it("is within half a step of the percent when it rounds to nearest on a reach that is a multiple of the step", () => {
    fc.assert(
      fc.property(scales, fc.double({ min: -1, max: 1, noNaN: true }), (any, part) => {
        const scale = { ...any, reach: pct(100) };
        const percent = pct(part * 100);
        const rounded = roundPercent(scale, percent, "nearest");
        expect(Math.abs((rounded ?? Number.NaN) - percent)).toBeLessThanOrEqual(
          (scale.step / 2) * (1 + 1e-9),
        );
      }),
    );
  });

  it("never falls as the percent grows, and leaves a value of the grid as it is", () => {
    fc.assert(
      fc.property(
        scales,
        percents,
        percents,
        fc.constantFrom("nearest", "up", "down"),
        (scale, a, b, rounding) => {
          const low = roundPercent(scale, pct(Math.min(a, b)), rounding);
          const high = roundPercent(scale, pct(Math.max(a, b)), rounding);
          if (low === undefined || high === undefined) return;
          expect(low).toBeLessThanOrEqual(high);
          expect(roundPercent(scale, low, rounding)).toBe(low);
        },
      ),
    );
  });

  it("has the step's decimals: three tenths are 0.3", () => {
    expect(roundPercent(scaleOf(500, 0.1), pct(0.1 * 3), "nearest")).toBe(0.3);
    expect(roundPercent(scaleOf(500, 0.25), pct(72.7), "nearest")).toBe(72.75);
  });

  it("sends a tie away from zero on both sides, and gives a plain zero", () => {
    expect(roundPercent(scaleOf(500, 1), pct(72.5), "nearest")).toBe(73);
    expect(roundPercent(scaleOf(500, 1), pct(-72.5), "nearest")).toBe(-73);
    expect(roundPercent(scaleOf(500, 1), pct(-0.4), "nearest")).toBe(0);
  });

  it("stays inside a reach that is no multiple of the step, and knows nothing past the reach", () => {
    const scale = scaleOf(500, 2, 125);
    expect(roundPercent(scale, pct(124.9), "nearest")).toBe(124);
    expect(roundPercent(scale, pct(124.9), "up")).toBeUndefined();
    expect(roundPercent(scale, pct(-124.9), "down")).toBeUndefined();
    expect(roundPercent(scale, pct(126), "nearest")).toBeUndefined();
  });
});

describe("roundInward", () => {
  it("gives the lowest and the highest of all values whose pulse is inside, for any scale and range", () => {
    fc.assert(
      fc.property(scales, ranges, (scale, range) => {
        const inside = everyPercent(scale).filter((percent) => {
          const pulse = toPulse(scale, pct(percent));
          return pulse >= range[0] && pulse <= range[1];
        });
        const expected = inside.length === 0 ? undefined : { low: inside[0], high: inside.at(-1) };
        expect(roundInward(scale, range)).toEqual(expected);
      }),
    );
  });

  it("is not betrayed by floating point where the range ends on the grid or one double inside it", () => {
    fc.assert(
      fc.property(scales, percents, (scale, percent) => {
        const onGrid = roundPercent(scale, percent, "nearest");
        if (onGrid === undefined) return;
        const pulse = toPulse(scale, onGrid);
        expect(roundInward(scale, [pulse, pulse])).toEqual({ low: onGrid, high: onGrid });
        const next = us(pulse * (1 + Number.EPSILON));
        const inward = roundInward(scale, [next, us(next + 100)]);
        if (inward) expect(inward.low).toBeGreaterThan(onGrid);
      }),
    );
  });

  it("rounds the guarded ends of two flaps inward: 1182..1870 us at 5 us a percent is -63..+74", () => {
    // Worked example of the trade, common practice, no source.
    expect(roundInward(scaleOf(500, 1), [us(1182), us(1870)])).toEqual({ low: -63, high: 74 });
    expect(roundInward(scaleOf(512, 0.1), [us(1208), us(1890)])).toEqual({ low: -57, high: 76.1 });
  });

  it("has no value in a range between two of the grid, upside down, or past the reach", () => {
    const scale = scaleOf(500, 1);
    expect(roundInward(scale, [us(1501), us(1504)])).toBeUndefined();
    expect(roundInward(scale, [us(1600), us(1400)])).toBeUndefined();
    expect(roundInward(scale, [us(2130), us(2200)])).toBeUndefined();
    expect(roundInward(scale, [us(1000), us(2200)])).toEqual({ low: -100, high: 125 });
  });
});

describe("gridNeighbours and roundInside", () => {
  it("never leave the range or the reach, and find a value wherever there is one", () => {
    fc.assert(
      fc.property(scales, pulses, ranges, (scale, pulse, range) => {
        const inward = roundInward(scale, range);
        const neighbours = gridNeighbours(scale, pulse, range);
        const nearest = roundInside(scale, pulse, range);
        expect(nearest === undefined).toBe(inward === undefined);
        expect(neighbours.length === 0).toBe(inward === undefined);
        for (const percent of [...neighbours, ...(nearest === undefined ? [] : [nearest])]) {
          const enteredUs = toPulse(scale, percent);
          expect(enteredUs >= range[0] && enteredUs <= range[1]).toBe(true);
          expect(Math.abs(percent)).toBeLessThanOrEqual(scale.reach);
        }
      }),
    );
  });

  it("round to the nearest of all values inside", () => {
    fc.assert(
      fc.property(scales, pulses, ranges, (scale, pulse, range) => {
        const awayUs = everyPercent(scale)
          .map((percent) => toPulse(scale, pct(percent)))
          .filter((enteredUs) => enteredUs >= range[0] && enteredUs <= range[1])
          .map((enteredUs) => Math.abs(enteredUs - pulse));
        const nearest = roundInside(scale, pulse, range);
        if (nearest !== undefined)
          expect(Math.abs(toPulse(scale, nearest) - pulse)).toBe(Math.min(...awayUs));
      }),
    );
  });

  it("stand on either side of a pulse that the range leaves room around, one step apart", () => {
    fc.assert(
      fc.property(scales, fc.double({ min: -0.8, max: 0.8, noNaN: true }), (any, part) => {
        const scale = { ...any, reach: pct(100) };
        const pulse = toPulse(scale, pct(part * 100));
        const neighbours = gridNeighbours(scale, pulse, [us(500), us(2500)]);
        const [low = Number.NaN, high = low] = neighbours;
        expect(toPulse(scale, pct(low))).toBeLessThanOrEqual(pulse);
        expect(toPulse(scale, pct(high))).toBeGreaterThanOrEqual(pulse);
        if (neighbours.length === 2) expect(high - low).toBeCloseTo(scale.step, 9);
        else expect(toPulse(scale, pct(low))).toBe(pulse);
      }),
    );
  });

  it("never fall as the pulse grows", () => {
    fc.assert(
      fc.property(scales, pulses, pulses, ranges, (scale, a, b, range) => {
        const low = roundInside(scale, us(Math.min(a, b)), range);
        const high = roundInside(scale, us(Math.max(a, b)), range);
        if (low !== undefined && high !== undefined) expect(low).toBeLessThanOrEqual(high);
      }),
    );
  });

  it("bring back the percent whose pulse they are given", () => {
    fc.assert(
      fc.property(scales, percents, (scale, percent) => {
        const entered = roundPercent(scale, percent, "nearest");
        if (entered === undefined) return;
        const pulse = toPulse(scale, entered);
        expect(gridNeighbours(scale, pulse, [us(100), us(3000)])).toEqual([entered]);
        expect(roundPercent(scale, toPercent(scale, pulse), "nearest")).toBe(entered);
      }),
    );
  });

  it("keep a setting at the limit inside, where the nearest value of all is past it", () => {
    const scale = scaleOf(500, 1);
    // 1868 us is 73.6 percent: 74 is nearer, but its 1870 us are past 1869.
    expect(roundInside(scale, us(1868), [us(1182), us(1869)])).toBe(73);
    expect(gridNeighbours(scale, us(1868), [us(1182), us(1869)])).toEqual([73]);
    expect(gridNeighbours(scale, us(1868), [us(1182), us(1870)])).toEqual([73, 74]);
  });

  it("give the value at the end for a pulse outside the range", () => {
    const scale = scaleOf(500, 1);
    expect(roundInside(scale, us(1100), [us(1182), us(1870)])).toBe(-63);
    expect(gridNeighbours(scale, us(2400), [us(1182), us(2400)])).toEqual([125]);
  });
});
