import { errorPeaks } from "./error-peaks.ts";
import type { Gates } from "./gates.ts";
import { gatesOf, type Range } from "./gates-of.ts";
import { leastError } from "./least-error.ts";
import type { Knot, Polyline } from "./polyline.ts";
import type { Samples } from "./samples.ts";
import { addSamples, sampleCurve, valueBetween } from "./samples.ts";
import { threadEqual } from "./thread-equal.ts";
import { threadFree } from "./thread-free.ts";

/** Where the points of a polyline may stand, and what its ordinates are held to. */
export interface PolylineOptions {
  /** Evenly spaced points, or points at any x; the first and the last are at the ends of the curve in both. */
  readonly points: "equal" | "free";
  /** All x between which the curve is smooth. */
  readonly breaks?: readonly number[];
  /** Lowest and highest y that the polyline may have; both ends of the curve are inside. */
  readonly range?: Range;
}

/**
 * The continuous, monotone polyline of n points from a to b whose worst absolute error against a monotone curve y = f(x) is
 * least, to about one part in 1e9. Other points may reach the same error, and those away from the worst places are chosen
 * without meaning. Free points: one more never makes it worse, but may change nothing, as an odd one on an S-shaped curve.
 * It asks for some hundred values of f, a few thousand for ten points or more. Undefined where n is no whole number of at
 * least 2, a < b does not hold, f is not finite, or an end of the curve is outside the range.
 *
 * The curve is first replaced by its values at some x. There the least error is found by trial: the values plus and minus
 * an error are gates, and `threadEqual` or `threadFree` finds a polyline through them if there is one. Where that polyline is
 * furthest from the real curve, and where its points stand, join the x, until values and curve agree.
 */
export function minimaxPolyline(
  f: (x: number) => number,
  [a, b]: readonly [number, number],
  n: number,
  options: PolylineOptions,
): Polyline | undefined {
  if (!Number.isInteger(n) || n < 2 || !(a < b)) return undefined;
  const evenX = Array.from({ length: n }, (_, k) => (k === n - 1 ? b : a + ((b - a) * k) / (n - 1)));
  const corners = options.points === "equal" ? [...(options.breaks ?? []), ...evenX] : (options.breaks ?? []);
  const sign = f(b) < f(a) ? -1 : 1;
  const rising = (x: number) => sign * f(x);
  const samples = sampleCurve(rising, [a, b], corners, SAMPLES_PER_POINT * n);
  if (samples === undefined) return undefined;
  const range = rangeAround(samples, sign, options);
  if (range === undefined) return undefined;
  const thread: Thread = (gates) =>
    options.points === "free"
      ? threadFree(gates, n)
      : threadEqual(
          gates,
          evenX.map((x) => gates.x.indexOf(x)),
        );
  const found = exchange(rising, samples, range, thread);
  return found && { ...found, knots: found.knots.map(({ x, y }) => ({ x, y: sign * y })) };
}

const SAMPLES_PER_POINT = 12;
/** Parts of the least error by which the answer may be above it. */
const CLOSE = 1e-9;
/** Parts of the curve's rise below which an error is rounding. */
const NOTHING = 1e-14;
/** By how many parts an error may be too large in the first round, by how many in the last, and how fast that shrinks. */
const FIRST_SLACK = 1e-3;
const LAST_SLACK = CLOSE / 3;
const SHARPER = 30;
const MOST_ROUNDS = 40;

type Thread = (gates: Gates) => readonly Knot[] | undefined;

/** The range of the curve turned to rise; undefined where an end of the curve is outside. */
function rangeAround(samples: Samples, sign: number, { range }: PolylineOptions): Range | undefined {
  const [low, high] = range ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const turned: Range = sign < 0 ? [-high, -low] : [low, high];
  const [first, last] = [samples.y[0] as number, samples.y.at(-1) as number];
  return first >= turned[0] && last <= turned[1] ? turned : undefined;
}

function exchange(
  f: (x: number) => number,
  begun: Samples,
  range: Range,
  thread: Thread,
): Polyline | undefined {
  let samples = begun;
  let best: Polyline | undefined;
  const nothing = NOTHING * Math.max(...samples.y.map(Math.abs));
  const rise = (samples.y.at(-1) as number) - (samples.y[0] as number);
  let error = rise / 2;
  let slack = FIRST_SLACK;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    // At an error as large as its whole rise a curve lets a level line through.
    const search = { guess: error, most: rise, slack, nothing };
    const fit = leastError((one) => thread(gatesOf(samples, range, one)), search);
    if (fit === undefined) break;
    error = fit.error;
    const peaks = errorPeaks(f, samples, fit.knots);
    const worst = Math.max(...peaks.map((peak) => peak.value));
    if (best === undefined || worst < best.worst) best = { knots: fit.knots, worst };
    const found = [...fit.knots, ...peaks.filter((peak) => peak.value >= error * (1 - slack))];
    const news = found.map(({ x }) => ({ x, y: f(x) }));
    const surprise = Math.max(
      worst - error,
      ...news.map(({ x, y }) => Math.abs(y - valueBetween(samples, x))),
    );
    if (slack <= CLOSE && surprise <= CLOSE * error + nothing) break;
    samples = addSamples(samples, news);
    slack = Math.max(LAST_SLACK, Math.min(slack, surprise / Math.max(error, nothing)) / SHARPER);
  }
  return best;
}
