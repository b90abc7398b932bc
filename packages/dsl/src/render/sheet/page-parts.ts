import { formatTrimmed, type Model, type PlanRadio, type SetupPlan } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import { type Element, h } from "./element.ts";
import type { ReadBack } from "./read-back.ts";

/** What every page is made from. */
export interface SheetFacts {
  readonly model: Model;
  readonly plan: SetupPlan;
  /** Of the plan: two sheets with the same one ask for the same. */
  readonly fingerprint: string;
  readonly readBack: ReadBack;
}

/** Title of a page with what it takes to tell one printed page from another. */
export function pageHead(id: string, title: string, { plan, fingerprint }: SheetFacts): Element[] {
  const errors = plan.findings.filter(({ severity }) => severity === "error").length;
  return [
    h(
      "header",
      { key: "head" },
      h("h2", { id }, h("bdi", {}, visibleText(title))),
      h("p", {}, h("bdi", {}, visibleText(plan.model))),
      h("p", {}, `revision ${fingerprint}`),
      h("p", {}, radioText(plan.radio)),
    ),
    ...(errors === 0 ? [] : [h("p", { class: "stop", key: "stop" }, refusal(errors))]),
  ];
}

/** "DO NOT ENTER THIS PLAN: it has 2 errors." */
export function refusal(errors: number): string {
  return `DO NOT ENTER THIS PLAN: it has ${errors === 1 ? "1 error" : `${errors} errors`}.`;
}

/** The radio in one line. */
export function radioText({
  name,
  centreUs,
  per100Us,
  stepPercent,
  reachPercent,
  endPoints,
}: PlanRadio): string {
  const span =
    typeof per100Us === "number"
      ? formatTrimmed(per100Us, 3)
      : `${formatTrimmed(per100Us.below, 3)} below, ${formatTrimmed(per100Us.above, 3)} above`;
  const ends = endPoints === "clamp" ? "limits cut" : "limits scale";
  return `radio ${visibleText(name)}: centre ${formatTrimmed(centreUs, 3)} µs, ${span} µs per 100 %, step ${formatTrimmed(stepPercent, 6)} %, reach ${formatTrimmed(reachPercent, 6)} %, ${ends}`;
}

/** What a typed value is where limits scale: the one thing that could be taken for another. */
export const shareText =
  "Limits are percent; every other value is the share of the way between them, low −100, high +100. A percent beside a pulse is of the signal scale.";

/** Blanks for who built, who checked and when; in their place, where as-built readings do not pass, that there is nothing to sign. */
export function signOff(page: string, { asBuilt, verification }: ReadBack): Element {
  if (asBuilt !== undefined && !verification.passed)
    return h(
      "p",
      { class: "sign none" },
      "NOT TO BE SIGNED until it passes: mend what differs and read it again.",
    );
  return h(
    "div",
    { class: "sign" },
    ["builder", "checker", "date", "next check due"].map((name) =>
      h("label", {}, name, h("input", { "data-keep": `${page}-${name}`, autocomplete: "off" })),
    ),
  );
}
