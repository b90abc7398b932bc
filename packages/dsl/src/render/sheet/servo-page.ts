import type { Finding, Model, SetupPlan } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import { type Element, h, trueMinus } from "./element.ts";
import { enterTables } from "./enter-tables.ts";
import { findingList } from "./finding-list.ts";
import { gangTable } from "./gang-table.ts";
import { pageHead, type SheetFacts, signOff } from "./page-parts.ts";
import { notMeasured, servoFacts } from "./servo-facts.ts";
import { pagePictures } from "./servo-pictures.ts";
import type { SheetPage } from "./sheet-pages.ts";
import { matchText } from "./sides-plot.ts";
import { slidePanel } from "./slide-panel.ts";

/** Enough to set up one servo or a pair with nothing else at hand: values, pictures, facts, what to tick and who signs. */
export function servoPage(page: SheetPage, sheet: SheetFacts): Element {
  const { plan, model } = sheet;
  const findings = findingsOf(page, plan.findings, model).filter(({ severity }) => severity !== "note");
  const { pictures, fits } = pagePictures(page, plan, linesOf(findings));
  return h(
    "section",
    { class: fits ? "page one" : "page one flows", id: page.key, "aria-labelledby": `${page.key}-title` },
    pageHead(`${page.key}-title`, page.title, sheet),
    enterTables(page, plan),
    h("p", { class: "plain" }, howToEnter(plan)),
    slidePanel(page, plan.radio),
    h(
      "div",
      { class: "pictures" },
      unmeasured(page),
      pictures.map(({ name, element, screenOnly, beginsRow }) => [
        h(
          "figure",
          { class: `${screenOnly ? "screen " : ""}${beginsRow ? "first" : ""}`.trim() || undefined },
          element,
        ),
        name.endsWith(":sides") ? gangTable(page, plan) : undefined,
      ]),
    ),
    h(
      "div",
      { class: "facts" },
      page.servos.map((servo) =>
        h(
          "div",
          {},
          h("h3", {}, h("bdi", {}, visibleText(servo.described.id))),
          h(
            "dl",
            {},
            servoFacts(servo, plan, model).flatMap(({ name, text, warn }) => [
              h("dt", {}, name),
              h("dd", warn ? { class: "warn" } : {}, trueMinus(text)),
            ]),
          ),
        ),
      ),
    ),
    findingList(findings),
    checks(page, plan),
    signOff(page.key),
  );
}

function unmeasured({ servos }: SheetPage): readonly Element[] {
  return servos
    .filter(({ described }) => described.measured === undefined)
    .map(({ described }) =>
      h(
        "p",
        {},
        h("bdi", {}, visibleText(described.id)),
        `: deflection ${notMeasured}; only pulses are known.`,
      ),
    );
}

function howToEnter({ radio }: SetupPlan): string {
  return radio.endPoints === "scale"
    ? "Limits are percent; every other value is the share of the way between the limits, low −100, high +100. Adds: what to add where contributions are summed."
    : "ENTER is absolute, every other control at rest. Adds: what to add to the value at rest where contributions are summed.";
}

const caution =
  "At unexpected movement, buzzing or high current pull the receiver's supply. The cautions of the overview hold.";

/** The order in short; a plan with a procedure has it in full. (common practice, no source) */
function checks(page: SheetPage, plan: SetupPlan): Element {
  const [first, second] = page.servos;
  const match = first && second && matchText(first, second, plan);
  const steps = [
    "Motor made safe, model held",
    "Receiver off, linkages off, memory empty, trims 0",
    "Larger percent, longer pulse; then limits, then rest",
    "Level first, then the nearest position, outward",
    "Every pulse read at the servo lead: within one step",
    "Linkages on one at a time, surface at level",
    "Deflections read; left and right agree",
    "Signal loss and power-up seen, linkage off",
  ];
  return h(
    "div",
    { class: "plain" },
    h("p", {}, match === undefined ? "" : `${trueMinus(match)} `, caution),
    h(
      "ul",
      { class: "checks" },
      steps.map((step, index) =>
        h(
          "li",
          {},
          h("label", {}, h("input", { type: "checkbox", "data-keep": `${page.key}-check-${index}` }), step),
        ),
      ),
    ),
  );
}

/** Findings whose address names one of the page's surfaces, or a group that holds one. */
function findingsOf(
  page: SheetPage,
  findings: readonly Finding[],
  { groups = {} }: Model,
): readonly Finding[] {
  const names = new Set(page.servos.map(({ described }) => described.surface));
  for (const [group, { surfaces }] of Object.entries(groups))
    if (surfaces.some((surface) => names.has(surface))) names.add(group);
  return findings.filter(({ at }) => at.split(/[.[\]"]+/).some((part) => names.has(part)));
}

/** Printed lines that findings take, two thirds of their width filled. */
function linesOf(findings: readonly Finding[]): number {
  return findings.reduce((sum, { at, message, do: remedy }) => {
    return sum + Math.ceil((at.length + message.length + remedy.length + 12) / 90) + 0.4;
  }, 0);
}
