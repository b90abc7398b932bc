import type { SetupPlan } from "@hingeline/core";
import type { Files } from "./files.ts";
import { loadDocument } from "./load-document.ts";
import type { LoadProblem } from "./load-problem.ts";

/** The setup plan in a JSON file, or of standard input for "-"; a plan comes back only if it can be written again. */
export async function loadPlan(
  path: string,
  files: Files,
): Promise<{ readonly plan: SetupPlan } | { readonly problem: LoadProblem }> {
  const { parsePlan } = await import("@hingeline/core/schema");
  return loadDocument(path, files, parsePlan, { called: "setup plan", otherwise: "not-a-plan" });
}
