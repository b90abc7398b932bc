import type { Finding, Model, SetupPlan } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import { type AsBuiltLine, asBuiltLines, asBuiltResult } from "./as-built-lines.ts";
import { asBuiltList } from "./as-built-list.ts";
import { type Element, h, trueMinus } from "./element.ts";
import { enterTables } from "./enter-tables.ts";
import { findingList } from "./finding-list.ts";
import { gangTable } from "./gang-table.ts";
import { findMatch, matchText } from "./match-text.ts";
import { pageHead, type SheetFacts, shareText, signOff } from "./page-parts.ts";
import { ifDifferent, pageSteps, shortCautions } from "./page-steps.ts";
import type { ReadBack } from "./read-back.ts";
import { notMeasured, servoFacts } from "./servo-facts.ts";
import { pagePictures } from "./servo-pictures.ts";
import type { SheetPage } from "./sheet-pages.ts";
import { slidePanel } from "./slide-panel.ts";

/** Enough to set up one servo or a pair with nothing else at hand: values, pictures, facts, what to tick and who signs. */
export function servoPage(page: SheetPage, sheet: SheetFacts): Element {
  const { plan, model, readBack } = sheet;
  const asBuilt = [...asBuiltResult(readBack), ...asBuiltLines(readBack, plan, page.servos)];
  const findings = findingsOf(page, plan.findings, model).filter(({ severity }) => severity !== "note");
  const { pictures, fits } = pagePictures(page, plan, { lines: linesOf(findings, asBuilt) });
  return h(
    "section",
    { class: fits ? "page one" : "page one flows", id: page.key, "aria-labelledby": `${page.key}-title` },
    pageHead(`${page.key}-title`, page.title, sheet),
    enterTables(page, plan, readBack),
    asBuiltList(asBuilt),
    h("p", { class: "plain" }, howToEnter(plan, readBack)),
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
    checks(page, plan, readBack),
    signOff(page.key, readBack),
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

function howToEnter({ radio }: SetupPlan, { asBuilt }: ReadBack): string {
  const boxes = asBuilt === undefined ? " Boxes: the degrees to be read." : "";
  const adds = `Adds: for transmitters that sum, to the value at rest.${boxes}`;
  return radio.endPoints === "scale" ? `${shareText} ${adds}` : `ENTER: absolute, all else at rest. ${adds}`;
}

/** What to do where a reading differs, what holds in any case, and the order in short where it is still to be done. */
function checks(page: SheetPage, plan: SetupPlan, { verification, asBuilt }: ReadBack): Element {
  const withinUs = verification.verdicts.find((one) => one.quantity === "pulse")?.withinUs;
  const [first, second] = page.servos;
  const match = first && second && findMatch(first, second, plan.matches);
  return h(
    "div",
    { class: "plain" },
    h(
      "p",
      {},
      [match === undefined ? [] : matchText(match), ifDifferent(withinUs), shortCautions]
        .flat()
        .map(trueMinus)
        .join(" "),
    ),
    asBuilt === undefined
      ? h(
          "ul",
          { class: "checks" },
          pageSteps(page, plan).map((step, index) =>
            h(
              "li",
              {},
              h(
                "label",
                {},
                h("input", { type: "checkbox", "data-keep": `${page.key}-check-${index}` }),
                h("span", {}, `${index + 1}. ${trueMinus(step)}`),
              ),
            ),
          ),
        )
      : undefined,
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

/** Printed lines of the steps, which a page with as-built readings leaves out. */
const stepLines = 7;

/** Printed lines that findings and as-built readings take, two thirds of their width filled. */
function linesOf(findings: readonly Finding[], asBuilt: readonly AsBuiltLine[]): number {
  const lengths = [
    ...findings.map(({ at, message, do: remedy }) => at.length + message.length + remedy.length + 12),
    ...asBuilt.map(({ head, text }) => head.length + text.length),
  ];
  const instead = asBuilt.length === 0 ? 0 : stepLines;
  return lengths.reduce((sum, length) => sum + Math.ceil(length / 90) + 0.4, -instead);
}
