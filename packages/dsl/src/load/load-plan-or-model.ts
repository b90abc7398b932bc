import { compile, type Finding, type SetupPlan } from "@hingeline/core";
import type { Files } from "./files.ts";
import { findModel } from "./find-model.ts";
import { loadJson } from "./load-json.ts";
import { loadModel } from "./load-model.ts";
import { loadPlan } from "./load-plan.ts";
import type { LoadProblem } from "./load-problem.ts";

/** A plan; or what is wrong with the form of a model; or why there is neither. */
export type LoadedPlan =
  | { readonly plan: SetupPlan }
  | { readonly findings: readonly Finding[] }
  | { readonly problem: LoadProblem };

/** The plan that a file holds as JSON, or that its model compiles to. What does not say that it is a plan is taken for a model. */
export async function loadPlanOrModel(
  path: string,
  files: Files,
  options: { readonly runs?: boolean } = {},
): Promise<LoadedPlan> {
  const once = readingOnce(files);
  const source = findModel(path, files.cwd);
  if ("kind" in source && source.kind === "json") {
    const loaded = await loadJson(path, once);
    if ("problem" in loaded) return loaded;
    if (isPlan(loaded.data)) return loadPlan(path, once);
  }
  const loaded = await loadModel(path, once, options);
  return "model" in loaded ? { plan: compile(loaded.model) } : loaded;
}

function isPlan(data: unknown): boolean {
  return (
    typeof data === "object" && data !== null && "format" in data && data.format === "hingeline/setup-plan"
  );
}

/** Standard input can be read only once. */
function readingOnce(files: Files): Files {
  let stdin: Promise<Uint8Array> | undefined;
  return {
    ...files,
    readStdin: () => {
      stdin ??= files.readStdin();
      return stdin;
    },
  };
}
