import { canonicalJson, compile, type Finding, hasErrors } from "@hingeline/core";
import { checkTypes, type TypeFinding } from "../load/check-types.ts";
import { loadModel } from "../load/load-model.ts";
import { loadPlan } from "../load/load-plan.ts";
import { locateFindings } from "../load/locate-findings.ts";
import type { FramedPlace } from "../render/code-frame.ts";
import { findingsToSarif } from "../render/findings-to-sarif.ts";
import { findingsToText } from "../render/findings-to-text.ts";
import { comparePlans, type PlanDifference } from "./compare-plans.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import { frameFindings } from "./frame-findings.ts";
import type { Io } from "./io.ts";
import { refuseStdinTwice, tellProblem, tellUnusable, wantsColour } from "./tell.ts";
import { framesOf } from "./type-faults.ts";

export interface CheckArgs {
  readonly model: string;
  /** Reads a code file without running it. */
  readonly static?: boolean;
  /** false: a TypeScript file is not type-checked. */
  readonly types?: boolean;
  readonly format: "text" | "json" | "sarif";
  /** Text shows the notes too where there are errors. */
  readonly notes?: boolean;
  /** A plan as JSON that should be this model's. */
  readonly against?: string;
}

/**
 * Prints a model's findings, and whether the plan in `against` is still this model's. Of a file that does not compile it prints
 * only why: figures in a wrong unit would make all the rest untrue.
 */
export async function checkCommand(
  { model, format, against, notes = false, static: isStatic = false, types = true }: CheckArgs,
  io: Io,
): Promise<number> {
  const twice = refuseStdinTwice(model, against, io);
  if (twice !== undefined) return twice;
  const faults = types ? await checkTypes(model, io) : [];
  const loaded =
    faults.length > 0
      ? { findings: faults.map(({ finding }) => finding) }
      : await loadModel(model, io, { runs: !isStatic });
  if ("problem" in loaded) return tellProblem(loaded.problem, io);
  const committed = against === undefined ? undefined : await loadPlan(against, io);
  if (committed !== undefined && "problem" in committed) return tellUnusable(committed.problem.message, io);
  const plan = "model" in loaded ? compile(loaded.model) : undefined;
  const findings = "findings" in loaded ? loaded.findings : (plan?.findings ?? []);
  const difference =
    plan === undefined || committed === undefined ? undefined : comparePlans(plan, committed.plan);
  const compared = against !== undefined && plan !== undefined;
  io.stdout.write(await show());
  const failed = difference !== undefined || hasErrors({ findings });
  return failed ? exitFindings : exitDone;

  async function show(): Promise<string> {
    switch (format) {
      case "json":
        return asJson(findings, compared, difference);
      case "sarif":
        return findingsToSarif(findings, {
          model: model === "-" ? undefined : model,
          places: faults.length > 0 ? placesOf(faults) : await locateFindings(model, findings, io),
          version: io.version(),
          ...(difference === undefined
            ? {}
            : { stale: { plan: against ?? "", message: verdict(against ?? "", difference) } }),
        });
      case "text": {
        const frames = faults.length > 0 ? framesOf(faults) : await frameFindings(model, findings, io);
        const insteadOfNotes = notes ? undefined : "--notes shows them";
        const colour = wantsColour(io.stdout, io);
        const text = findingsToText(findings, { colour, frames, insteadOfNotes });
        return compared ? `${text}\n${verdict(against, difference)}\n` : text;
      }
    }
  }
}

function placesOf(faults: readonly TypeFinding[]): ReadonlyMap<string, FramedPlace> {
  return new Map(faults.map(({ finding, place }) => [finding.at, place]));
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
