import fc from "fast-check";
import { monotoneCurve } from "../../../packages/core/src/numeric/monotone-curve.ts";
import { evenly } from "../../support/evenly.ts";

/** A monotone curve to be approximated. */
export interface TestCurve {
  readonly f: (x: number) => number;
  readonly ends: readonly [number, number];
  readonly breaks: readonly number[];
}

/**
 * Pulses over deflection as a servo's response has them: the monotone cubic through 2 to 7 readings, from -30 to 40 degrees
 * at most, rising or falling.
 */
export const responses: fc.Arbitrary<TestCurve> = fc
  .record({
    steps: fc.array(fc.tuple(evenly(4, 10), evenly(20, 160)), { minLength: 1, maxLength: 6 }),
    sign: fc.constantFrom(1, -1),
  })
  .map(({ steps, sign }) => {
    const xs = [-30];
    const ys = [1500];
    for (const [width, rise] of steps) {
      xs.push((xs.at(-1) ?? 0) + width);
      ys.push((ys.at(-1) ?? 0) + sign * rise);
    }
    const curve = monotoneCurve(xs, ys);
    return { f: (x) => curve.valueAt(x) ?? Number.NaN, ends: [-30, xs.at(-1) ?? 0], breaks: xs };
  });

/** The largest error of a polyline at evenly spaced x and at its knots: never above the real one. */
export function sampledWorst(
  { f, ends: [a, b] }: TestCurve,
  knots: readonly { readonly x: number; readonly y: number }[],
  count = 4000,
): number {
  let worst = 0;
  let k = 1;
  const xs = [
    ...knots.map((knot) => knot.x),
    ...Array.from({ length: count }, (_, i) => a + ((b - a) * i) / count),
  ];
  for (const x of xs.sort((one, other) => one - other)) {
    while (k < knots.length - 1 && x > (knots[k]?.x ?? b)) k++;
    const [p, q] = [knots[k - 1], knots[k]];
    if (p === undefined || q === undefined) return Number.NaN;
    worst = Math.max(worst, Math.abs(f(x) - p.y - ((q.y - p.y) * (x - p.x)) / (q.x - p.x)));
  }
  return worst;
}
