import type { AsBuilt } from "@hingeline/core";
import type { Files } from "./files.ts";
import { loadDocument } from "./load-document.ts";
import type { LoadProblem } from "./load-problem.ts";

/** The as-built readings in a JSON file, or of standard input for "-"; they come back only if they can be written again. */
export async function loadAsBuilt(
  path: string,
  files: Files,
): Promise<{ readonly asBuilt: AsBuilt } | { readonly problem: LoadProblem }> {
  const { parseAsBuilt } = await import("@hingeline/core/schema");
  return loadDocument(path, files, parseAsBuilt, { called: "as-built file", otherwise: "not-as-built" });
}
