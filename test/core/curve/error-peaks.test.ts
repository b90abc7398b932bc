import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { errorPeaks } from "../../../packages/core/src/curve/error-peaks.ts";
import { evenly } from "../../support/evenly.ts";

const square = (x: number) => x * x;
const samplesAt = (f: (x: number) => number, ...x: readonly number[]) => ({ x, y: x.map(f) });
const onCurve = (f: (x: number) => number, ...xs: readonly number[]) => xs.map((x) => ({ x, y: f(x) }));

describe("errorPeaks", () => {
  // By hand: x² under its chord over a width w is w²/4 off, in the middle.
  test("finds the middle of the widest chord of a parabola, however few samples there are", () => {
    fc.assert(
      fc.property(
        evenly(-20, 20),
        evenly(0.1, 30),
        evenly(0.05, 0.4),
        fc.constantFrom(1, -1),
        (a, width, part, sign) => {
          const f = (x: number) => sign * square(x);
          const [b, split] = [a + width, a + part * width];
          const peaks = errorPeaks(f, samplesAt(f, a, b), onCurve(f, a, split, b));
          expect(peaks).toHaveLength(1);
          expect(Math.abs((peaks[0]?.x ?? Number.NaN) - (split + b) / 2)).toBeLessThan(1e-5 * width);
          expect((peaks[0]?.value ?? Number.NaN) / ((b - split) ** 2 / 4)).toBeCloseTo(1, 8);
        },
      ),
    );
  });

  test("names each of several equal peaks once, x rising, on either side of the curve", () => {
    const wave = (x: number) => Math.sin(Math.PI * x);
    for (const samples of [
      samplesAt(wave, 0, 4),
      samplesAt(wave, ...[...Array(41).keys()].map((k) => k / 10)),
    ]) {
      const peaks = errorPeaks(
        wave,
        samples,
        onCurve(() => 0, 0, 1, 2, 3, 4),
      );
      expect(peaks.map(({ x }) => Math.round(x * 1e4) / 1e4)).toEqual([0.5, 1.5, 2.5, 3.5]);
      for (const { value } of peaks) expect(value).toBeCloseTo(1, 10);
    }
  });

  test("finds the peak at the end of a piece, where the polyline is off the curve", () => {
    const line = (x: number) => 2 * x;
    const peaks = errorPeaks(line, samplesAt(line, 0, 1, 2), [
      { x: 0, y: -3 },
      { x: 2, y: 4 },
    ]);
    expect(peaks).toEqual([{ x: 0, value: 3 }]);
  });
});
