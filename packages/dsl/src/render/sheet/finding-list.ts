import type { Finding, Severity } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import { type Element, h, trueMinus } from "./element.ts";

const words: Readonly<Record<Severity, string>> = { error: "ERROR", warning: "WARNING", note: "Note" };

/** Findings with their severity as a word, the address, the sentence and what to do. */
export function findingList(findings: readonly Finding[]): Element | undefined {
  if (findings.length === 0) return undefined;
  return h(
    "div",
    { class: "findings" },
    findings.map(({ severity, at, message, do: remedy }) =>
      h(
        "p",
        { class: `finding ${severity}` },
        h("b", {}, words[severity]),
        " ",
        at === "" ? "" : [h("bdi", {}, visibleText(at)), ": "],
        trueMinus(visibleText(remedy === "" ? message : `${message} ${remedy}`)),
      ),
    ),
  );
}
