import type { Gates } from "./gates.ts";
import { stretchLine } from "./gates.ts";
import type { Knot } from "./polyline.ts";
import { lineAt } from "./polyline.ts";

/**
 * A polyline that does not fall, passes all gates and has its points at the given gates, the first and the last among
 * them; undefined where there is none.
 *
 * From point to point it carries along which ordinates can be reached: they are an interval, since the polylines so far
 * are a convex set. On the way back it takes the middle of what is left.
 */
export function threadEqual(gates: Gates, points: readonly number[]): readonly Knot[] | undefined {
  const reached: Gates = { ...gates, low: gates.low.slice(), high: gates.high.slice() };
  for (let k = 1; k < points.length; k++) {
    const from = points[k - 1] as number;
    const to = points[k] as number;
    const lines = stretchLine(reached, { lowFrom: from, highFrom: from }, to);
    if (lines.kind !== "passed") return undefined;
    const x = gates.x[to] as number;
    reached.low[to] = lineAt(lines.flattest, x);
    reached.high[to] = lineAt(lines.steepest, x);
  }
  return goBack(reached, points);
}

function goBack(reached: Gates, points: readonly number[]): readonly Knot[] {
  const end = points.at(-1) as number;
  let y = ((reached.low[end] as number) + (reached.high[end] as number)) / 2;
  const knots: Knot[] = [{ x: reached.x[end] as number, y }];
  for (let k = points.length - 1; k > 0; k--) {
    const from = points[k - 1] as number;
    y = ordinateBefore(reached, from, points[k] as number, y);
    knots.push({ x: reached.x[from] as number, y });
  }
  return knots.reverse();
}

/** The middle of the ordinates at the gate `from` from which a line through the gates comes to y at the gate `to`. */
function ordinateBefore(reached: Gates, from: number, to: number, y: number): number {
  const x = reached.x[to] as number;
  let flattest = 0;
  let steepest = Number.POSITIVE_INFINITY;
  for (let i = from; i < to; i++) {
    const width = x - (reached.x[i] as number);
    flattest = Math.max(flattest, (y - (reached.high[i] as number)) / width);
    steepest = Math.min(steepest, (y - (reached.low[i] as number)) / width);
  }
  const slope = Math.max(0, (flattest + steepest) / 2);
  const before = y - slope * (x - (reached.x[from] as number));
  return Math.min(y, Math.max(reached.low[from] as number, Math.min(reached.high[from] as number, before)));
}
