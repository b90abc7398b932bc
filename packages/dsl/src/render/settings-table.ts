import { decimalsFor, formatNumber, type PlanChannel, type Setting } from "@hingeline/core";
import { alignTable, type Column } from "./align-table.ts";
import { decimalsShown } from "./decimals-shown.ts";
import { type Numbers, signed } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { settingText } from "./state-text.ts";
import { visibleText } from "./visible-text.ts";

/** The settings of a channel as a table: what is wanted, the exact pulse, what to enter and what that gives. */
export function settingsTable(
  channel: PlanChannel,
  numbers: Numbers,
  paint: Paint,
  columns: number,
): string[] {
  const { settings } = channel;
  if (settings.length === 0) return ["  Nothing moves this channel."];
  const several = new Set(settings.map(({ surface }) => surface)).size > 1;
  const labels = settings.map((setting) =>
    several ? `${visibleText(setting.surface)}: ${settingText(setting)}` : settingText(setting),
  );
  return alignTable("Position", labels, columnsOf(channel, numbers, paint), columns);
}

function columnsOf({ settings, curve }: PlanChannel, numbers: Numbers, paint: Paint): Column[] {
  const wantedDecimals = decimalsShown(settings.map(({ wanted }) => wanted?.deflectionDeg ?? 0));
  // No digit is shown that the doubt does not deserve.
  const givenDecimals =
    decimalsFor(Math.max(0, ...settings.map(({ gives }) => gives?.uncertaintyDeg ?? 0))) ?? 2;
  const column = (head: string, unit: string, cell: (setting: Setting) => string | undefined): Column => ({
    head,
    unit,
    cells: settings.map((setting) => cell(setting) ?? "-"),
  });
  const degrees = (value: number | undefined, decimals: number) =>
    value === undefined ? undefined : signed(value, decimals);
  const all = [
    column("wanted", "deg", ({ wanted }) => degrees(wanted?.deflectionDeg, wantedDecimals)),
    column("throw", "mm", ({ wanted }) => degrees(wanted?.throwMm, 1)),
    column("exact", "us", ({ exact }) => formatNumber(exact.pulseUs, 1)),
    {
      ...column("ENTER", numbers.positionUnit, ({ enter }) => numbers.typed(enter)),
      paint: paint.strong,
    },
    column("gives", "deg", ({ gives }) => degrees(gives?.deflectionDeg, givenDecimals)),
    column("off by", "deg", ({ gives }) => degrees(gives?.errorDeg, givenDecimals)),
    column("doubt", "deg", ({ gives }) =>
      gives?.uncertaintyDeg === undefined ? undefined : formatNumber(gives.uncertaintyDeg, givenDecimals),
    ),
    column("adds", numbers.positionUnit, ({ enter }) => numbers.percent(enter.addPercent)),
    column("curve", "%", ({ enter }) =>
      curve === undefined || enter.commandPercent === undefined
        ? undefined
        : numbers.percent(enter.commandPercent),
    ),
  ];
  return all.filter(({ cells }) => cells.some((cell) => cell !== "-"));
}
