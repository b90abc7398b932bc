import { compile, hasErrors, type Model, type SetupPlan } from "@hingeline/core";
import { loadModel } from "../load/load-model.ts";
import { exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { tellFindings, tellProblem } from "./tell.ts";

/**
 * A model with its plan, for what makes sense only of a plan that may be entered. Otherwise tells why there is none, and with `without`
 * what is left undone; gives the exit code.
 */
export async function loadSoundPlan(
  path: string,
  { runs, without }: { readonly runs: boolean; readonly without: string },
  io: Io,
): Promise<{ readonly model: Model; readonly plan: SetupPlan } | { readonly exitCode: number }> {
  const loaded = await loadModel(path, io, { runs });
  if ("problem" in loaded) return { exitCode: tellProblem(loaded.problem, io) };
  const plan = "model" in loaded ? compile(loaded.model) : undefined;
  const findings = "findings" in loaded ? loaded.findings : (plan?.findings ?? []);
  if ("model" in loaded && plan !== undefined && !hasErrors({ findings }))
    return { model: loaded.model, plan };
  await tellFindings(path, findings, io);
  if (plan !== undefined) io.stderr.write(`\nA plan with errors must not be entered, so ${without}.\n`);
  return { exitCode: exitFindings };
}
