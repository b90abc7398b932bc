import type { Peak } from "./find-peak.ts";
import { findPeak } from "./find-peak.ts";
import type { Knot } from "./polyline.ts";
import { lineAt, lineThrough } from "./polyline.ts";
import type { Samples } from "./samples.ts";
import { addSamples } from "./samples.ts";

/**
 * Where a polyline is furthest from the curve on either side, x rising, each with the size of the error: the largest one,
 * and all others of which the samples show that they may come near to it. The knots run over all of the samples.
 */
export function errorPeaks(
  f: (x: number) => number,
  samples: Samples,
  knots: readonly Knot[],
): readonly Peak[] {
  const humps = knots.slice(1).flatMap((to, k) => humpsBetween(f, samples, knots[k] as Knot, to));
  const width = (samples.x.at(-1) as number) - (samples.x[0] as number);
  const largest = Math.max(...humps.map((hump) => hump.top.value));
  return humps
    .filter((hump) => hump.top.value >= CAN_GROW * largest)
    .map(({ height, left, top, right }) =>
      right.x - left.x < CLOSE_BY * width ? top : findPeak(height, left, top, right),
    );
}

/** Part of a hump's height that its highest sample shows at least; three samples a hump show more. */
const CAN_GROW = 0.75;
/** Parts of the whole width in which a smooth error grows less than in 1e-9 parts, and rounding shows as humps. */
const CLOSE_BY = 1e-7;
/** Samples inside a piece of the polyline below which it gets as many of its own. */
const ENOUGH = 5;

/** A highest sample of the error on one side, and its neighbours; at the end of a piece, itself is one of them. */
interface Hump {
  readonly height: (x: number) => number;
  readonly left: Peak;
  readonly top: Peak;
  readonly right: Peak;
}

function humpsBetween(f: (x: number) => number, samples: Samples, from: Knot, to: Knot): readonly Hump[] {
  const line = lineThrough(from, to);
  const { x: xs, y: ys } = samplesBetween(f, samples, from.x, to.x);
  const humps: Hump[] = [];
  for (const sign of [1, -1]) {
    const height = (x: number) => sign * (f(x) - lineAt(line, x));
    const heights = xs.map((x, i) => ({ x, value: sign * ((ys[i] as number) - lineAt(line, x)) }));
    for (const [i, top] of heights.entries()) {
      const left = heights[i - 1] ?? top;
      const right = heights[i + 1] ?? top;
      if (top.value >= 0 && (left === top || top.value > left.value) && top.value >= right.value)
        humps.push({ height, left, top, right });
    }
  }
  return humps;
}

function samplesBetween(f: (x: number) => number, samples: Samples, from: number, to: number): Samples {
  const first = samples.x.findIndex((x) => x > from);
  const end = samples.x.findIndex((x) => x >= to);
  const x = [from, ...samples.x.slice(first, end), to];
  const y = [f(from), ...samples.y.slice(first, end), f(to)];
  if (x.length >= ENOUGH + 2) return { x, y };
  const own = Array.from({ length: ENOUGH }, (_, k) => from + ((to - from) * (k + 1)) / (ENOUGH + 1));
  return addSamples(
    { x, y },
    own.filter((one) => one > from && one < to).map((one) => ({ x: one, y: f(one) })),
  );
}
