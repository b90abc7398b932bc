import {
  type Finding,
  formatNumber,
  hasErrors,
  type Port,
  type PortedValue,
  type Remedy,
  type Unreachable,
} from "@hingeline/core";
import { alignTable } from "./align-table.ts";
import { movesSeveral, numbersOfBoth, placeText, radioWords, valueNames } from "./change-words.ts";
import { findingLines } from "./findings-to-text.ts";
import { type Numbers, pulseText, signed, withKind } from "./numbers.ts";
import { type Paint, paintFor } from "./paint.ts";
import { visibleText } from "./visible-text.ts";
import { hang, wrapText } from "./wrap-text.ts";

/**
 * What is entered on another radio beside what was entered on the model's own, what is lost and what would help, as text at most
 * `columns` wide (80 or more), ending with a line feed.
 */
export function portToText(
  port: Port,
  { colour = false, columns = 80 }: { readonly colour?: boolean; readonly columns?: number } = {},
): string {
  const paint = paintFor(colour);
  const { before, plan, values } = port;
  const refused = hasErrors(plan);
  const channels = [...new Set(values.map(({ channel }) => channel))];
  const lines = [
    ...hang("PORT   ", visibleText(plan.model), columns).map(paint.strong),
    ...hang("Radio  ", radioWords(before.radio, plan.radio) || "the same radio", columns),
    ...(refused ? ["", paint.error("DO NOT ENTER THIS: the plan on this radio has errors.")] : []),
    ...channels.flatMap((channel) => channelLines(port, channel, paint, columns)),
    ...wordsUnder(
      "OUT OF REACH",
      port.unreachable.map((one) => unreachableText(one, port)),
      paint,
      columns,
    ),
    ...wordsUnder("ANY ONE OF THESE WOULD HELP", port.remedies.map(remedyText), paint, columns),
    ...findingsUnder(port, paint, columns),
  ];
  return `${lines.join("\n")}\n`;
}

function channelLines(
  { before, plan, values }: Port,
  channel: number,
  paint: Paint,
  columns: number,
): string[] {
  const own = values.filter((value) => value.channel === channel);
  const [was, is] = numbersOfBoth(before, plan);
  const several = movesSeveral([before, plan], channel);
  const servos = [...before.channels, ...plan.channels].find((one) => one.channel === channel)?.servos ?? [];
  const labels = own.map(({ what }) =>
    typeof what === "string" ? valueNames[what] : placeText(what, several),
  );
  const cells = (show: (value: PortedValue) => string | undefined) => own.map((value) => show(value) ?? "-");
  const gives = (deflectionDeg: number | undefined) =>
    deflectionDeg === undefined ? undefined : signed(deflectionDeg, 1);
  const table = [
    {
      head: "was",
      unit: was.byShare ? "" : "%",
      cells: cells(({ before: old, what }) => old && typedText(old.percent, what, was)),
    },
    {
      head: "ENTER",
      unit: is.byShare ? "" : "%",
      cells: cells(({ after, what }) => after && typedText(after.percent, what, is)),
      paint: paint.strong,
    },
    { head: "was", unit: "us", cells: cells(({ before: old }) => old && formatNumber(old.pulseUs, 1)) },
    { head: "now", unit: "us", cells: cells(({ after }) => after && formatNumber(after.pulseUs, 1)) },
    { head: "was", unit: "deg", cells: cells(({ before: old }) => gives(old?.givesDeg)) },
    { head: "now", unit: "deg", cells: cells(({ after }) => gives(after?.givesDeg)) },
    { head: "retyped", unit: "deg", cells: cells(({ retyped }) => gives(retyped?.deflectionDeg)) },
  ].filter((column) => column.cells.some((cell) => cell !== "-"));
  const retyped = table.some(({ head }) => head === "retyped")
    ? wrapText("retyped: where the old percent, typed into this radio, would put the surface.", columns - 2)
    : [];
  return [
    "",
    ...hang(`CHANNEL ${channel}   `, servos.map(visibleText).join(" and "), columns).map(paint.strong),
    ...alignTable("Position", labels, table, columns),
    ...retyped.map((line) => paint.faint(`  ${line}`)),
  ];
}

function typedText(percent: number, what: PortedValue["what"], numbers: Numbers): string {
  const kind = what === "lowLimit" || what === "highLimit" ? "limit" : "position";
  return withKind(numbers.percent(percent), kind, numbers);
}

function unreachableText({ place, pulseUs, kind, reachUs }: Unreachable, { before, plan }: Port): string {
  const what = `channel ${place.channel}, ${placeText(place, movesSeveral([before, plan], place.channel))}`;
  const needs = `${what}: needs ${pulseText(pulseUs)}`;
  switch (kind) {
    case "past-reach":
      return `${needs}; this radio ends at ${pulseText(reachUs)}`;
    case "with-channel":
      return `${needs}, which could be sent, but the channel is lost with the others`;
    case "no-step":
      return `${needs}; no step of this radio lies where it is safe`;
  }
}

function remedyText(remedy: Remedy): string {
  const channel = `channel ${remedy.channel}: `;
  switch (remedy.kind) {
    case "shift": {
      const shaft =
        remedy.shaftDeg === undefined
          ? ""
          : `, ${formatNumber(Math.abs(remedy.shaftDeg), 1)} deg of the shaft`;
      const way = remedy.byUs < 0 ? "shorter" : "longer";
      return `${channel}move the arm on its shaft so that every pulse is ${formatNumber(Math.abs(remedy.byUs), 0)} us ${way}${shaft}, and measure the bench again`;
    }
    case "reach":
      return `${channel}a radio that reaches ${formatNumber(remedy.reachPercent, 1)} %`;
    case "step":
      return `${channel}a radio with steps of ${remedy.stepPercent} %`;
  }
}

function findingsUnder({ changes }: Port, paint: Paint, columns: number): string[] {
  const news = changes.flatMap((change): readonly Finding[] =>
    change.kind === "finding" && change.before === undefined && change.after !== undefined
      ? [change.after]
      : [],
  );
  return news.length === 0 ? [] : ["", paint.strong("NEW FINDINGS"), ...findingLines(news, paint, columns)];
}

function wordsUnder(title: string, texts: readonly string[], paint: Paint, columns: number): string[] {
  return texts.length === 0
    ? []
    : ["", paint.strong(title), ...texts.flatMap((text) => hang("- ", text, columns))];
}
