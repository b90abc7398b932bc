import { storedUs } from "./shape-pulse.ts";
import type { ControlContribution, CurveKnot, OutputMemory, Transmitter } from "./transmitter.ts";

/** One change of one setting of one output. */
export type TransmitterEdit = { readonly output: number } & (
  | { readonly set: "limitLow" | "limitHigh" | "shift" | "rest"; readonly percent: number }
  /**
   * Percent of the scale, or share between the limits where end points scale. The receiver is on and hears it: it stores the pulse.
   * One that is typed while the receiver is off is no edit before it is on.
   */
  | { readonly set: "failsafe"; readonly percent: number }
  | { readonly set: "direction"; readonly reversed: boolean }
  | ({ readonly set: "contribution" } & ControlContribution)
  /** No points: straight. Two points never share an input. */
  | { readonly set: "curve"; readonly points: readonly CurveKnot[] }
  | { readonly set: "transit"; readonly control: string; readonly seconds: number }
  /** Rest 0, no contributions, no curve, no transits; limits, shift, direction and failsafe stay. */
  | { readonly set: "clear" }
);

/** The transmitter after these edits, one after the other. One of an output that it has not changes nothing. */
export function applyEdits(transmitter: Transmitter, edits: readonly TransmitterEdit[]): Transmitter {
  const outputs = { ...transmitter.outputs };
  for (const edit of edits) {
    const memory = outputs[edit.output];
    if (memory !== undefined) outputs[edit.output] = editMemory(transmitter, memory, edit);
  }
  return { ...transmitter, outputs };
}

/** What is set for an output after the edit, whose `output` is not looked at. */
export function editMemory(
  transmitter: Transmitter,
  memory: OutputMemory,
  edit: TransmitterEdit,
): OutputMemory {
  switch (edit.set) {
    case "limitLow":
      return { ...memory, lowPercent: edit.percent };
    case "limitHigh":
      return { ...memory, highPercent: edit.percent };
    case "shift":
      return { ...memory, shiftPercent: edit.percent };
    case "rest":
      return { ...memory, restPercent: edit.percent };
    case "failsafe":
      return { ...memory, failsafeUs: storedUs(transmitter, memory, edit.percent) };
    case "direction":
      return { ...memory, reversed: edit.reversed };
    case "contribution":
      return { ...memory, contributions: withContribution(memory.contributions, edit) };
    case "curve": {
      const { curve: _, ...straight } = memory;
      const curve = edit.points.toSorted((a, b) => a.inputPercent - b.inputPercent);
      return curve.length === 0 ? straight : { ...straight, curve };
    }
    case "transit":
      return { ...memory, transits: { ...memory.transits, [edit.control]: edit.seconds } };
    case "clear": {
      const { curve: _, ...straight } = memory;
      return { ...straight, restPercent: 0, contributions: [], transits: {} };
    }
  }
}

function withContribution(
  contributions: readonly ControlContribution[],
  { control, position, when, percent }: ControlContribution,
): readonly ControlContribution[] {
  const entered: ControlContribution = { control, position, when, percent };
  return [...contributions.filter((one) => !isSamePlace(one, entered)), entered];
}

/** Whether control, position and conditions, in whatever order, are the same. */
function isSamePlace(one: ControlContribution, other: ControlContribution): boolean {
  if (one.control !== other.control || one.position !== other.position) return false;
  const conditions = Object.entries(one.when);
  return (
    conditions.length === Object.keys(other.when).length &&
    conditions.every(
      ([selector, detent]) => Object.hasOwn(other.when, selector) && other.when[selector] === detent,
    )
  );
}
