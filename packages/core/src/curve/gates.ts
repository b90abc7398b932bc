import type { Knot, Line } from "./polyline.ts";
import { lineAt } from "./polyline.ts";

/** Upright gaps that a line has to pass, x strictly increasing, low and high not falling from gate to gate. */
export interface Gates {
  readonly x: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** The curve at the gates, and the error: between gates the way is as wide as the error, straight from gate to gate. */
  readonly y: Float64Array;
  readonly error: number;
}

/** A line that touches a gate; the line's point is where it does. */
export interface TouchingLine extends Line {
  readonly gate: number;
}

/** What binds a line: from which gate on the lower edges do, from which the upper ones. */
export interface Start {
  readonly lowFrom: number;
  readonly highFrom: number;
  /** A point before the later of the two gates, which the line has to pass on that gate's side too. */
  readonly exit?: Knot;
}

/** All rising lines through the gates lie between these two, right of the last gate and on it. */
export interface Passage {
  readonly kind: "passed";
  readonly flattest: Line;
  readonly steepest: Line;
}

/** No rising line passes this gate. The line that comes nearest to it runs under or over it. */
export interface Halt {
  readonly kind: "under" | "over";
  readonly gate: number;
  readonly line: TouchingLine;
  /** Where the line leaves the way before the gate; at the gate if it does so there only. */
  readonly exit: Knot;
}

/**
 * How far one line that does not fall can go through the gates up to the one with index `last`.
 *
 * Of all such lines through the gates so far, the steepest touches a lower edge and then an upper one, the flattest an upper
 * and then a lower one, or it is level. They are the highest and the lowest at every later gate, so they tell whether it
 * can be passed, and an edge that cuts one of them off is the new one's last touch.
 * Source: the linear-time form of the argument is that of H. Imai and M. Iri, J. Information Processing 9 (1986) 159-162
 * (from memory); the gates here are few, so the new slope is found by looking at all.
 */
export function stretchLine(gates: Gates, start: Start, last: number): Passage | Halt {
  const { lowFrom, highFrom, exit } = start;
  const lowExit = lowFrom > highFrom ? exit : undefined;
  const highExit = highFrom > lowFrom ? exit : undefined;
  const first = Math.max(lowFrom, highFrom);
  let steepest = touchHigh(gates, first, lowFrom, lowExit);
  let flattest = touchLow(gates, first, highFrom, highExit);
  for (let gate = first + 1; gate <= last; gate++) {
    const x = gates.x[gate] as number;
    const low = gates.low[gate] as number;
    const high = gates.high[gate] as number;
    const highest = lineAt(steepest, x);
    const lowest = lineAt(flattest, x);
    if (low > highest)
      return { kind: "under", gate, line: steepest, exit: findExit(gates, gate, steepest, -1) };
    if (high < lowest)
      return { kind: "over", gate, line: flattest, exit: findExit(gates, gate, flattest, 1) };
    if (high < highest) steepest = touchHigh(gates, gate, lowFrom, lowExit);
    if (low > lowest) flattest = touchLow(gates, gate, highFrom, highExit);
  }
  return { kind: "passed", flattest, steepest };
}

/** The steepest line through this gate's upper edge that is over the lower edges from `lowFrom` to it. */
function touchHigh(gates: Gates, gate: number, lowFrom: number, exit: Knot | undefined): TouchingLine {
  const x = gates.x[gate] as number;
  const y = gates.high[gate] as number;
  let slope = exit === undefined ? Number.POSITIVE_INFINITY : (y - exit.y) / (x - exit.x);
  for (let i = lowFrom; i < gate; i++) {
    const limit = (y - (gates.low[i] as number)) / (x - (gates.x[i] as number));
    if (limit < slope) slope = limit;
  }
  return { gate, x, y, slope };
}

/** The flattest line through this gate's lower edge that does not fall and is under the upper edges from `highFrom` to it. */
function touchLow(gates: Gates, gate: number, highFrom: number, exit: Knot | undefined): TouchingLine {
  const x = gates.x[gate] as number;
  const y = gates.low[gate] as number;
  let slope = exit === undefined ? 0 : Math.max(0, (y - exit.y) / (x - exit.x));
  for (let i = highFrom; i < gate; i++) {
    const limit = (y - (gates.high[i] as number)) / (x - (gates.x[i] as number));
    if (limit > slope) slope = limit;
  }
  return { gate, x, y, slope };
}

/** Where the line leaves the way, under its lower side (-1) or over its upper (1), between the gate it misses and the one before. */
function findExit({ x: xs, y: ys, error }: Gates, gate: number, line: Line, side: 1 | -1): Knot {
  const [from, to] = [xs[gate - 1] as number, xs[gate] as number];
  const room = error - side * (lineAt(line, from) - (ys[gate - 1] as number));
  const lack = side * (lineAt(line, to) - (ys[gate] as number)) - error;
  const x = lack > 0 && room >= 0 ? Math.min(to, from + ((to - from) * room) / (room + lack)) : to;
  return { x, y: lineAt(line, x) };
}
