import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gridNeighbours } from "../../../packages/core/src/signal/grid.ts";
import { toPulse } from "../../../packages/core/src/signal/percent.ts";
import { type RoundingCandidate, roundJointly } from "../../../packages/core/src/signal/round-jointly.ts";
import type { SignalScale } from "../../../packages/core/src/signal/signal-scale.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";

const candidate = fc
  .record({
    percent: fc.integer({ min: -100, max: 100 }),
    deflectionDeg: fc.double({ min: -30, max: 60, noNaN: true }),
  })
  .map(({ percent, deflectionDeg }): RoundingCandidate<never> => ({ percent: pct(percent), deflectionDeg }));
const servos = fc.array(fc.array(candidate, { minLength: 1, maxLength: 2 }), { minLength: 1, maxLength: 4 });
const wantedDeg = fc.double({ min: -30, max: 60, noNaN: true });

const servo = (...candidates: readonly (readonly [percent: number, deflectionDeg: number])[]) =>
  candidates.map(([percent, deflectionDeg]) => ({ percent: pct(percent), deflectionDeg }));
const percentsOf = (rounded: ReturnType<typeof roundJointly>) => rounded?.chosen.map((one) => one.percent);

describe("roundJointly", () => {
  it("leaves no combination that is closer together, nor an equally close one with less mean error", () => {
    fc.assert(
      fc.property(servos, wantedDeg, (lists, wanted) => {
        const rounded = roundJointly(lists, wanted);
        if (rounded === undefined) throw new Error("every servo has a candidate");
        // Oracle: count through all combinations by the bits of a number.
        for (let bits = 0; bits < 2 ** lists.length; bits++) {
          const degs = lists.map((list, at) => list[(bits >> at) % 2 && list.length - 1]?.deflectionDeg ?? 0);
          const differenceDeg = Math.max(...degs) - Math.min(...degs);
          const errorDeg = Math.abs(degs.reduce((a, b) => a + b, 0) / degs.length - wanted);
          expect(rounded.differenceDeg).toBeLessThanOrEqual(differenceDeg + 0.02 + 1e-9);
          if (differenceDeg < rounded.differenceDeg - 1e-12)
            expect(Math.abs(rounded.meanErrorDeg)).toBeLessThanOrEqual(errorDeg + 1e-9);
        }
      }),
    );
  });

  it("takes 42.02/42.09 rather than 41.79/41.85: nobody can measure that the latter is 0.01 degrees closer", () => {
    const landing = [servo([-53, 42.02], [-52, 41.79]), servo([56, 41.85], [57, 42.09])];
    expect(percentsOf(roundJointly(landing, 42))).toEqual([-53, 57]);
  });

  it("rounds a group of 40 servos each by itself, at once", () => {
    const many = Array.from({ length: 40 }, (_, at) => servo([at, 9.9], [at + 1, 10.2]));
    expect(percentsOf(roundJointly(many, 10))).toEqual(many.map((_, at) => at));
  });

  it("rounds twelve servos together, and thirteen each by itself", () => {
    const group = (count: number) => [
      servo([0, 10.2]),
      ...Array.from({ length: count - 1 }, () => servo([1, 9.9], [2, 10.2])),
    ];
    expect(percentsOf(roundJointly(group(12), 10))).toEqual([0, ...Array(11).fill(2)]);
    expect(percentsOf(roundJointly(group(13), 10))).toEqual([0, ...Array(12).fill(1)]);
  });

  it("takes the nearer candidate of each of many servos, of equally near ones the lower percent", () => {
    const many = Array.from({ length: 13 }, (_, at) => {
      const pair = at % 2 ? servo([-1, 9.75], [2, 10.25]) : servo([2, 9.75], [-1, 10.25]);
      return at % 3 ? pair : pair.toReversed();
    });
    expect(percentsOf(roundJointly(many, 10))).toEqual(many.map(() => -1));
    const uneven = Array.from({ length: 13 }, () => servo([1, 9.8], [2, 10.1]));
    expect(percentsOf(roundJointly(uneven, 10))).toEqual(uneven.map(() => 2));
  });

  it("takes one candidate of each servo, in the servos' order, and states what they give", () => {
    fc.assert(
      fc.property(servos, wantedDeg, (lists, wanted) => {
        const rounded = roundJointly(lists, wanted);
        const degs = rounded?.chosen.map((one) => one.deflectionDeg) ?? [];
        expect(rounded?.chosen.length).toBe(lists.length);
        for (const [at, one] of rounded?.chosen.entries() ?? []) expect(lists[at]).toContain(one);
        expect(rounded?.differenceDeg).toBe(Math.max(...degs) - Math.min(...degs));
      }),
    );
  });

  it("answers the same whatever the order of a servo's candidates", () => {
    fc.assert(
      fc.property(servos, wantedDeg, (lists, wanted) => {
        const turned = lists.map((list) => list.toReversed());
        expect(percentsOf(roundJointly(turned, wanted))).toEqual(percentsOf(roundJointly(lists, wanted)));
      }),
    );
  });

  it("chooses 72/-69 for the level flaps of a tow plane, though 71/-70 is a neighbour too", () => {
    // Worked example of the trade, common practice, no source: 5 us a percent, level at 1858.9 and 1154.1 us, where the
    // flaps move about -0.108 and +0.095 degrees a microsecond; 71/-70 is 0.81 degrees apart, 72/-69 is -0.21.
    const scale: SignalScale<"bench"> = {
      name: "bench",
      centre: us(1500),
      per100: us(500),
      reach: pct(125),
      step: pct(1),
    };
    const flap = (levelUs: number, degPerUs: number) =>
      gridNeighbours(scale, us(levelUs), [us(1142), us(1870)]).map((percent) => ({
        percent,
        deflectionDeg: (toPulse(scale, percent) - levelUs) * degPerUs,
      }));
    const left = flap(1858.9, -0.108);
    const right = flap(1154.1, 0.095);
    expect([left, right].map((flaps) => flaps.map((one) => one.percent))).toEqual([
      [71, 72],
      [-70, -69],
    ]);
    const rounded = roundJointly([left, right], 0);
    expect(percentsOf(rounded)).toEqual([72, -69]);
    expect(rounded?.differenceDeg).toBeCloseTo(0.21, 1);
    expect((left[0]?.deflectionDeg ?? 0) - (right[0]?.deflectionDeg ?? 0)).toBeCloseTo(0.81, 2);
  });

  it("lets the mean error decide between mirrored servos, not the last digit of a double", () => {
    // 0.1 + 0.2 is no double's 0.3: the further pair is closer by 4e-17.
    const left = servo([40, 0.1 + 0.2], [41, 0.9]);
    const right = servo([-41, 0.9], [-40, 0.3]);
    expect(percentsOf(roundJointly([left, right], 0.25))).toEqual([40, -40]);
    expect(percentsOf(roundJointly([left, right], 0.95))).toEqual([41, -41]);
  });

  it("takes the lowest percents where nothing else decides", () => {
    expect(percentsOf(roundJointly([servo([2, 1], [1, -1])], 0))).toEqual([1]);
    // 0.4 and 0.2 are equally far from 0.3, though not as doubles.
    expect(percentsOf(roundJointly([servo([2, 0.2], [1, 0.4])], 0.3))).toEqual([1]);
  });

  it("finds the one of 16 combinations of four servos that agrees", () => {
    const four = [1, 2, 3, 4].map((at) => servo([at, 10], [at + 10, at]));
    expect(percentsOf(roundJointly(four, 0))).toEqual([1, 2, 3, 4]);
  });

  it("has no answer without servos, or where one has no candidate", () => {
    expect(roundJointly([], 0)).toBeUndefined();
    expect(roundJointly([servo([1, 1]), []], 0)).toBeUndefined();
  });
});
