/** Values of a curve, x strictly increasing from its first to its last. */
export interface Samples {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/**
 * Values of `f` at a, b, at all of `breaks` and `also` between them, and at evenly spaced points in between, about `count`
 * in all; undefined where a < b does not hold or a value is not a finite number.
 */
export function sampleCurve(
  f: (x: number) => number,
  [a, b]: readonly [number, number],
  breaks: readonly number[],
  count: number,
): Samples | undefined {
  if (!(a < b && Number.isFinite(b - a))) return undefined;
  const inside = breaks.filter((x) => x > a && x < b);
  const corners = [...new Set([a, ...inside, b])].sort((one, other) => one - other);
  const parts = Math.max(LEAST_PARTS, Math.ceil(count / (corners.length - 1)));
  const x = corners.flatMap((from, k) => subdivide(from, corners[k + 1], parts));
  const y = x.map(f);
  return y.every(Number.isFinite) ? { x, y } : undefined;
}

/** The samples with more of them. Those at an x that is there already change nothing. */
export function addSamples(
  samples: Samples,
  more: readonly { readonly x: number; readonly y: number }[],
): Samples {
  const all = new Map(samples.x.map((x, i) => [x, samples.y[i] as number]));
  for (const { x, y } of more) if (!all.has(x)) all.set(x, y);
  const x = [...all.keys()].sort((one, other) => one - other);
  return { x, y: x.map((one) => all.get(one) as number) };
}

/** What a straight line between the neighbouring samples gives at x, which is inside them. */
export function valueBetween({ x: xs, y: ys }: Samples, x: number): number {
  const right = Math.max(
    1,
    xs.findIndex((one) => one >= x),
  );
  const [x0, x1] = [xs[right - 1] as number, xs[right] as number];
  const [y0, y1] = [ys[right - 1] as number, ys[right] as number];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

/** So that a hump between two breaks shows. */
const LEAST_PARTS = 6;

function subdivide(from: number, to: number | undefined, parts: number): readonly number[] {
  if (to === undefined) return [from];
  const points = Array.from({ length: parts }, (_, k) => from + ((to - from) * k) / parts);
  return points.filter((x, k) => k === 0 || (x > (points[k - 1] as number) && x < to));
}
