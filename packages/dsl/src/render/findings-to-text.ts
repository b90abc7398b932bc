import type { Finding, Severity } from "@hingeline/core";
import { type Paint, paintFor } from "./paint.ts";
import { visibleText } from "./visible-text.ts";
import { hang, wrapText } from "./wrap-text.ts";

const severities: readonly Severity[] = ["error", "warning", "note"];
const heads: Readonly<Record<Severity, string>> = { error: "ERROR", warning: "WARNING", note: "NOTE" };

/** How findings are shown. */
export interface FindingOptions {
  readonly colour?: boolean;
  readonly columns?: number;
  /** Lines to show below a finding, by its address. */
  readonly frames?: Frames | undefined;
  /** Words that stand in place of the notes, behind their count, where there is an error; left out, the notes stand. */
  readonly insteadOfNotes?: string | undefined;
}

/** Lines to show below a finding, by its address. */
export type Frames = ReadonlyMap<string, readonly string[]>;

/**
 * Findings for a person: their counts, then each by severity with its address, its sentence and what to do. Ends with a line
 * feed. Lines are at most `columns` wide.
 */
export function findingsToText(
  findings: readonly Finding[],
  { colour = false, columns = 80, frames, insteadOfNotes }: FindingOptions = {},
): string {
  const others = findings.filter(({ severity }) => severity !== "note");
  const notes = findings.length - others.length;
  const folds = insteadOfNotes !== undefined && notes > 0 && findings.some(isError);
  const lines = [
    `${countFindings(findings)}.`,
    ...findingLines(folds ? others : findings, paintFor(colour), columns, frames),
    ...(folds
      ? ["", ...wrapText(`${notes} note${notes === 1 ? "" : "s"}; ${insteadOfNotes}.`, columns)]
      : []),
  ];
  return `${lines.join("\n")}\n`;
}

function isError({ severity }: Finding): boolean {
  return severity === "error";
}

/** "2 errors, 1 warning, no notes" */
export function countFindings(findings: readonly Finding[]): string {
  return severities
    .map((severity) => {
      const count = findings.filter((finding) => finding.severity === severity).length;
      return `${count === 0 ? "no" : count} ${severity}${count === 1 ? "" : "s"}`;
    })
    .join(", ");
}

/** The findings as lines, a blank one before each, errors first; in their own order within a severity. */
export function findingLines(
  findings: readonly Finding[],
  paint: Paint,
  columns: number,
  frames: Frames = new Map(),
): string[] {
  const paints = { error: paint.error, warning: paint.warning, note: paint.faint };
  return severities.flatMap((severity) =>
    findings
      .filter((finding) => finding.severity === severity)
      .flatMap(({ code, at, message, do: remedy }) => {
        const where = at === "" ? "the model" : visibleText(at);
        return [
          "",
          ...hang(`${heads[severity]}  `, `${where} (${visibleText(code)})`, columns).map(paints[severity]),
          ...hang("  ", visibleText(message), columns),
          ...(remedy === "" ? [] : hang("  -> ", visibleText(remedy), columns)),
          ...(frames.get(at) ?? []),
        ];
      }),
  );
}
