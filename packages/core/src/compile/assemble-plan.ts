import type { Finding, Severity } from "../findings/finding.ts";
import type { Control, Model, Radio } from "../model/model.ts";
import type { PlanControl, PlanInTheMaking, PlanRadio, SetupPlan } from "../plan/setup-plan.ts";
import { cautions } from "./cautions.ts";

const order: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

/** The document without its procedure; its findings by severity and otherwise in the order in which they were found. */
export function assemblePlan(
  model: Model,
  parts: Pick<SetupPlan, "channels" | "matches" | "gangs">,
  findings: readonly Finding[],
): PlanInTheMaking {
  return {
    format: "hingeline/setup-plan",
    version: 1,
    model: model.name,
    radio: planRadio(model.radio),
    controls: Object.entries(model.controls).map(planControl),
    ...parts,
    findings: findings.toSorted((a, b) => order[a.severity] - order[b.severity]),
    cautions,
  };
}

function planControl([name, control]: [string, Control]): PlanControl {
  return control.kind === "selector"
    ? { control: name, kind: "selector", detents: control.detents }
    : { control: name, kind: "stick", rests: control.rests ?? 0, trimPercent: control.trim ?? 0 };
}

function planRadio({
  name,
  centre,
  per100,
  reach,
  step,
  endPoints,
  curvePoints,
  curveSpacing,
}: Radio): PlanRadio {
  return {
    name,
    centreUs: centre,
    per100Us: typeof per100 === "number" ? per100 : { below: per100.below, above: per100.above },
    reachPercent: reach,
    stepPercent: step,
    endPoints,
    curvePoints,
    ...(curveSpacing === undefined ? {} : { curveSpacing }),
  };
}
