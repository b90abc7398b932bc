import { type Edit, formatNumber, type ProcedureStep } from "@hingeline/core";
import { numbersOf } from "../numbers.ts";
import { editText } from "../procedure-lines.ts";
import { visibleText } from "../visible-text.ts";
import { type Element, h, trueMinus } from "./element.ts";
import { pageHead, type SheetFacts } from "./page-parts.ts";

/** The order of entry with boxes to tick and blanks for what the pulse meter shows; undefined for a plan without one. */
export function procedurePage(sheet: SheetFacts): Element | undefined {
  const { procedure, radio } = sheet.plan;
  if (procedure.length === 0) return undefined;
  const numbers = numbersOf(radio);
  return h(
    "section",
    { class: "page", id: "procedure", "aria-labelledby": "procedure-title" },
    pageHead("procedure-title", "Procedure", sheet),
    h(
      "ol",
      { class: "steps plain" },
      procedure.map((step, index) =>
        h(
          "li",
          {},
          h(
            "label",
            {},
            h("input", { type: "checkbox", "data-keep": `step-${index}` }),
            h("span", {}, h("b", {}, standText(step)), visibleText(step.text)),
          ),
          h(
            "ul",
            {},
            worthShowing(step).map((edit) => h("li", {}, trueMinus(editText(edit, numbers)))),
          ),
          h(
            "div",
            { class: "expect" },
            step.expect.map(({ channel, pulseUs: [lowUs, highUs] }) =>
              h(
                "p",
                {},
                h(
                  "label",
                  {},
                  `Channel ${channel} reads ${formatNumber(lowUs, 1)} to ${formatNumber(highUs, 1)} µs: `,
                  h("input", { "data-keep": `step-${index}-${channel}`, size: 8, autocomplete: "off" }),
                ),
              ),
            ),
          ),
        ),
      ),
    ),
  );
}

/** Edits with a value of their own; the others are what the step itself says. */
function worthShowing({ edits, phase }: ProcedureStep): readonly Edit[] {
  if (phase === "collapse") return [];
  return edits.filter(({ percent, seconds }) => percent !== undefined || seconds !== undefined);
}

function standText({ supply, linkage }: ProcedureStep): string {
  return `${supply === "off" ? "Receiver OFF. " : ""}${linkage === "off" ? "Linkage OFF. " : ""}`;
}
