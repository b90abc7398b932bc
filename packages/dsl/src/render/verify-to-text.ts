import type { AsBuilt, Cause, LineVerdict, MatchVerdict, SetupPlan, Verification } from "@hingeline/core";
import { type Paint, paintFor } from "./paint.ts";
import { verifiedChannel, verifiedMatches } from "./verify-tables.ts";
import {
  causesIntro,
  farTexts,
  resultText,
  takenOnText,
  unexplainedText,
  unsafeTexts,
} from "./verify-words.ts";
import { visibleText } from "./visible-text.ts";
import { hang, wrapText } from "./wrap-text.ts";

/**
 * As-built readings held against their plan, as text for the bench, at most `columns` wide (80 or more), ending with a line feed. What is
 * unsafe comes first, then the causes, every line of the plan with its verdict, the cautions, and the lines to sign.
 */
export function verifyToText(
  verification: Verification,
  plan: SetupPlan,
  asBuilt: AsBuilt,
  { colour = false, columns = 80 }: { readonly colour?: boolean; readonly columns?: number } = {},
): string {
  const paint = paintFor(colour);
  const { verdicts, causes } = verification;
  const matches = verdicts.filter((one): one is MatchVerdict => one.quantity === "match");
  const rule = "-".repeat(columns);
  const section = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ["", rule, paint.strong(title), "", ...lines];
  const lines = [
    ...headOf(verification, plan, asBuilt, paint, columns),
    ...unsafeLines(verdicts, plan, columns).map(paint.error),
    ...section("CAUSES", causeLines(causes, verdicts, columns)),
    ...plan.channels.flatMap((channel) => ["", rule, ...verifiedChannel(channel, verdicts, paint, columns)]),
    ...section("MATCHED SURFACES", verifiedMatches(matches, paint, columns)),
    ...section(
      "NOT IN THE PLAN",
      verification.strays.flatMap((text) => hang("- ", visibleText(text), columns)),
    ),
    ...section("CAUTIONS", cautionLines(plan, asBuilt, columns)),
    ...section("SIGN-OFF", signLines(verification, asBuilt, columns)),
  ];
  return `${lines.join("\n")}\n`;
}

function headOf(
  verification: Verification,
  plan: SetupPlan,
  { by = "", date = "" }: AsBuilt,
  paint: Paint,
  columns: number,
): string[] {
  const who = [...(by === "" ? [] : [`by ${visibleText(by)}`]), ...(date === "" ? [] : [visibleText(date)])];
  return [
    ...hang("AS-BUILT   ", visibleText(plan.model), columns).map(paint.strong),
    "",
    ...hang("Result     ", resultText(verification), columns).map(
      verification.passed ? paint.strong : paint.error,
    ),
    ...hang("Plan       ", `revision ${verification.revision.ofPlan}`, columns),
    ...hang("Readings   ", [takenOnText(verification), ...who].join(", "), columns),
    ...hang(
      "Signs      ",
      "deflections are positive trailing edge down, a rudder's trailing edge to port",
      columns,
    ),
  ];
}

function unsafeLines(verdicts: readonly LineVerdict[], plan: SetupPlan, columns: number): string[] {
  const lines = [...unsafeTexts(verdicts, plan), ...farTexts(verdicts)].flatMap((text) =>
    hang("! ", text, columns),
  );
  return lines.length === 0 ? [] : ["", ...lines];
}

function causeLines(causes: readonly Cause[], verdicts: readonly LineVerdict[], columns: number): string[] {
  const intro = causesIntro(causes, verdicts);
  const unexplained = unexplainedText(causes, verdicts);
  return [
    ...(intro === undefined ? [] : wrapText(intro, columns)),
    ...causes.flatMap((cause) => [
      "",
      ...hang("- ", visibleText(cause.message), columns),
      ...hang("  -> ", visibleText(cause.do), columns),
    ]),
    ...(unexplained === undefined ? [] : ["", ...hang("- ", unexplained, columns)]),
  ];
}

function cautionLines({ cautions }: SetupPlan, { checkedBy = "" }: AsBuilt, columns: number): string[] {
  const second =
    checkedBy === ""
      ? ["No second person has checked this. Have it read back by someone else before flight."]
      : [];
  return [...second, ...cautions].flatMap((text) => hang("- ", visibleText(text), columns));
}

function signLines(
  { revision, passed }: Verification,
  { by = "", checkedBy = "" }: AsBuilt,
  columns: number,
): string[] {
  const line = "_".repeat(30);
  const names = [
    ["Builder", by],
    ["Checker", checkedBy],
  ] as const;
  return [
    ...(passed ? [] : [...wrapText("Not to be signed until it passes.", columns), ""]),
    ...wrapText(`Read back and measured against plan revision ${revision.ofPlan}.`, columns),
    ...names.flatMap(([role, name]) => [
      "",
      ...(name === "" ? [] : hang(`${role}    `, visibleText(name), columns)),
      `${name === "" ? role : "Signed "}    ${line}   Date ${"_".repeat(14)}`,
    ]),
  ];
}
