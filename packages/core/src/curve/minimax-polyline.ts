import { errorPeaks } from "./error-peaks.ts";
import type { Gates } from "./gates.ts";
import type { Ends } from "./gates-of.ts";
import { gatesOf } from "./gates-of.ts";
import type { Knot, Polyline } from "./polyline.ts";
import type { Samples } from "./samples.ts";
import { addSamples, sampleCurve } from "./samples.ts";
import { threadEqual } from "./thread-equal.ts";
import { threadFree } from "./thread-free.ts";
import { tightenExits } from "./tighten-exits.ts";

/** Where the points of a polyline may stand, and what its ordinates are held to. */
export interface PolylineOptions {
  /** Evenly spaced points, or points at any x; the first and the last are at the ends of the curve in both. */
  readonly points: "equal" | "free";
  /** Whether the first and the last point are on the curve. False if absent. */
  readonly pinnedEnds?: boolean;
  /** All x between which the curve is smooth. */
  readonly breaks?: readonly number[];
  /** Lowest and highest y that the polyline may have; both ends of the curve are inside. */
  readonly range?: readonly [low: number, high: number];
}

/**
 * The continuous, monotone polyline of n points from a to b whose worst absolute error against a monotone curve y = f(x) is
 * least: no monotone polyline with such points has a worst error smaller by more than one part in 1e9. Its points are not the only ones that reach this
 * error, and those away from the worst places are chosen without meaning. Undefined where n is no whole number of at
 * least 2, a < b does not hold, f is not finite, or an end of the curve is outside the range.
 *
 * The curve is first replaced by its values at some x, where the least error is found by trial: the values plus and minus the error
 * are gates, and `threadEqual` and `threadFree` find a polyline through them if there is one. That error is too small for
 * the whole curve and the polyline's real worst error is too large; the places of the latter join the x, until both agree.
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
  const ends = holdEnds(samples, sign, options);
  if (ends === undefined) return undefined;
  const found = exchange(rising, samples, ends, options.points === "free" ? freeTask(n) : equalTask(evenX));
  return found && { ...found, knots: found.knots.map(({ x, y }) => ({ x, y: sign * y })) };
}

const SAMPLES_PER_POINT = 12;
/** Parts of the least error by which the answer may be above it. */
const CLOSE = 1e-9;
/** Parts of the curve's rise below which an error is rounding. */
const NOTHING = 1e-14;
const MOST_ROUNDS = 40;

/** What differs between evenly spaced points and free ones. */
interface Task {
  thread(gates: Gates): readonly Knot[] | undefined;
  /** More samples, without which a polyline of this error through the samples is much worse between them. */
  tighten(f: (x: number) => number, samples: Samples, ends: Ends, error: number): Samples;
}

function equalTask(points: readonly number[]): Task {
  return {
    thread: (gates) => threadEqual(gates, points.map((x) => gates.x.indexOf(x))),
    tighten: (_, samples) => samples,
  };
}

function freeTask(count: number): Task {
  return {
    thread: (gates) => threadFree(gates, count),
    tighten: (f, samples, ends, error) => tightenExits(f, samples, ends, count, error),
  };
}

function holdEnds(samples: Samples, sign: number, { pinnedEnds, range }: PolylineOptions): Ends | undefined {
  const all = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
  const [low, high] = (sign < 0 ? range?.map((y) => -y).reverse() : range) ?? all;
  const [first, last] = [samples.y[0], samples.y.at(-1)];
  if (first === undefined || last === undefined || low === undefined || high === undefined) return undefined;
  if (!(first >= low && last <= high)) return undefined;
  return pinnedEnds === true
    ? { first: [first, first], last: [last, last] }
    : { first: [low, high], last: [low, high] };
}

function exchange(f: (x: number) => number, begun: Samples, ends: Ends, task: Task): Polyline | undefined {
  let samples = begun;
  let best: Polyline | undefined;
  let least = 0;
  const nothing = NOTHING * Math.max(...samples.y.map(Math.abs));
  // At an error as large as its whole rise a curve lets a level line through.
  let most = (samples.y.at(-1) as number) - (samples.y[0] as number) + nothing;
  for (let round = 0; round < MOST_ROUNDS && most > least * (1 + CLOSE) + nothing; round++) {
    const fit = leastThrough(samples, ends, task, { least, most, near: nothing });
    if (fit === undefined) break;
    least = fit.least;
    samples = task.tighten(f, samples, ends, fit.most);
    const knots = task.thread(gatesOf(samples, ends, fit.most));
    if (knots === undefined) {
      least = fit.most;
      continue;
    }
    const peaks = errorPeaks(f, samples, knots);
    const worst = Math.max(...peaks.map((peak) => peak.value));
    if (best === undefined || worst < best.worst) best = { knots, worst };
    most = best.worst;
    const over = peaks.filter((peak) => peak.value > least);
    samples = addSamples(
      samples,
      over.map(({ x }) => ({ x, y: f(x) })),
    );
  }
  return best;
}

/** What the least error through the gates lies between, and how near it is to be found. */
interface Bracket {
  readonly least: number;
  readonly most: number;
  readonly near: number;
}

/** The same, narrower; undefined where even the most is too small, which only rounding can bring about. */
function leastThrough(samples: Samples, ends: Ends, task: Task, bracket: Bracket): Bracket | undefined {
  let { least, most } = bracket;
  most += bracket.near;
  const fits = (error: number) => task.thread(gatesOf(samples, ends, error)) !== undefined;
  if (!fits(most)) return undefined;
  while (most - least > CLOSE * 0.1 * most + bracket.near) {
    const error = (least + most) / 2;
    if (fits(error)) most = error;
    else least = error;
  }
  return { least, most, near: bracket.near };
}
