import { formatNumber, type SettingDoubt } from "@hingeline/core";
import { alignTable } from "./align-table.ts";
import { causeNames, causeTable, drawnTable, heatTable, summaryTable } from "./doubt-tables.ts";
import { type Paint, paintFor } from "./paint.ts";
import { settingText } from "./state-text.ts";
import { visibleText } from "./visible-text.ts";
import { hang, wrapText } from "./wrap-text.ts";

/**
 * How sure each position is and why, as text at most `columns` wide (80 or more), ending with a line feed. `doubts` are in the order of the
 * plan of `model`, at least one.
 */
export function doubtToText(
  model: string,
  doubts: readonly SettingDoubt[],
  { colour = false, columns = 80 }: { readonly colour?: boolean; readonly columns?: number } = {},
): string {
  const paint = paintFor(colour);
  const channels = [...new Set(doubts.map(({ channel }) => channel))];
  const lines = [
    ...hang("DOUBT   ", visibleText(model), columns).map(paint.strong),
    ...meaningLines(doubts, columns),
    ...channels.flatMap((channel) =>
      channelLines(
        channel,
        doubts.filter((one) => one.channel === channel),
        paint,
        columns,
      ),
    ),
  ];
  return `${lines.join("\n")}\n`;
}

function meaningLines([first]: readonly SettingDoubt[], columns: number): string[] {
  if (first === undefined) return [];
  const held = `about ${formatNumber(first.coverage * 100, 0)} % (k = ${formatNumber(first.k, 0)})`;
  return wrapText(
    `What a position gives is true to plus and minus its doubt, which holds ${held}. Halved: what the doubt would be with half of its largest cause. Each alone: the standard doubt (k = 1) from that cause.`,
    columns,
  );
}

function channelLines(
  channel: number,
  doubts: readonly SettingDoubt[],
  paint: Paint,
  columns: number,
): string[] {
  const servos = [...new Set(doubts.map(({ servo }) => servo))];
  const labels = doubts.map((one) =>
    servos.length > 1 ? `${visibleText(one.servo)}: ${settingText(one)}` : settingText(one),
  );
  const causes = causeNames(doubts);
  const table = (head: string, cells: ReturnType<typeof summaryTable>) =>
    cells.length === 0 ? [] : ["", ...alignTable(head, labels, cells, columns)];
  return [
    "",
    ...hang(`CHANNEL ${channel}   `, servos.map(visibleText).join(" and "), columns).map(paint.strong),
    ...table("Position", summaryTable(doubts, paint)),
    ...table("Each alone, deg", causeTable(doubts, causes, "standard")),
    ...table("Its share, %", causeTable(doubts, causes, "share")),
    ...table("Heat and cold may add", heatTable(doubts)),
    ...table("Drawn by chance", drawnTable(doubts)),
    ...drawnLines(doubts, labels, columns),
  ];
}

/** Whether the draws bear out what was worked out along straight lines, in words. */
function drawnLines(doubts: readonly SettingDoubt[], labels: readonly string[], columns: number): string[] {
  const drawn = doubts.flatMap((one, row) =>
    one.drawn === undefined ? [] : [{ ...one.drawn, label: labels[row] ?? "" }],
  );
  if (drawn.length === 0) return [];
  const sentences = [
    ...(drawn.every(({ straightLineHolds }) => straightLineHolds)
      ? ["At every position the straight-line doubt is right to its digits."]
      : drawn.map(
          ({ label, straightLineHolds, straightLineExcessDeg }) =>
            `${label}: the straight-line doubt is ${straightLineHolds ? "right to its digits" : excessText(straightLineExcessDeg)}.`,
        )),
    ...drawn
      .filter(({ beyond }) => beyond > 0)
      .map(
        ({ label, beyond }) =>
          `${label}: ${percentText(beyond)} % of the draws went past the readings, where the response was taken to go on straight.`,
      ),
    ...drawn
      .filter(({ settled }) => settled === false)
      .map(({ label }) => `${label}: its second digit did not stand still; ask for more draws.`),
  ];
  return ["", ...sentences.flatMap((text) => hang("  - ", text, columns))];
}

function excessText(excessDeg: number): string {
  return `${formatNumber(Math.abs(excessDeg), 2)} deg too ${excessDeg > 0 ? "wide" : "narrow"}`;
}

function percentText(share: number): string {
  const percent = share * 100;
  return percent < 1 ? "less than 1" : formatNumber(percent, 0);
}
