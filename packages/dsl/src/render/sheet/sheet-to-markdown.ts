import type { LineVerdict, Model, SetupPlan } from "@hingeline/core";
import { countFindings } from "../findings-to-text.ts";
import { numbersOf } from "../numbers.ts";
import { editText } from "../procedure-lines.ts";
import { visibleText } from "../visible-text.ts";
import { type AsBuiltLine, asBuiltLines, asBuiltResult } from "./as-built-lines.ts";
import { trueMinus } from "./element.ts";
import { enterRows } from "./enter-rows.ts";
import { findMatch, matchText } from "./match-text.ts";
import { radioText, refusal, shareText } from "./page-parts.ts";
import { type ReadBack, readBackOf } from "./read-back.ts";
import { expectedText, readText, verdictText } from "./read-words.ts";
import { servoFacts } from "./servo-facts.ts";
import type { SheetServo } from "./servo-on-sheet.ts";
import type { SheetPage } from "./sheet-pages.ts";
import { type SheetContent, sheetPages } from "./sheet-to-html.ts";

/**
 * The bench sheet's values, facts, findings and procedure in Markdown (CommonMark with tables), for a pull request; with `surfaces` only
 * their pages, with `asBuilt` what was read and its verdict.
 */
export function sheetToMarkdown(
  model: Model,
  plan: SetupPlan,
  { surfaces, asBuilt }: SheetContent = {},
): string {
  const readBack = readBackOf(model, plan, asBuilt);
  const errors = plan.findings.filter(({ severity }) => severity === "error").length;
  const blocks = [
    `# ${plain(plan.model)}`,
    ...(errors === 0 ? [] : [`**${refusal(errors)}**`]),
    `Revision ${readBack.verification.revision.ofPlan}, ${plain(radioText(plan.radio))}.`,
    ...(numbersOf(plan.radio).byShare ? [trueMinus(shareText)] : []),
    ...lineBlocks(asBuiltResult(readBack)),
    ...sheetPages(model, plan, surfaces).flatMap((page) => pageBlocks(page, plan, model, readBack)),
    ...(surfaces === undefined ? wholeBlocks(plan) : []),
    "## Cautions",
    ...list(plan.cautions.map(plain)),
  ];
  return `${blocks.join("\n\n")}\n`;
}

function wholeBlocks(plan: SetupPlan): string[] {
  return [
    `## Findings: ${countFindings(plan.findings)}`,
    ...list(
      plan.findings.map(
        ({ severity, at, message, do: remedy }) =>
          `**${severity}** ${at === "" ? "" : `${plain(at)}: `}${plain(message)} ${plain(remedy)}`,
      ),
    ),
    ...procedureBlocks(plan),
  ];
}

function pageBlocks(page: SheetPage, plan: SetupPlan, model: Model, readBack: ReadBack): string[] {
  const [first, second] = page.servos;
  const match = first && second && findMatch(first, second, plan.matches);
  return [
    `## ${plain(page.title)}`,
    ...page.servos.flatMap((servo) => servoBlocks(servo, plan, model, readBack)),
    ...lineBlocks(asBuiltLines(readBack, plan, page.servos)),
    ...(match === undefined ? [] : [plain(matchText(match))]),
  ];
}

function lineBlocks(lines: readonly AsBuiltLine[]): string[] {
  return list(lines.map(({ head, text }) => trueMinus(`**${head}** ${plain(text)}`)));
}

function servoBlocks(servo: SheetServo, plan: SetupPlan, model: Model, readBack: ReadBack): string[] {
  const { described, channel } = servo;
  const label = channel.labels?.[described.id];
  const isRead = readBack.asBuilt !== undefined;
  const rows = enterRows(servo, plan, readBack).map(({ name, detail, enter, unit, adds, pulse, read }) => [
    plain(name),
    plain(detail),
    withOwnUnit(`**${enter}**`, unit),
    adds === undefined ? "" : withOwnUnit(adds, unit),
    pulse,
    plain(expectedText(read.deflection)),
    ...(isRead ? [readCell(read.pulse), readCell(read.deflection)] : []),
  ]);
  const percent = numbersOf(plan.radio).byShare ? "" : " %";
  const heads = ["position", "wanted", `ENTER${percent}`, `adds${percent}`, "pulse µs", "expect °"];
  return [
    `### Channel ${channel.channel}: ${plain(described.id)}${label === undefined ? "" : ` (${plain(label)})`}`,
    [
      tableRow(isRead ? [...heads, "read µs", "read °"] : heads),
      `|---|---|--:|--:|--:|--:|${isRead ? "--:|--:|" : ""}`,
      ...rows.map(tableRow),
    ]
      .map(trueMinus)
      .join("\n"),
    ...list(servoFacts(servo, plan, model).map(({ name, text }) => trueMinus(`**${name}** ${plain(text)}`))),
  ];
}

function withOwnUnit(text: string, unit: string | undefined): string {
  return unit === undefined ? text : `${text} ${unit}`;
}

function tableRow(cells: readonly string[]): string {
  return `| ${cells.join(" | ")} |`;
}

/** "1698.0 agrees", "NOT MEASURED"; empty where there is nothing to measure. */
function readCell(verdict: LineVerdict | undefined): string {
  if (verdict === undefined) return "";
  return [readText(verdict) ?? [], verdictText(verdict)].flat().join(" ");
}

function procedureBlocks({ procedure, radio }: SetupPlan): string[] {
  if (procedure.length === 0) return [];
  const numbers = numbersOf(radio);
  const steps = procedure.map(({ text, edits, supply, linkage }, index) => {
    const state = `${supply === "off" ? "**Receiver OFF.** " : ""}${linkage === "off" ? "**Linkage OFF.** " : ""}`;
    const entries = edits.map((edit) => `   - ${plain(trueMinus(editText(edit, numbers)))}`);
    return [`${index + 1}. [ ] ${state}${plain(text)}`, ...entries].join("\n");
  });
  return ["## Procedure", steps.join("\n")];
}

function list(lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [lines.map((line) => `- ${line}`).join("\n")];
}

/** Text in which nothing is markup: on one line, and what Markdown or HTML would take for a sign escaped. */
function plain(text: string): string {
  return visibleText(text).replaceAll(/[\\`*_[\]<>#|~&!]/g, "\\$&");
}
