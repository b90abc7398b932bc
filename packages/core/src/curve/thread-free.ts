import type { Gates, Halt, Start } from "./gates.ts";
import { stretchLine } from "./gates.ts";
import type { Knot, Line } from "./polyline.ts";
import { lineAt } from "./polyline.ts";

/**
 * A polyline of `count` points at any x that does not fall and passes all gates; undefined where there is none.
 *
 * Each line goes as far as one line can. Between its last touch and its exit it cuts the way through the
 * gates in two, so whatever goes further crosses it there; hence no polyline with as many lines goes further, and what
 * binds the next line are the edges on the missed side from the exit on, and on the touched side from the touch on.
 * Where the gates rise, the furthest line rises too, so that asking for a rising polyline costs nothing.
 * Source: least number of links in a tube, S. H. Cameron, Piece-wise Linear Approximations, IIT Research Institute
 * CSTN-106 (1966).
 */
export function threadFree(gates: Gates, count: number): readonly Knot[] | undefined {
  const halts: Halt[] = [];
  let start: Start = { lowFrom: 0, highFrom: 0 };
  for (;;) {
    const reach = stretchLine(gates, start, gates.x.length - 1);
    if (reach.kind === "passed")
      return joinLines(gates, halts, middleLine(reach.flattest, reach.steepest), count);
    if (halts.length === count - 2) return undefined;
    halts.push(reach);
    start = startAfter(gates, reach);
  }
}

function startAfter(gates: Gates, { kind, gate, line, exit }: Halt): Start {
  const from =
    kind === "under" ? { lowFrom: gate, highFrom: line.gate } : { lowFrom: line.gate, highFrom: gate };
  return exit.x < (gates.x[gate] as number) ? { ...from, exit } : from;
}

function middleLine(flattest: Line, steepest: Line): Line {
  if (steepest.slope === Number.POSITIVE_INFINITY) return flattest;
  const { x } = steepest;
  return { x, y: (lineAt(flattest, x) + steepest.y) / 2, slope: (flattest.slope + steepest.slope) / 2 };
}

function joinLines(gates: Gates, halts: readonly Halt[], lastLine: Line, count: number): readonly Knot[] {
  const last = gates.x.length - 1;
  const [firstX, lastX] = [gates.x[0] as number, gates.x[last] as number];
  const firstY = lineAt(halts[0]?.line ?? lastLine, firstX);
  const knots: Knot[] = [{ x: firstX, y: clamp(firstY, gates.low[0] as number, gates.high[0] as number) }];
  for (const [k, { line, exit }] of halts.entries()) {
    const x = crossing(line, halts[k + 1]?.line ?? lastLine, exit.x);
    const before = knots.at(-1) as Knot;
    // Only rounding can let two points fall together or fall in y.
    if (x > before.x && x < lastX) knots.push({ x, y: Math.max(before.y, lineAt(line, x)) });
  }
  const lastY = clamp(lineAt(lastLine, lastX), gates.low[last] as number, gates.high[last] as number);
  knots.push({ x: lastX, y: Math.max((knots.at(-1) as Knot).y, lastY) });
  while (knots.length < count) splitWidest(knots);
  return knots;
}

function clamp(y: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, y));
}

/** Where the lines cross, between the first one's touch and its exit. */
function crossing(line: Line, next: Line, exitX: number): number {
  const x = line.x + (lineAt(next, line.x) - line.y) / (line.slope - next.slope);
  // Written so that parallel lines, which rounding can give, meet at the touch.
  return x > line.x ? Math.min(x, exitX) : line.x;
}

/** Adds a point that changes nothing, in the middle of the widest straight piece. */
function splitWidest(knots: Knot[]): void {
  let widest = 1;
  const width = (k: number) => (knots[k] as Knot).x - (knots[k - 1] as Knot).x;
  for (let k = 2; k < knots.length; k++) if (width(k) > width(widest)) widest = k;
  const [left, right] = [knots[widest - 1] as Knot, knots[widest] as Knot];
  knots.splice(widest, 0, { x: (left.x + right.x) / 2, y: (left.y + right.y) / 2 });
}
