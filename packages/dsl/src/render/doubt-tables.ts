import { decimalsFor, formatNumber, type SettingDoubt } from "@hingeline/core";
import { type Column, columnWidth, leastLabelWidth } from "./align-table.ts";
import { assumedMark, wordsOf } from "./doubt-causes.ts";
import { signed } from "./numbers.ts";
import type { Paint } from "./paint.ts";

/** Each position with its doubt, the cause to look at first and what half of that would leave. */
export function summaryTable(doubts: readonly SettingDoubt[], paint: Paint): Column[] {
  const decimals = decimalsOfDoubts(doubts);
  const finer = decimals + (hidesHalving(doubts, decimals) ? 1 : 0);
  return [
    column("pulse", "us", doubts, ({ pulseUs }) => formatNumber(pulseUs, 1)),
    column("gives", "deg", doubts, ({ deflectionDeg }) => signed(deflectionDeg, decimals)),
    {
      ...column("doubt", "deg", doubts, ({ expandedDeg }) => formatNumber(expandedDeg, finer)),
      paint: paint.strong,
    },
    column(
      "improve",
      "first",
      doubts,
      ({ improve, budget: [largest] }) =>
        improve && wordsOf(improve.cause) + (largest?.assumed === undefined ? "" : assumedMark),
    ),
    column("halved", "deg", doubts, ({ improve }) => improve && formatNumber(improve.halvedDeg, finer)),
    column("degrees of", "freedom", doubts, ({ dof }) =>
      dof === undefined ? undefined : formatNumber(Math.floor(dof), 0),
    ),
  ].filter(hasCells);
}

/** All causes of these doubts, the one first that has the largest share anywhere. */
export function causeNames(doubts: readonly SettingDoubt[]): readonly string[] {
  const largest = new Map<string, number>();
  for (const { cause, share } of doubts.flatMap(({ budget }) => budget))
    largest.set(cause, Math.max(share, largest.get(cause) ?? 0));
  return [...largest].sort(([, a], [, b]) => b - a).map(([cause]) => cause);
}

/** What each cause alone would make of each position, degrees, k = 1; or its share of the variance in percent. */
export function causeTable(
  doubts: readonly SettingDoubt[],
  causes: readonly string[],
  what: "standard" | "share",
): Column[] {
  // A part of a doubt shows one digit more than the doubt.
  const decimals = decimalsOfDoubts(doubts) + 1;
  return causes.map((cause) => {
    const [head = "", ...unit] = wordsOf(cause).split(" ");
    return column(head, unit.join(" "), doubts, ({ budget }) => {
      const line = budget.find((one) => one.cause === cause);
      if (line === undefined) return undefined;
      return what === "share" ? formatNumber(line.share * 100, 0) : formatNumber(line.standardDeg, decimals);
    });
  });
}

/** What heat and cold may add in flight; no columns where no position has any. */
export function heatTable(doubts: readonly SettingDoubt[]): Column[] {
  const decimals = decimalsOfDoubts(doubts);
  return [
    column("over", "K", doubts, ({ heat }) => heat && formatNumber(heat.kelvin, 0)),
    column("servo", "us", doubts, ({ heat }) => heat && formatNumber(heat.servoUs, 1)),
    column("servo", "deg", doubts, ({ heat }) => heat && formatNumber(heat.servoDeg, decimals)),
    column("rod", "mm", doubts, ({ heat }) => heat?.rod && formatNumber(heat.rod.growthMm, 2)),
    column("rod", "deg", doubts, ({ heat }) => heat?.rod && formatNumber(heat.rod.deflectionDeg, decimals)),
    column("both", "deg", doubts, ({ heat }) => heat && formatNumber(heat.shiftDeg, decimals)),
  ].filter(hasCells);
}

/** What the draws gave; no columns where none were made. */
export function drawnTable(doubts: readonly SettingDoubt[]): Column[] {
  const decimals = decimalsOfDoubts(doubts);
  return [
    column("draws", "", doubts, ({ drawn }) => drawn && String(drawn.draws)),
    column("mean", "deg", doubts, ({ drawn }) => drawn && signed(drawn.meanDeg, decimals + 1)),
    column("standard", "deg", doubts, ({ drawn }) => drawn && formatNumber(drawn.standardDeg, decimals + 1)),
    column("95 % from", "deg", doubts, ({ drawn }) => drawn && signed(drawn.shortestDeg[0], decimals)),
    column("to", "deg", doubts, ({ drawn }) => drawn && signed(drawn.shortestDeg[1], decimals)),
  ].filter(hasCells);
}

/** The columns of a table in parts that each leave room for a label, because a linkage has more causes than a line has room for. */
export function partsThatFit(table: readonly Column[], columns: number): Column[][] {
  const parts: Column[][] = [];
  let left = 0;
  for (const one of table) {
    const width = columnWidth(one);
    if (parts.length === 0 || width > left) {
      parts.push([]);
      left = columns - leastLabelWidth;
    }
    parts.at(-1)?.push(one);
    left -= width;
  }
  return parts;
}

function column(
  head: string,
  unit: string,
  doubts: readonly SettingDoubt[],
  cell: (doubt: SettingDoubt) => string | undefined,
): Column {
  return { head, unit, cells: doubts.map((one) => cell(one) ?? "-") };
}

function hasCells({ cells }: Column): boolean {
  return cells.some((cell) => cell !== "-");
}

/** No digit is shown that the doubt does not deserve. */
function decimalsOfDoubts(doubts: readonly SettingDoubt[]): number {
  return decimalsFor(Math.max(0, ...doubts.map(({ expandedDeg }) => expandedDeg))) ?? 2;
}

/** Whether halving a cause brings less anywhere than the last decimal shows. */
function hidesHalving(doubts: readonly SettingDoubt[], decimals: number): boolean {
  return doubts.some(
    ({ expandedDeg, improve }) =>
      improve !== undefined &&
      formatNumber(expandedDeg, decimals) === formatNumber(improve.halvedDeg, decimals),
  );
}
