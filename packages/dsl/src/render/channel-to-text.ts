import { formatNumber, type PlanChannel } from "@hingeline/core";
import { alignTable } from "./align-table.ts";
import { type Numbers, pulseText, signed, withKind } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { settingsTable } from "./settings-table.ts";
import { travelLines } from "./travel-lines.ts";
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
    ...travelLines(channel, numbers, columns),
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

function factsOf({ direction, safeUs, guardUs, doubt }: PlanChannel, columns: number): string[] {
  const [lowUs, highUs] = safeUs;
  const [lowGuardUs, highGuardUs] = guardUs;
  // Readings hold the servo's rotation too: where it is a cause of doubt, there are none.
  const isRead = doubt?.budget.every(({ cause }) => cause !== "rotation") ?? true;
  const turns = direction === "rising" ? "rises" : "falls";
  return [
    ...hang("Sense      ", `the pulse ${turns} as the deflection grows`, columns),
    ...hang(
      "Safe       ",
      `${formatNumber(lowUs, 1)} to ${pulseText(highUs)}; ${formatNumber(lowGuardUs, 1)} and ${pulseText(highGuardUs)} are kept clear of the stops, ${pulseText(lowUs - lowGuardUs)} and ${pulseText(highUs + highGuardUs)}`,
      columns,
    ),
    ...(isRead
      ? []
      : hang("Readings   ", "NOT MEASURED; degrees are worked out from the linkage alone", columns)),
  ];
}

function entriesOf(
  { limits, neutral, failsafe }: PlanChannel,
  { numbers, paint, columns }: ChannelStyle,
): string[] {
  const entries = [limits.low, limits.high, neutral, failsafe];
  const typed = [
    ...[limits.low, limits.high].map(({ percent }) => withKind(numbers.percent(percent), "limit", numbers)),
    ...[neutral, failsafe].map((position) => withKind(numbers.typed(position), "position", numbers)),
  ];
  return alignTable(
    "Channel",
    ["low limit", "high limit", "at rest", "failsafe"],
    [
      {
        head: "ENTER",
        unit: numbers.byShare ? "" : "%",
        cells: typed,
        paint: paint.strong,
      },
      { head: "pulse", unit: "us", cells: entries.map(({ pulseUs }) => formatNumber(pulseUs, 1)) },
    ],
    columns,
  );
}

function curveOf({ curve, curveWorstDeg }: PlanChannel, { numbers, paint, columns }: ChannelStyle): string[] {
  if (curve === undefined) return [];
  const worst =
    curveWorstDeg === undefined
      ? []
      : wrapText(
          `Either this curve, or the values under ENTER with the curve straight. Between its points the curve is at most ${formatNumber(curveWorstDeg, 2)} deg off.`,
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
          unit: numbers.positionUnit,
          cells: curve.map(numbers.typed),
          paint: paint.strong,
        },
        { head: "pulse", unit: "us", cells: curve.map(({ pulseUs }) => formatNumber(pulseUs, 1)) },
      ],
      columns,
    ),
    ...worst,
  ];
}
