import { type AsBuilt, canonicalJson } from "@hingeline/core";
import type { Files } from "./files.ts";
import { loadJson } from "./load-json.ts";
import { type LoadProblem, problem } from "./load-problem.ts";

/** The as-built readings in a JSON file, or of standard input for "-"; they come back only if they can be written again. */
export async function loadAsBuilt(
  path: string,
  files: Files,
): Promise<{ readonly asBuilt: AsBuilt } | { readonly problem: LoadProblem }> {
  const loaded = await loadJson(path, files);
  if ("problem" in loaded) return loaded;
  const name = path === "-" ? "Standard input" : path;
  const { parseAsBuilt } = await import("@hingeline/core/schema");
  const parsed = parseAsBuilt(loaded.data);
  if ("problem" in parsed) return problem("not-as-built", `${name} is no as-built file: ${parsed.problem}`);
  try {
    canonicalJson(parsed.asBuilt);
  } catch {
    return problem("not-as-built", `${name} is no as-built file: it holds half a surrogate pair.`);
  }
  return parsed;
}
