import { formatTrimmed, pct, roundPercent, type SignalScale, toPercent, toPulse, us } from "@hingeline/core";
import { signed } from "../render/numbers.ts";

/** A conversion written out, and whether the radio can send it at all. */
export interface Conversion {
  readonly lines: readonly string[];
  readonly reached: boolean;
}

/** From a pulse to percent, and to the nearest value that can be entered. Pulse in microseconds, absolute. */
export function convertPulse(scale: SignalScale, pulseUs: number): Conversion {
  const { centre } = scale;
  const fromCentreUs = pulseUs - centre;
  const spanUs = spanOf(scale, fromCentreUs);
  const percent = toPercent(scale, us(pulseUs));
  return withGrid(scale, percent, pulseUs, [
    ...scaleLines(scale),
    line("Pulse", `${show(pulseUs)} us`),
    line("From centre", `${show(pulseUs)} us - ${show(centre)} us = ${show(fromCentreUs)} us`),
    line("Percent", `${bracket(fromCentreUs)} us x 100 / ${show(spanUs)} us ${equals(percent)} %`),
  ]);
}

/** From a percent to its pulse, and to the nearest value that can be entered. */
export function convertPercent(scale: SignalScale, percent: number): Conversion {
  const { centre } = scale;
  const spanUs = spanOf(scale, percent);
  const fromCentreUs = (percent * spanUs) / 100;
  const pulseUs = toPulse(scale, pct(percent));
  return withGrid(scale, percent, pulseUs, [
    ...scaleLines(scale),
    line("Percent", `${show(percent)} %`),
    line("From centre", `${bracket(percent)} x ${show(spanUs)} us / 100 ${equals(fromCentreUs)} us`),
    line("Pulse", `${show(centre)} us + ${bracket(fromCentreUs)} us ${equals(pulseUs)} us`),
  ]);
}

function withGrid(
  scale: SignalScale,
  percent: number,
  pulseUs: number,
  lines: readonly string[],
): Conversion {
  const entered = roundPercent(scale, pct(percent), "nearest");
  if (entered === undefined) {
    const past = `not possible: ${show(percent)} % is past the ${show(scale.reach)} % that this radio reaches`;
    return { lines: [...lines, line("Enter", past)], reached: false };
  }
  const spanUs = spanOf(scale, entered);
  const fromCentreUs = (entered * spanUs) / 100;
  const givesUs = toPulse(scale, entered);
  return {
    lines: [
      ...lines,
      line(
        "Enter",
        `${signed(entered, 12).replace(/\.?0+$/, "")} %, the nearest in steps of ${show(scale.step)} %`,
      ),
      line("Gives", `${show(scale.centre)} us + ${bracket(entered)} x ${show(spanUs)} us / 100`),
      line("", `= ${show(scale.centre)} us + ${bracket(fromCentreUs)} us ${equals(givesUs)} us`),
      line("Off by", `${show(givesUs)} us - ${show(pulseUs)} us ${equals(givesUs - pulseUs)} us`),
    ],
    reached: true,
  };
}

function scaleLines({ centre, per100 }: SignalScale): string[] {
  const span =
    typeof per100 === "number"
      ? `100 % is ${show(per100)} us from it`
      : `100 % is ${show(per100.below)} us below it and ${show(per100.above)} us above it`;
  return [line("Scale", `0 % is ${show(centre)} us, ${span}`)];
}

function spanOf({ per100 }: SignalScale, side: number): number {
  if (typeof per100 === "number") return per100;
  return side < 0 ? per100.below : per100.above;
}

const decimals = 6;

function show(value: number): string {
  return formatTrimmed(value, decimals);
}

function bracket(value: number): string {
  return value < 0 ? `(${show(value)})` : show(value);
}

/** "= 372.224", or "= about 63.333333" where the decimals shown are not all of them. */
function equals(value: number): string {
  const text = show(value);
  return Math.abs(Number(text) - value) > 1e-10 ? `= about ${text}` : `= ${text}`;
}

function line(head: string, text: string): string {
  return head.padEnd(13) + text;
}
