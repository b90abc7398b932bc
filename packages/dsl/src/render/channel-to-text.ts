import { type Extreme, formatNumber, type PlanChannel } from "@hingeline/core";
import { alignTable } from "./align-table.ts";
import { type Numbers, pulseText, signed } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { settingsTable } from "./settings-table.ts";
import { stateText } from "./state-text.ts";
import { visibleText } from "./visible-text.ts";
import { hang, wrapText } from "./wrap-text.ts";

/** How a channel's part of the plan is drawn. */
export interface ChannelStyle {
  readonly numbers: Numbers;
  readonly paint: Paint;
  readonly columns: number;
  /** Whether the plan holds an error: then every channel says that it must not be entered. */
  readonly refused: boolean;
}

/** One channel: its stops, its values to enter, how far the controls take it. */
export function channelToText(channel: PlanChannel, style: ChannelStyle): string[] {
  const { numbers, columns } = style;
  return [
    ...headOf(channel, style),
    "",
    ...factsOf(channel, columns),
    "",
    ...entriesOf(channel, style),
    "",
    ...settingsTable(channel, numbers, style.paint, columns),
    "",
    ...travelOf(channel, numbers, columns),
    ...curveOf(channel, style),
  ];
}

function headOf(
  { channel, servos, labels = {} }: PlanChannel,
  { paint, columns, refused }: ChannelStyle,
): string[] {
  const names = servos.map((servo) => {
    const label = labels[servo];
    return visibleText(servo) + (label === undefined ? "" : ` [${visibleText(label)}]`);
  });
  const head = `CHANNEL ${channel}   `;
  return [
    "-".repeat(columns),
    ...hang(head, names.join(" and "), columns).map(paint.strong),
    ...(refused ? [paint.error("Do not enter: this plan has errors.")] : []),
  ];
}

function factsOf({ direction, safeUs, guardUs }: PlanChannel, columns: number): string[] {
  const [lowUs, highUs] = safeUs;
  const [lowGuardUs, highGuardUs] = guardUs;
  const turns = direction === "rising" ? "rises" : "falls";
  return [
    ...hang("Direction  ", `the pulse ${turns} as the deflection grows`, columns),
    ...hang(
      "Safe       ",
      `${formatNumber(lowUs, 1)} to ${pulseText(highUs)}; the stops are ${pulseText(lowUs - lowGuardUs)} and ${pulseText(highUs + highGuardUs)}, the guard ${formatNumber(lowGuardUs, 1)} and ${pulseText(highGuardUs)}`,
      columns,
    ),
  ];
}

function entriesOf(
  { limits, neutral, failsafe }: PlanChannel,
  { numbers, paint, columns }: ChannelStyle,
): string[] {
  const entries = [limits.low, limits.high, neutral, failsafe];
  return alignTable(
    "Channel",
    ["low limit", "high limit", "neutral", "failsafe"],
    [
      {
        head: "ENTER",
        unit: "%",
        cells: entries.map(({ percent }) => numbers.percent(percent)),
        paint: paint.strong,
      },
      { head: "pulse", unit: "us", cells: entries.map(({ pulseUs }) => formatNumber(pulseUs, 1)) },
    ],
    columns,
  );
}

function travelOf(
  { extremes, safeUs, transits = [], load }: PlanChannel,
  numbers: Numbers,
  columns: number,
): string[] {
  const [lowUs, highUs] = safeUs;
  const extreme = ({ pulseUs, percent, when }: Extreme, spareUs: number) => {
    const spare = `${pulseText(Math.abs(spareUs))} ${spareUs < 0 ? "PAST the safe end" : "to spare"}`;
    return `${pulseText(pulseUs)} (${numbers.exactPercent(percent)} %), ${spare}: ${stateText(when)}`;
  };
  return [
    ...hang("Lowest     ", extreme(extremes.low, extremes.low.pulseUs - lowUs), columns),
    ...hang("Highest    ", extreme(extremes.high, highUs - extremes.high.pulseUs), columns),
    ...transits.flatMap(({ control, from, to, seconds, secondsPerFullScale, fastestSeconds }) => {
      const fastest =
        fastestSeconds === undefined ? "" : `; the servo alone needs ${formatNumber(fastestSeconds, 2)} s`;
      const text = `${visibleText(control)} from ${visibleText(from)} to ${visibleText(to)} in ${formatNumber(seconds, 2)} s (from -100 to +100 %: ${formatNumber(secondsPerFullScale, 2)} s)${fastest}`;
      return hang("Transit    ", text, columns);
    }),
    ...(load === undefined
      ? []
      : hang(
          "Load       ",
          `about ${formatNumber(load.worstNm, 2)} of ${formatNumber(load.heldNm, 2)} N m (${formatNumber(load.share * 100, 0)} %) at ${formatNumber(load.airspeedMps, 1)} m/s: ${stateText(load.when)}`,
          columns,
        )),
  ];
}

function curveOf({ curve, curveWorstDeg }: PlanChannel, { numbers, paint, columns }: ChannelStyle): string[] {
  if (curve === undefined) return [];
  const worst =
    curveWorstDeg === undefined
      ? []
      : wrapText(
          `Between its points the curve is at most ${formatNumber(curveWorstDeg, 2)} deg off.`,
          columns,
        );
  return [
    "",
    ...alignTable(
      "Curve",
      curve.map((_, index) => `point ${index + 1}`),
      [
        { head: "input", unit: "%", cells: curve.map(({ commandPercent }) => signed(commandPercent, 1)) },
        {
          head: "ENTER",
          unit: "%",
          cells: curve.map(({ percent }) => numbers.percent(percent)),
          paint: paint.strong,
        },
        { head: "pulse", unit: "us", cells: curve.map(({ pulseUs }) => formatNumber(pulseUs, 1)) },
      ],
      columns,
    ),
    ...worst,
  ];
}
