import type { Knot, Polyline } from "./polyline.ts";
import { worstError } from "./worst-error.ts";

/** What a polyline is rounded to. */
export interface RoundingOptions {
  /** The values that may be entered near an ordinate, say those on either side of it, or one at the end of a range. */
  neighbours(y: number): readonly number[];
  /** The same for the x of the points between the ends. They stay where they are if absent. */
  neighboursX?(x: number): readonly number[];
  /** Lowest and highest y that the polyline may have: neighbours outside are left out. */
  readonly range?: readonly [low: number, high: number];
  /** All x between which the curve is smooth. */
  readonly breaks?: readonly number[];
}

/**
 * A polyline whose points are all among the neighbours of these knots, and its real worst error against the curve
 * y = f(x). Of all monotone ones, in the knots' direction, it is the one with the least worst error; of those, the one
 * whose pieces have the least sum of worst errors, so that parts away from the worst place are good too. Undefined where
 * a knot has no neighbour inside the range, or no choice is monotone with x increasing.
 *
 * The worst error is the largest of its pieces', and a piece's depends on its two ends only: so the best way to every choice
 * of one point is found from the best ways to those of the point before.
 */
export function roundPolyline(
  f: (x: number) => number,
  knots: readonly Knot[],
  options: RoundingOptions,
): Polyline | undefined {
  if (knots.length < 2) return undefined;
  const sign = (knots.at(-1) as Knot).y < (knots[0] as Knot).y ? -1 : 1;
  const choices = knots.map((knot, k) => choicesOf(knot, k > 0 && k < knots.length - 1, options));
  const pieces = choices
    .slice(1)
    .map((tos, k) => tos.map((to) => piecesTo(f, choices[k] ?? [], to, sign, options)));
  const worst = bestWay(choices, pieces, (so, piece) => Math.max(so, piece), Number.POSITIVE_INFINITY);
  const best = worst && bestWay(choices, pieces, (so, piece) => so + piece, worst.cost);
  return best && worst && { knots: best.knots, worst: worst.cost };
}

/** Worst error of each piece that ends at one choice, by the choice that it begins with; infinite where it may not be. */
type PiecesTo = readonly number[];

interface Way {
  readonly knots: readonly Knot[];
  readonly cost: number;
}

function choicesOf(knot: Knot, inner: boolean, options: RoundingOptions): readonly Knot[] {
  const [low, high] = options.range ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const ys = options.neighbours(knot.y).filter((y) => y >= low && y <= high);
  const xs = (inner ? options.neighboursX?.(knot.x) : undefined) ?? [knot.x];
  return xs.flatMap((x) => ys.map((y) => ({ x, y })));
}

function piecesTo(
  f: (x: number) => number,
  froms: readonly Knot[],
  to: Knot,
  sign: number,
  { breaks }: RoundingOptions,
): PiecesTo {
  return froms.map((from) => {
    const turnsBack = sign * (to.y - from.y) < 0;
    return (turnsBack ? undefined : worstError(f, [from, to], breaks)) ?? Number.POSITIVE_INFINITY;
  });
}

/** The cheapest way through one choice of each knot, over pieces none of which is worse than `most`. */
function bestWay(
  choices: readonly (readonly Knot[])[],
  pieces: readonly (readonly PiecesTo[])[],
  add: (cost: number, piece: number) => number,
  most: number,
): Way | undefined {
  let ways: readonly Way[] = (choices[0] ?? []).map((knot) => ({ knots: [knot], cost: 0 }));
  for (const [k, tos] of pieces.entries())
    ways = tos.map((froms, to) => {
      const costs = ways.map(({ cost }, from) => {
        const piece = froms[from] ?? Number.POSITIVE_INFINITY;
        return piece <= most ? add(cost, piece) : Number.POSITIVE_INFINITY;
      });
      const cost = Math.min(...costs);
      const knots = ways[costs.indexOf(cost)]?.knots ?? [];
      return { knots: [...knots, choices[k + 1]?.[to] as Knot], cost };
    });
  const cost = Math.min(...ways.map((way) => way.cost));
  return cost < Number.POSITIVE_INFINITY ? ways.find((way) => way.cost === cost) : undefined;
}
