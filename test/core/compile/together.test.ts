import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { worstDifference } from "../../../packages/core/src/compile/worst-difference.ts";
import type { Model, Reading } from "../../../packages/core/src/model/model.ts";
import { monotoneCurve } from "../../../packages/core/src/numeric/monotone-curve.ts";
import { deg, degPerS, degPerUs, s, us } from "../../../packages/core/src/units/quantity.ts";
import { arbitraryBench } from "../../support/arbitrary-model.ts";
import { evenly } from "../../support/evenly.ts";
import { readings, smallModel, smallServo, smallSurface } from "../../support/small-model.ts";

describe("worstDifference", () => {
  const piecewise = fc.array(fc.tuple(evenly(-30, 30), evenly(-30, 30), evenly(-30, 30), evenly(-30, 30)), {
    minLength: 1,
    maxLength: 5,
  });

  test("finds the furthest place of any piecewise cubic, and nothing on a fine grid is further", () => {
    fc.assert(
      fc.property(piecewise, (pieces) => {
        const breaks = pieces.map((_, index) => index / pieces.length);
        const f = (at: number) => {
          const index = Math.min(pieces.length - 1, Math.floor(at * pieces.length));
          const [a = 0, b = 0, c = 0, d = 0] = pieces[index] ?? [];
          const x = at * pieces.length - index;
          return a + x * (b + x * (c + x * d));
        };
        // Made continuous, so that a break belongs to both of its pieces.
        const shift: number[] = [0];
        pieces.slice(0, -1).forEach(([, b, c, d], index) => {
          shift.push(
            (shift[index] ?? 0) + (pieces[index]?.[0] ?? 0) + b + c + d - (pieces[index + 1]?.[0] ?? 0),
          );
        });
        const whole = (at: number) =>
          f(at) + (shift[Math.min(pieces.length - 1, Math.floor(at * pieces.length))] ?? 0);
        const { at, value } = worstDifference(whole, breaks);
        expect(whole(at)).toBe(value);
        for (let step = 0; step <= 500; step++)
          expect(Math.abs(whole(step / 500))).toBeLessThanOrEqual(Math.abs(value) + 1e-7);
      }),
    );
  });

  test("of a function that is zero throughout is zero at the start", () => {
    expect(worstDifference(() => 0, [0.5])).toEqual({ at: 0, value: 0 });
  });
});

describe("a matched pair", () => {
  const pair = fc.tuple(arbitraryBench, arbitraryBench, evenly(0.2, 0.9));

  test("is never further apart on the way between its detents than the plan says, by an independent walk", () => {
    let compared = 0;
    fc.assert(
      fc.property(pair, ([left, right, share]) => {
        const reach = Math.min(left.reach.high, right.reach.high);
        const model = smallModel({
          surfaces: {
            left: { servo: smallServo({ bench: left.bench }) },
            right: { servo: smallServo({ channel: 2, bench: right.bench }) },
          },
          groups: { both: { kind: "matched", surfaces: ["left", "right"], within: deg(0.1) } },
          moves: {
            lever: {
              stowed: { both: deg(0) },
              takeoff: { both: deg((share * reach) / 2) },
              landing: { both: deg(share * reach) },
            },
          },
        });
        const plan = compile(model);
        const [match] = plan.matches;
        if (match === undefined || plan.findings.some(({ severity }) => severity === "error")) return;
        compared++;
        const walks = plan.channels.map(({ settings }, index) => {
          const [stowed, , landing] = settings.map(({ enter }) => enter.pulseUs);
          const curve = curveOf((index === 0 ? left : right).bench.readings ?? []);
          return (at: number) => curve((stowed ?? 0) + at * ((landing ?? 0) - (stowed ?? 0)));
        });
        for (let step = 0; step <= 400; step++) {
          const [a, b] = walks.map((walk) => walk(step / 400));
          expect(Math.abs((a ?? Number.NaN) - (b ?? Number.NaN))).toBeLessThanOrEqual(match.worstDeg + 1e-6);
        }
      }),
    );
    expect(compared).toBeGreaterThan(5);
  });

  test("is entered as near to each other as any two neighbours on the grid allow", () => {
    const other = readings([1200, -31], [1350, -14.6], [1500, 0.2], [1650, 15.7], [1800, 31]);
    const model = smallModel({
      surfaces: { left: smallSurface(), right: smallSurface({ readings: other }, { channel: 2 }) },
      groups: { both: { kind: "matched", surfaces: ["left", "right"], within: deg(1) } },
      moves: {
        lever: { stowed: { both: deg(0.2) }, takeoff: { both: deg(12.3) }, landing: { both: deg(25.1) } },
      },
    });
    const curves = [curveOf(smallSurface().servo?.bench.readings ?? []), curveOf(other)];
    const [left = [], right = []] = compile(model).channels.map(({ settings }) => settings);
    left.forEach((setting, index) => {
      const twin = right[index];
      const apart = (a: number, b: number) => Math.abs((curves[0]?.(a) ?? 0) - (curves[1]?.(b) ?? 0));
      const chosen = apart(setting.enter.pulseUs, twin?.enter.pulseUs ?? 0);
      const around = (exactUs: number) => [Math.floor(exactUs / 5) * 5, Math.ceil(exactUs / 5) * 5];
      for (const a of around(setting.exact.pulseUs))
        for (const b of around(twin?.exact.pulseUs ?? 0))
          expect(chosen).toBeLessThanOrEqual(apart(a, b) + 0.02 + 1e-9);
    });
  });
});

