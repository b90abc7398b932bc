import { canonicalJson, compile, type Finding } from "@hingeline/core";
import { loadModel } from "../load/load-model.ts";
import { loadPlan } from "../load/load-plan.ts";
import { locateFindings } from "../load/locate-findings.ts";
import { findingsToSarif } from "../render/findings-to-sarif.ts";
import { findingsToText } from "../render/findings-to-text.ts";
import { comparePlans, type PlanDifference } from "./compare-plans.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import { frameFindings } from "./frame-findings.ts";
import type { Io } from "./io.ts";
import { tellProblem, tellUnusable, wantsColour } from "./tell.ts";

export interface CheckArgs {
  readonly model: string;
  /** Reads a code file without running it. */
  readonly static?: boolean;
  readonly format: "text" | "json" | "sarif";
  /** A plan as JSON that should be this model's. */
  readonly against?: string;
}

/** Prints a model's findings, and whether the plan in `against` is still this model's. */
export async function checkCommand(
  { model, format, against, static: isStatic = false }: CheckArgs,
  io: Io,
): Promise<number> {
  const loaded = await loadModel(model, io, { runs: !isStatic });
  if ("problem" in loaded) return tellProblem(loaded.problem, io);
  const committed = against === undefined ? undefined : await loadPlan(against, io);
  if (committed !== undefined && "problem" in committed) return tellUnusable(committed.problem.message, io);
  const plan = "model" in loaded ? compile(loaded.model) : undefined;
  const findings = "findings" in loaded ? loaded.findings : (plan?.findings ?? []);
  const difference =
    plan === undefined || committed === undefined ? undefined : comparePlans(plan, committed.plan);
  const compared = against !== undefined && plan !== undefined;
  io.stdout.write(await show());
  const failed = difference !== undefined || findings.some(({ severity }) => severity === "error");
  return failed ? exitFindings : exitDone;

  async function show(): Promise<string> {
    switch (format) {
      case "json":
        return asJson(findings, compared, difference);
      case "sarif":
        return findingsToSarif(findings, {
          model: model === "-" ? undefined : model,
          places: await locateFindings(model, findings, io),
          version: io.version(),
          ...(difference === undefined
            ? {}
            : { stale: { plan: against ?? "", message: verdict(against ?? "", difference) } }),
        });
      case "text": {
        const frames = await frameFindings(model, findings, io);
        const text = findingsToText(findings, { colour: wantsColour(io.stdout, io), frames });
        return compared ? `${text}\n${verdict(against, difference)}\n` : text;
      }
    }
  }
}

/** `{"findings": [...]}`, and with a plan to compare `"stale": null` or the places that differ. */
function asJson(
  findings: readonly Finding[],
  compared: boolean,
  difference: PlanDifference | undefined,
): string {
  return `${canonicalJson({ findings, ...(compared ? { stale: difference ?? null } : {}) })}\n`;
}

function verdict(path: string, difference: PlanDifference | undefined): string {
  if (difference === undefined) return `${path} is up to date.`;
  const { channels, parts } = difference;
  const places = [
    ...(channels.length === 0
      ? []
      : [`${channels.length === 1 ? "channel" : "channels"} ${channels.join(", ")}`]),
    ...parts.map((part) => `"${part}"`),
  ];
  return `${path} is STALE; what differs: ${places.join("; ")}.`;
}
