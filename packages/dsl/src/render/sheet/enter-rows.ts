import {
  decimalsOf,
  formatNumber,
  formatTrimmed,
  type PlanRadio,
  pct,
  type SetupPlan,
  toPercent,
  us,
} from "@hingeline/core";
import { type Numbers, signed } from "../numbers.ts";
import { settingText } from "../state-text.ts";
import { type SheetServo, settingKey } from "./servo-on-sheet.ts";

/** One value to enter and what must come of it, as text. */
export interface EnterRow {
  readonly key: string;
  readonly name: string;
  /** "wanted 42.0°, 68.8 mm", or what the value is for. */
  readonly detail: string;
  readonly enter: string;
  /** For transmitters that add up; absent where nothing is added. */
  readonly adds?: string;
  readonly pulse: string;
}

/**
 * What is entered for one servo's channel, in the order in which it is safe: limits first. Where limits scale, a position is the
 * share of the way between them, otherwise an absolute percent.
 */
export function enterRows(
  { described, channel, settings }: SheetServo,
  { radio }: SetupPlan,
  numbers: Numbers,
): EnterRow[] {
  const { limits, neutral, failsafe } = channel;
  const scales = radio.endPoints === "scale";
  const position = (percent: number, pulseUs: number) =>
    numbers.percent(scales ? shareOf(pulseUs, limits, radio) : percent);
  const plain = (key: string, name: string, detail: string, percent: string, pulseUs: number): EnterRow => ({
    key,
    name,
    detail,
    enter: percent,
    pulse: formatNumber(pulseUs, 1),
  });
  const [lowEnd, highEnd] = described.rising ? ["up", "down"] : ["down", "up"];
  return [
    plain(
      "limit-low",
      "low limit",
      `stop ${lowEnd}`,
      numbers.percent(limits.low.percent),
      limits.low.pulseUs,
    ),
    plain(
      "limit-high",
      "high limit",
      `stop ${highEnd}`,
      numbers.percent(limits.high.percent),
      limits.high.pulseUs,
    ),
    plain(
      "rest",
      "at rest",
      "every control at rest",
      position(neutral.percent, neutral.pulseUs),
      neutral.pulseUs,
    ),
    ...settings.map(
      (setting): EnterRow => ({
        key: settingKey(setting),
        name: settingText(setting),
        detail: wantedText(setting.wanted),
        enter: scales ? numbers.percent(setting.enter.sharePercent) : numbers.percent(setting.enter.percent),
        ...(setting.enter.addPercent === 0 ? {} : { adds: numbers.percent(setting.enter.addPercent) }),
        pulse: formatNumber(setting.enter.pulseUs, 1),
      }),
    ),
    plain(
      "failsafe",
      "signal lost",
      "failsafe",
      position(failsafe.percent, failsafe.pulseUs),
      failsafe.pulseUs,
    ),
  ];
}

/** The rows of several servos side by side: each has every row that any of them has, in the same order. */
export function alignRows(
  lists: readonly (readonly EnterRow[])[],
): readonly (readonly (EnterRow | undefined)[])[] {
  const keys = [...new Set(lists.flatMap((rows) => rows.map(({ key }) => key)))];
  const last = keys.indexOf("failsafe");
  if (last >= 0) keys.push(...keys.splice(last, 1));
  return lists.map((rows) => keys.map((key) => rows.find((row) => row.key === key)));
}

function wantedText(
  wanted: { readonly deflectionDeg: number; readonly throwMm?: number } | undefined,
): string {
  if (wanted === undefined) return "NOT MEASURED in degrees";
  const throwText = wanted.throwMm === undefined ? "" : `, ${formatNumber(Math.abs(wanted.throwMm), 1)} mm`;
  const decimals = Math.min(
    2,
    Math.max(1, formatTrimmed(Math.abs(wanted.deflectionDeg), 2).split(".")[1]?.length ?? 1),
  );
  return `wanted ${signed(wanted.deflectionDeg, decimals)}°${throwText}`;
}

/** The share between the limits of a pulse that is on the grid of shares. */
function shareOf(
  pulseUs: number,
  { low, high }: SheetServo["channel"]["limits"],
  { stepPercent }: PlanRadio,
): number {
  const scale = {
    name: "share",
    centre: us((low.pulseUs + high.pulseUs) / 2),
    per100: us((high.pulseUs - low.pulseUs) / 2),
    reach: pct(100),
    step: pct(stepPercent),
  };
  const share = toPercent(scale, us(pulseUs));
  return Number((Math.round(share / stepPercent) * stepPercent).toFixed(decimalsOf(stepPercent))) + 0;
}
