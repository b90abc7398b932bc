import { canonicalJson, type SetupPlan } from "@hingeline/core";
import type { Files } from "./files.ts";
import { loadJson } from "./load-json.ts";
import { type LoadProblem, problem } from "./load-problem.ts";

/** The setup plan in a JSON file, or of standard input for "-"; a plan comes back only if it can be written again. */
export async function loadPlan(
  path: string,
  files: Files,
): Promise<{ readonly plan: SetupPlan } | { readonly problem: LoadProblem }> {
  const loaded = await loadJson(path, files);
  if ("problem" in loaded) return loaded;
  const name = path === "-" ? "Standard input" : path;
  const { parsePlan } = await import("@hingeline/core/schema");
  const parsed = parsePlan(loaded.data);
  if ("problem" in parsed) return problem("not-a-plan", `${name} is no setup plan: ${parsed.problem}`);
  try {
    canonicalJson(parsed.plan);
  } catch {
    return problem("not-a-plan", `${name} is no setup plan: it holds half a surrogate pair.`);
  }
  return parsed;
}
