import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gatesOf } from "../../../packages/core/src/curve/gates-of.ts";
import { lineAt, lineThrough } from "../../../packages/core/src/curve/polyline.ts";
import { addSamples, sampleCurve, valueBetween } from "../../../packages/core/src/curve/samples.ts";
import { evenly } from "../../support/evenly.ts";

const cube = (x: number) => x ** 3;
const breaks = fc.array(evenly(-40, 40), { maxLength: 6 });

describe("sampleCurve", () => {
  test("runs from end to end, x rising, through every break inside and none outside, and states f", () => {
    fc.assert(
      fc.property(
        evenly(-30, 0),
        evenly(1, 30),
        breaks,
        fc.integer({ min: 1, max: 60 }),
        (a, b, at, count) => {
          const { x, y } = sampleCurve(cube, [a, b], at, count) ?? { x: [], y: [] };
          expect([x[0], x.at(-1)]).toEqual([a, b]);
          expect(x).toEqual([...new Set(x)].toSorted((one, other) => one - other));
          for (const one of at) expect(x.includes(one)).toBe(one >= a && one <= b);
          expect(y).toEqual(x.map(cube));
        },
      ),
    );
  });

  test("has about the samples that are asked for, six at least between breaks, evenly spread there", () => {
    const of = (at: readonly number[], count: number) => sampleCurve(cube, [0, 12], at, count)?.x ?? [];
    expect(of([], 12)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    expect(of([], 1)).toEqual([0, 2, 4, 6, 8, 10, 12]);
    expect(of([9, 3], 18)).toHaveLength(19);
    expect(of([3, 9], 4)).toEqual(
      [...Array(7).keys()].map((k) => k / 2).concat([4, 5, 6, 7, 8, 9], [9.5, 10, 10.5, 11, 11.5, 12]),
    );
    expect(of([6, 6, 0, 12], 12)).toEqual(of([6], 12));
  });

  test("has each x once where two breaks are neighbouring doubles", () => {
    const x = sampleCurve(cube, [0, 2], [1, 1 + Number.EPSILON], 12)?.x ?? [];
    expect(x).toEqual([...new Set(x)]);
    expect(x).toContain(1 + Number.EPSILON);
  });

  test("is undefined where the ends are not in order or not finite, or f is not", () => {
    for (const ends of [
      [1, 1],
      [2, 1],
      [0, Number.NaN],
      [0, Number.POSITIVE_INFINITY],
    ] as const)
      expect(sampleCurve(cube, ends, [], 12)).toBeUndefined();
    expect(sampleCurve((x) => 1 / x, [0, 1], [], 12)).toBeUndefined();
  });
});

describe("addSamples", () => {
  const samples = { x: [0, 1, 2], y: [10, 11, 12] };

  test("puts new ones where they belong and changes none that is there", () => {
    const more = [
      { x: 1.5, y: 7 },
      { x: 1, y: 99 },
      { x: 0.5, y: 8 },
      { x: 1.5, y: 98 },
    ];
    expect(addSamples(samples, more)).toEqual({ x: [0, 0.5, 1, 1.5, 2], y: [10, 8, 11, 7, 12] });
    expect(addSamples(samples, [])).toEqual(samples);
  });
});

describe("valueBetween", () => {
  test("is the straight line between neighbours, and the sample itself at a sample", () => {
    fc.assert(
      fc.property(evenly(0, 1), evenly(-9, 9), evenly(-9, 9), evenly(-9, 9), (share, y0, y1, y2) => {
        const samples = { x: [3, 5, 9], y: [y0, y1, y2] };
        expect(valueBetween(samples, 3 + 2 * share)).toBeCloseTo(y0 + share * (y1 - y0), 12);
        expect(valueBetween(samples, 5 + 4 * share)).toBeCloseTo(y1 + share * (y2 - y1), 12);
        for (const [k, x] of samples.x.entries())
          expect(valueBetween(samples, x)).toBeCloseTo(samples.y[k] ?? 0, 12);
      }),
    );
  });
});

describe("a line", () => {
  test("goes through both its points, and through its own exactly even where it stands upright", () => {
    fc.assert(
      fc.property(evenly(-9, 9), evenly(-9, 9), evenly(0.1, 9), evenly(-9, 9), (x, y, width, y1) => {
        const line = lineThrough({ x, y }, { x: x + width, y: y1 });
        expect(lineAt(line, x)).toBe(y);
        expect(lineAt(line, x + width)).toBeCloseTo(y1, 10);
        expect(lineAt({ x, y, slope: Number.POSITIVE_INFINITY }, x)).toBe(y);
      }),
    );
  });
});

describe("gatesOf", () => {
  test("stand the error above and below the samples, and at the ends no wider than the range", () => {
    const range = [0.5, 4.25] as const;
    const gates = gatesOf({ x: [0, 1, 2], y: [1, 2, 4] }, range, 1);
    expect([...gates.low]).toEqual([0.5, 1, 3]);
    expect([...gates.high]).toEqual([2, 3, 4.25]);
    expect([[...gates.x], [...gates.y], gates.error]).toEqual([[0, 1, 2], [1, 2, 4], 1]);
    const wide = gatesOf({ x: [0, 1], y: [1, 2] }, [-9, 9], 1);
    expect([[...wide.low], [...wide.high]]).toEqual([
      [0, 1],
      [2, 3],
    ]);
  });
});
