import {
  type ChannelCheck,
  type Finding,
  fingerprintOf,
  hasErrors,
  type PlanChange,
  type ProcedureStep,
  revisionOf,
  type SetupPlan,
  type VerifyAgain,
} from "@hingeline/core";
import {
  changeWords,
  computedWords,
  movesSeveral,
  numbersOfBoth,
  placeText,
  radioWords,
} from "./change-words.ts";
import { findingLines } from "./findings-to-text.ts";
import { type Paint, paintFor } from "./paint.ts";
import { procedureLines } from "./procedure-lines.ts";
import { visibleText } from "./visible-text.ts";
import { hang } from "./wrap-text.ts";

/** Two plans, by the names under which they are known, and what differs. */
export interface PlanDiff {
  readonly names: readonly [before: string, after: string];
  readonly before: SetupPlan;
  readonly after: SetupPlan;
  readonly changes: readonly PlanChange[];
  readonly verify: VerifyAgain;
  /** The order in which to enter the changes, where it was asked for. */
  readonly procedure?: readonly ProcedureStep[];
}

/** What differs between two plans as text, at most `columns` wide (80 or more), ending with a line feed. */
export function diffToText(
  diff: PlanDiff,
  { colour = false, columns = 80 }: { readonly colour?: boolean; readonly columns?: number } = {},
): string {
  const paint = paintFor(colour);
  const { names, before, after, changes } = diff;
  const lines = [
    ...hang("BEFORE  ", `${visibleText(names[0])}, revision ${revisionOf(fingerprintOf(before))}`, columns),
    ...hang("AFTER   ", `${visibleText(names[1])}, revision ${revisionOf(fingerprintOf(after))}`, columns),
    ...(changes.length === 0 ? ["", "Nothing differs."] : []),
    ...wholeLines(changes, columns),
    ...channelLines(diff, paint, columns),
    ...findingChanges(changes, paint, columns),
    ...changes.flatMap((change) =>
      change.kind === "computed"
        ? ["", ...hang("Computed anew  ", computedWords(change.parts), columns)]
        : [],
    ),
    ...verifyLines(diff, paint, columns),
    ...orderLines(diff, paint, columns),
  ];
  return `${lines.join("\n")}\n`;
}

function wholeLines(changes: readonly PlanChange[], columns: number): readonly string[] {
  return changes.flatMap((change) => {
    if (change.kind === "model") {
      const [was, is] = [change.before ?? "", change.after ?? ""].map(visibleText);
      return ["", ...hang("Model  ", `${was} -> ${is}`, columns)];
    }
    if (change.kind !== "radio" || change.before === undefined || change.after === undefined) return [];
    return ["", ...hang("Radio  ", radioWords(change.before, change.after), columns)];
  });
}

function channelLines(
  { before, after, changes }: PlanDiff,
  paint: Paint,
  columns: number,
): readonly string[] {
  const [was, is] = numbersOfBoth(before, after);
  const numbers = [...new Set(changes.map(channelOf))].filter((channel) => channel !== undefined);
  return numbers.flatMap((channel) => {
    const [old, now] = [before, after].map(({ channels }) => channels.find((one) => one.channel === channel));
    const several = movesSeveral([before, after], channel);
    const state =
      old === undefined
        ? " (new)"
        : now === undefined
          ? " (gone: nothing of it may stay on this output)"
          : "";
    const servos = (now ?? old)?.servos.map(visibleText).join(" and ") ?? "";
    const words = changes
      .filter((change) => channelOf(change) === channel && !(change.kind === "channel" && state !== ""))
      .flatMap((change) => {
        const line = changeWords(change, was, is, several);
        return line === undefined ? [] : hang("  ", `${line[0]}: ${line[1]}`, columns);
      });
    return ["", ...hang(`CHANNEL ${channel}   `, servos + state, columns).map(paint.strong), ...words];
  });
}

function channelOf(change: PlanChange): number | undefined {
  if (change.kind === "setting") return change.place.channel;
  return "channel" in change ? change.channel : undefined;
}

/** New findings in full, those that are gone or only have other numbers by their name. */
function findingChanges(changes: readonly PlanChange[], paint: Paint, columns: number): readonly string[] {
  const found = changes.filter((change) => change.kind === "finding");
  const news = found.flatMap(({ before, after }) =>
    after !== undefined && before?.severity !== after.severity ? [after] : [],
  );
  const gone = found.flatMap(({ before, after }) =>
    before !== undefined && after === undefined ? [before] : [],
  );
  const others = found.flatMap(({ before, after }) =>
    after !== undefined && before?.severity === after.severity ? [after] : [],
  );
  const byName = (title: string, findings: readonly Finding[]) => [
    ...(findings.length === 0 ? [] : [""]),
    ...findings.flatMap(({ code, at }) =>
      hang(`${title}  `, `${at === "" ? "the model" : visibleText(at)} (${visibleText(code)})`, columns),
    ),
  ];
  return [
    ...(news.length === 0 ? [] : ["", paint.strong("NEW FINDINGS"), ...findingLines(news, paint, columns)]),
    ...byName("Finding gone", gone),
    ...byName("Finding with other numbers", others),
  ];
}

function verifyLines({ before, after, verify }: PlanDiff, paint: Paint, columns: number): readonly string[] {
  const { channels, groups } = verify;
  if (channels.length === 0) return [];
  const textOf = ({ channel, everything, parts, settings }: ChannelCheck) => {
    const several = movesSeveral([before, after], channel);
    return everything
      ? "everything"
      : [...settings.map((place) => placeText(place, several)), ...parts].join("; ");
  };
  return [
    "",
    paint.strong("VERIFY AGAIN"),
    ...channels.flatMap((check) => hang(`[ ] channel ${check.channel}: `, textOf(check), columns)),
    ...groups.flatMap((group) => hang("[ ] ", `left against right: ${visibleText(group)}`, columns)),
  ];
}

function orderLines(
  { after, changes, procedure }: PlanDiff,
  paint: Paint,
  columns: number,
): readonly string[] {
  if (procedure === undefined || changes.length === 0) return [];
  const refused = hasErrors(after);
  const none = refused
    ? "There is no order of entry: the plan after the change has errors."
    : "There is nothing to enter.";
  const [, numbers] = numbersOfBoth(after, after);
  return [
    "",
    "-".repeat(columns),
    paint.strong("PROCEDURE"),
    ...(procedure.length === 0 ? ["", none] : procedureLines(procedure, numbers, paint, columns)),
  ];
}
