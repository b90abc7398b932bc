import type { Line } from "./polyline.ts";
import { lineAt } from "./polyline.ts";

/** Upright gaps that a line has to pass, x strictly increasing, low and high not falling from gate to gate. */
export interface Gates {
  readonly x: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** A line that touches a gate; the line's point is where it does. */
export interface TouchingLine extends Line {
  readonly gate: number;
}

/** Where a line starts: the first gate whose lower edge binds it, the first whose upper edge does. */
export interface Start {
  readonly lowFrom: number;
  readonly highFrom: number;
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
export function stretchLine(gates: Gates, { lowFrom, highFrom }: Start, last: number): Passage | Halt {
  const first = Math.max(lowFrom, highFrom);
  let steepest = touchHigh(gates, first, lowFrom);
  let flattest = touchLow(gates, first, highFrom);
  for (let gate = first + 1; gate <= last; gate++) {
    const x = gates.x[gate] as number;
    const low = gates.low[gate] as number;
    const high = gates.high[gate] as number;
    const highest = lineAt(steepest, x);
    const lowest = lineAt(flattest, x);
    if (low > highest) return { kind: "under", gate, line: steepest };
    if (high < lowest) return { kind: "over", gate, line: flattest };
    if (high < highest) steepest = touchHigh(gates, gate, lowFrom);
    if (low > lowest) flattest = touchLow(gates, gate, highFrom);
  }
  return { kind: "passed", flattest, steepest };
}

/** The steepest line through this gate's upper edge that is over the lower edges from `lowFrom` to it. */
function touchHigh(gates: Gates, gate: number, lowFrom: number): TouchingLine {
  const x = gates.x[gate] as number;
  const y = gates.high[gate] as number;
  let slope = Number.POSITIVE_INFINITY;
  for (let i = lowFrom; i < gate; i++) {
    const limit = (y - (gates.low[i] as number)) / (x - (gates.x[i] as number));
    if (limit < slope) slope = limit;
  }
  return { gate, x, y, slope };
}

/** The flattest line through this gate's lower edge that does not fall and is under the upper edges from `highFrom` to it. */
function touchLow(gates: Gates, gate: number, highFrom: number): TouchingLine {
  const x = gates.x[gate] as number;
  const y = gates.low[gate] as number;
  let slope = 0;
  for (let i = highFrom; i < gate; i++) {
    const limit = (y - (gates.high[i] as number)) / (x - (gates.x[i] as number));
    if (limit > slope) slope = limit;
  }
  return { gate, x, y, slope };
}