test("a Y lead puts its two surfaces as far off to one side as to the other, and states both", () => {
  const other = readings([1200, -33], [1350, -16.5], [1500, 0], [1650, 16.5], [1800, 33]);
  const model = smallModel({
    surfaces: {
      left: smallSurface({}, { yLead: true }),
      right: smallSurface({ readings: other }, { yLead: true }),
    },
    groups: { both: { kind: "together", surfaces: ["left", "right"] } },
    moves: { lever: { stowed: { both: deg(0) }, takeoff: {}, landing: { both: deg(21) } } },
  });
  const [channel] = compile(model).channels;
  expect(channel?.servos).toEqual(["left", "right"]);
  const landing = channel?.settings.filter(({ detent }) => detent === "landing") ?? [];
  expect(landing.map(({ surface }) => surface)).toEqual(["left", "right"]);
  // 0.1 and 0.11 degrees a microsecond: 200 us give 20 and 22 degrees.
  expect(landing.map(({ exact }) => exact.pulseUs)).toEqual([
    expect.closeTo(1700, 6),
    expect.closeTo(1700, 6),
  ]);
  expect(landing.map(({ gives }) => gives?.errorDeg)).toEqual([expect.closeTo(-1, 6), expect.closeTo(1, 6)]);
});

test("timed travel: all channels take the same time for the longest way, stated per full scale too", () => {
  const type = { rotation: degPerUs(0.1), speed: degPerS(400) };
  const model: Model = smallModel({
    surfaces: { flap: smallSurface({}, { type }), other: smallSurface({}, { channel: 2 }) },
    moves: {
      lever: {
        stowed: {},
        takeoff: { flap: deg(5), other: deg(1) },
        landing: { flap: deg(20), other: deg(2) },
      },
    },
    transit: { lever: s(2) },
  });
  const [flap, other] = compile(model).channels.map(({ transits }) => transits ?? []);
  const whole = (list: typeof flap) => list?.find(({ from, to }) => from === "stowed" && to === "landing");
  // 200 us in 2 s are 100 us a second; from -100 to +100 percent, 1000 us, 10 s. 20 degrees at 400 a second: 0.05 s.
  expect(whole(flap)).toEqual({
    control: "lever",
    from: "stowed",
    to: "landing",
    seconds: 2,
    secondsPerFullScale: 10,
    fastestSeconds: expect.closeTo(0.05, 9),
  });
  expect(whole(other)).toEqual({
    control: "lever",
    from: "stowed",
    to: "landing",
    seconds: 2,
    secondsPerFullScale: 100,
  });
  expect(flap?.map(({ from, to, seconds }) => [from, to, seconds])).toEqual([
    ["stowed", "takeoff", 0.5],
    ["takeoff", "landing", 1.5],
    ["stowed", "landing", 2],
  ]);
});

test("adding a control without moves changes no byte elsewhere", () => {
  const { controls, moves } = smallModel();
  const more = smallModel({
    controls: { ...controls, spare: { kind: "stick" } },
    moves: { ...moves, spare: {} },
  });
  const plan = compile(smallModel());
  expect(compile(more)).toEqual({
    ...plan,
    controls: [...plan.controls, expect.objectContaining({ control: "spare" })],
  });
});

function curveOf(list: readonly Reading[]): (pulseUs: number) => number {
  const points = list
    .map(([pulse, at]) => [pulse as number, at as number] as const)
    .sort(([a], [b]) => a - b);
  const curve = monotoneCurve(
    points.map(([pulse]) => pulse),
    points.map(([, at]) => at),
  );
  return (pulseUs) => curve.valueAt(us(pulseUs)) ?? Number.NaN;
}
