import { formatNumber, type SettingDoubt } from "@hingeline/core";
import { alignTable } from "./align-table.ts";
import { assumedMark, causeLines } from "./doubt-causes.ts";
import { causeNames, causeTable, drawnTable, heatTable, partsThatFit, summaryTable } from "./doubt-tables.ts";
import { type Paint, paintFor } from "./paint.ts";
import { settingText } from "./state-text.ts";
import { visibleText } from "./visible-text.ts";
import { hang, wrapText } from "./wrap-text.ts";

/** How doubts are shown. */
export interface DoubtTextOptions {
  readonly colour?: boolean;
  readonly columns?: number;
  /** One table of all positions, without how each cause adds to them. */
  readonly short?: boolean;
}

/**
 * How sure each position is and why, as text at most `columns` wide (80 or more), ending with a line feed. `doubts` are in the order of the
 * plan of `model`, at least one.
 */
export function doubtToText(
  model: string,
  doubts: readonly SettingDoubt[],
  { colour = false, columns = 80, short = false }: DoubtTextOptions = {},
): string {
  const paint = paintFor(colour);
  const channels = [...new Set(doubts.map(({ channel }) => channel))];
  const named = short
    ? [...new Set(doubts.flatMap(({ improve }) => improve?.cause ?? []))]
    : causeNames(doubts);
  const lines = [
    ...hang("DOUBT   ", visibleText(model), columns).map(paint.strong),
    ...meaningLines(doubts, short, columns),
    "",
    paint.strong(short ? "WHAT MAKES IT MOST UNSURE" : "WHAT MAKES A POSITION UNSURE"),
    ...causeLines(doubts, named, columns),
    ...(short
      ? answerLines(doubts, true, paint, columns)
      : channels.flatMap((channel) =>
          channelLines(
            channel,
            doubts.filter((one) => one.channel === channel),
            paint,
            columns,
          ),
        )),
  ];
  return `${lines.join("\n")}\n`;
}

function meaningLines([first]: readonly SettingDoubt[], short: boolean, columns: number): string[] {
  if (first === undefined) return [];
  const held = `about ${formatNumber(first.coverage * 100, 0)} % (k = ${formatNumber(first.k, 0)})`;
  return wrapText(
    `What a position gives is true to plus and minus its doubt, which holds ${held}. Halved: what the doubt would be with half of its largest cause.${short ? "" : " Each alone: the standard doubt (k = 1) from that cause."} A cause with ${assumedMark} is assumed: the model does not state it.`,
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
  return [
    "",
    ...hang(`CHANNEL ${channel}   `, servos.map(visibleText).join(" and "), columns).map(paint.strong),
    ...answerLines(doubts, false, paint, columns),
  ];
}

/** The tables of some positions; where they are asked for by name, without how each cause adds to them. */
function answerLines(
  doubts: readonly SettingDoubt[],
  short: boolean,
  paint: Paint,
  columns: number,
): string[] {
  const namesServo = short || new Set(doubts.map(({ servo }) => servo)).size > 1;
  const labels = doubts.map((one) =>
    namesServo ? `${visibleText(one.servo)}: ${settingText(one)}` : settingText(one),
  );
  const causes = causeNames(doubts);
  const table = (head: string, cells: ReturnType<typeof summaryTable>) =>
    partsThatFit(cells, columns).flatMap((part) => ["", ...alignTable(head, labels, part, columns)]);
  return [
    ...table("Position", summaryTable(doubts, paint)),
    ...(short
      ? []
      : [
          ...table("Each alone, deg", causeTable(doubts, causes, "standard")),
          ...table("Its share, %", causeTable(doubts, causes, "share")),
        ]),
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
  const past = drawn.filter(({ beyond }) => beyond > 0);
  const sentences = [
    ...(drawn.every(({ straightLineHolds }) => straightLineHolds)
      ? ["At every position the draws agree with the doubt above."]
      : drawn.map(({ label, straightLineHolds, straightLineExcessDeg }) =>
          straightLineHolds
            ? `${label}: the draws agree with the doubt above.`
            : `${label}: the doubt above, worked out as if the response were straight there, is ${excessText(straightLineExcessDeg)}; go by the draws.`,
        )),
    ...past.map(
      ({ label, beyond }) => `${label}: ${percentText(beyond)} % of the draws lay past the last reading.`,
    ),
    ...(past.length === 0
      ? []
      : [
          "Past the last reading the response is not known; these draws alone take it to go on straight, to see what a pulse that is a little off would do. No position of the plan lies there.",
        ]),
    ...(drawn.some(({ settled, draws }) => settled !== undefined && draws !== drawn[0]?.draws)
      ? ["Each position was drawn until its doubt stood still; some need more draws than others."]
      : []),
    ...drawn
      .filter(({ settled }) => settled === false)
      .map(({ label }) => `${label}: its doubt did not stand still; ask for more draws.`),
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
