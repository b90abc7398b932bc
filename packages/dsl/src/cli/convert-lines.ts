import {
  formatTrimmed,
  type PercentPulse,
  pct,
  roundPercent,
  type SignalScale,
  toPercent,
  toPulse,
  us,
} from "@hingeline/core";
import { hang } from "../render/wrap-text.ts";

/** A scale on which a value is typed, in its own words. */
export interface Dial {
  readonly scale: SignalScale;
  /** Lines before the arithmetic: what 0 and 100 are. */
  readonly head: readonly string[];
  /** What a value is called, its unit, and what it is entered as. */
  readonly value: "Percent" | "Share";
  readonly unit: "%" | "share";
  readonly enter: "Enter" | "As a limit";
  /** What lies at 0. */
  readonly zero: "centre" | "middle";
  /** The lowest and the highest value, and what a value outside is past. */
  readonly ends: readonly [number, number];
  readonly past: string;
  /** Lines after the arithmetic: for what else the value is right, or is not. */
  readonly tail: readonly string[];
}

/** A conversion written out, and whether the radio can send it at all. */
export interface Conversion {
  readonly lines: readonly string[];
  readonly reached: boolean;
}

/** From a pulse to the value on a dial, and to the nearest that can be entered. Pulse in microseconds, absolute. */
export function convertPulse(dial: Dial, pulseUs: number): Conversion {
  const { scale, zero, unit } = dial;
  const { centre } = scale;
  const fromCentreUs = pulseUs - centre;
  const spanUs = spanOf(scale, fromCentreUs);
  const value = toPercent(scale, us(pulseUs));
  return withGrid(dial, value, pulseUs, [
    textLine("Pulse", `${show(pulseUs)} us`),
    textLine(`From ${zero}`, `${show(pulseUs)} us - ${show(centre)} us ${equals(fromCentreUs)} us`),
    textLine(dial.value, `${bracket(fromCentreUs)} us x 100 / ${show(spanUs)} us ${equals(value)} ${unit}`),
  ]);
}

/** From a value on a dial to its pulse, and to the nearest that can be entered. */
export function convertPercent(dial: Dial, value: number): Conversion {
  const { scale, zero, unit } = dial;
  const { centre } = scale;
  const spanUs = spanOf(scale, value);
  const fromCentreUs = (value * spanUs) / 100;
  const pulseUs = toPulse(scale, pct(value));
  return withGrid(dial, value, pulseUs, [
    textLine(dial.value, `${show(value)} ${unit}`),
    textLine(`From ${zero}`, `${bracket(value)} x ${show(spanUs)} us / 100 ${equals(fromCentreUs)} us`),
    textLine("Pulse", `${show(centre)} us + ${bracket(fromCentreUs)} us ${equals(pulseUs)} us`),
  ]);
}

/** "Scale        0 % is 1500 us, 100 % is 500 us from it" */
export function scaleLine({ centre, per100 }: SignalScale): string {
  const span =
    typeof per100 === "number"
      ? `100 % is ${show(per100)} us from it`
      : `100 % is ${show(per100.below)} us below it and ${show(per100.above)} us above it`;
  return textLine("Scale", `0 % is ${show(centre)} us, ${span}`);
}

/** The low and the high limit of a channel, each with its pulse, and for shares what lies half-way between them. */
export function limitLines(
  channel: string,
  low: PercentPulse,
  high: PercentPulse,
  withMiddle: boolean,
): readonly string[] {
  const middleUs = (low.pulseUs + high.pulseUs) / 2;
  const limit = ({ percent, pulseUs }: PercentPulse) => `${signedText(percent)} % is ${show(pulseUs)} us`;
  return [
    ...wrappedLine("Limits", `${limit(low)} and ${limit(high)}, of ${channel}`),
    ...(withMiddle
      ? [
          textLine(
            "Middle",
            `(${show(low.pulseUs)} us + ${show(high.pulseUs)} us) / 2 ${equals(middleUs)} us`,
          ),
        ]
      : []),
  ];
}

/** A text under its heading, broken into lines of 80 columns. */
export function wrappedLine(heading: string, text: string): readonly string[] {
  return hang(heading.padEnd(headingColumns), text, 80);
}

function withGrid(dial: Dial, value: number, pulseUs: number, arithmetic: readonly string[]): Conversion {
  const { scale, head, tail, enter, ends, unit } = dial;
  const written = [...head, ...arithmetic];
  const entered = isBetween(value, ends, scale) ? roundPercent(scale, pct(value), "nearest") : undefined;
  if (entered === undefined) {
    const past = wrappedLine(enter, `not possible: ${show(value)} ${unit} is past ${dial.past}`);
    return { lines: [...written, ...past, ...tail], reached: false };
  }
  const spanUs = spanOf(scale, entered);
  const fromCentreUs = (entered * spanUs) / 100;
  const givesUs = toPulse(scale, entered);
  return {
    lines: [
      ...written,
      textLine(
        enter,
        `${signedText(entered)} ${unit}, the nearest in steps of ${show(scale.step)}${unit === "%" ? " %" : ""}`,
      ),
      textLine("Gives", `${show(scale.centre)} us + ${bracket(entered)} x ${show(spanUs)} us / 100`),
      textLine("", `= ${show(scale.centre)} us + ${bracket(fromCentreUs)} us ${equals(givesUs)} us`),
      textLine("Off by", `${show(givesUs)} us - ${show(pulseUs)} us ${equals(givesUs - pulseUs)} us`),
      ...tail,
    ],
    reached: true,
  };
}

/** A pulse at an end comes back as a value that may be past it in its last digits. */
function isBetween(value: number, [lowest, highest]: Dial["ends"], { step }: SignalScale): boolean {
  const slack = step * 1e-9;
  return value >= lowest - slack && value <= highest + slack;
}

function spanOf({ per100 }: SignalScale, side: number): number {
  if (typeof per100 === "number") return per100;
  return side < 0 ? per100.below : per100.above;
}

const decimals = 6;
const headingColumns = 13;

function show(value: number): string {
  return formatTrimmed(value, decimals);
}

function signedText(value: number): string {
  return value > 0 ? `+${show(value)}` : show(value);
}

function bracket(value: number): string {
  return value < 0 ? `(${show(value)})` : show(value);
}

/** "= 372.224", or "= about 63.333333" where the decimals shown are not all of them. */
function equals(value: number): string {
  const text = show(value);
  return Math.abs(Number(text) - value) > 1e-10 ? `= about ${text}` : `= ${text}`;
}

function textLine(heading: string, text: string): string {
  return heading.padEnd(headingColumns) + text;
}
