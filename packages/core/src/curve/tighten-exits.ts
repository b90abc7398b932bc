import type { Ends } from "./gates-of.ts";
import { gatesOf } from "./gates-of.ts";
import type { Halt } from "./gates.ts";
import { lineAt } from "./polyline.ts";
import type { Samples } from "./samples.ts";
import { addSamples } from "./samples.ts";
import { linkGates } from "./thread-free.ts";

/**
 * The samples with two more around each place where a line of the polyline of `count` points through them first gets further than
 * `error` from the curve. Between samples a point of the polyline could stand far outside; now it cannot. Where these
 * samples leave no polyline with that error, they show it too small.
 */
export function tightenExits(
  f: (x: number) => number,
  samples: Samples,
  ends: Ends,
  count: number,
  error: number,
): Samples {
  const [first, last] = [samples.x[0] as number, samples.x.at(-1) as number];
  const gap = GAP * (last - first);
  let tight = samples;
  for (let turn = 0; turn < 2 * count; turn++) {
    const links = linkGates(gatesOf(tight, ends, error), count);
    const { x } = tight;
    const wide = links?.halts.find(({ gate }) => (x[gate] as number) - (x[gate - 1] as number) > 2 * gap);
    if (wide === undefined) return tight;
    const exit = findExit(f, tight, wide, error, gap / 4);
    const around = [exit - gap / 2, exit + gap / 2].filter((one) => one > first && one < last);
    tight = addSamples(
      tight,
      around.map((one) => ({ x: one, y: f(one) })),
    );
  }
  return tight;
}

/** Parts of the whole width between the last place where a line is inside and the first where it is outside. */
const GAP = 1e-11;
const MOST_STEPS = 60;

/** Where the line that misses a gate gets too far from the curve before it, by false position (Illinois variant, from memory). */
function findExit(
  f: (x: number) => number,
  { x: xs, y: ys }: Samples,
  { kind, gate, line }: Halt,
  error: number,
  near: number,
): number {
  const sign = kind === "under" ? 1 : -1;
  const excess = (x: number, y: number) => sign * (y - lineAt(line, x)) - error;
  let [inside, outside] = [xs[gate - 1] as number, xs[gate] as number];
  let under = Math.min(0, excess(inside, ys[gate - 1] as number));
  let over = excess(outside, ys[gate] as number);
  let side = 0;
  let before = inside;
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = inside + ((outside - inside) * under) / (under - over);
    if (Math.abs(x - before) <= near) return x;
    before = x;
    const now = excess(x, f(x));
    if (now > 0) {
      [outside, over] = [x, now];
      if (side > 0) under /= 2;
      side = 1;
    } else {
      [inside, under] = [x, now];
      if (side < 0) over /= 2;
      side = -1;
    }
  }
  return before;
}
