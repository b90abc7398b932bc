import { fingerprintOf, type Model, revisionOf, type SetupPlan } from "@hingeline/core";
import { countFindings } from "../findings-to-text.ts";
import { numbersOf } from "../numbers.ts";
import { editText } from "../procedure-lines.ts";
import { visibleText } from "../visible-text.ts";
import { trueMinus } from "./element.ts";
import { enterRows } from "./enter-rows.ts";
import { radioText, refusal } from "./page-parts.ts";
import { servoFacts } from "./servo-facts.ts";
import type { SheetServo } from "./servo-on-sheet.ts";
import type { SheetPage } from "./sheet-pages.ts";
import { sheetPages } from "./sheet-to-html.ts";
import { matchText } from "./sides-plot.ts";

/**
 * The bench sheet's values, facts, findings and procedure in Markdown (CommonMark with tables), for a pull request; with `surfaces` only
 * their pages.
 */
export function sheetToMarkdown(model: Model, plan: SetupPlan, surfaces?: readonly string[]): string {
  const errors = plan.findings.filter(({ severity }) => severity === "error").length;
  const blocks = [
    `# ${plain(plan.model)}`,
    ...(errors === 0 ? [] : [`**${refusal(errors)}**`]),
    `Revision ${revisionOf(fingerprintOf(plan))}, ${plain(radioText(plan.radio))}.`,
    ...sheetPages(model, plan, surfaces).flatMap((page) => pageBlocks(page, plan, model)),
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

function pageBlocks(page: SheetPage, plan: SetupPlan, model: Model): string[] {
  const [first, second] = page.servos;
  const match = first && second && matchText(first, second, plan);
  return [
    `## ${plain(page.title)}`,
    ...page.servos.flatMap((servo) => servoBlocks(servo, plan, model)),
    ...(match === undefined ? [] : [plain(match)]),
  ];
}

function servoBlocks(servo: SheetServo, plan: SetupPlan, model: Model): string[] {
  const { described, channel } = servo;
  const label = channel.labels?.[described.id];
  const rows = enterRows(servo, plan).map(
    ({ name, detail, enter, adds = "", pulse }) =>
      `| ${[name, detail, `**${enter}**`, adds, pulse].map((cell, index) => (index === 2 ? cell : plain(cell))).join(" | ")} |`,
  );
  return [
    `### Channel ${channel.channel}: ${plain(described.id)}${label === undefined ? "" : ` (${plain(label)})`}`,
    ["| position | wanted | ENTER % | adds % | pulse µs |", "|---|---|--:|--:|--:|", ...rows]
      .map(trueMinus)
      .join("\n"),
    ...list(servoFacts(servo, plan, model).map(({ name, text }) => trueMinus(`**${name}** ${plain(text)}`))),
  ];
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
