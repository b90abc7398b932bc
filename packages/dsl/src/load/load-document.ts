import { canonicalJson } from "@hingeline/core";
import type { Files } from "./files.ts";
import { inputName } from "./input-name.ts";
import { loadJson } from "./load-json.ts";
import { type LoadProblem, problem } from "./load-problem.ts";

/**
 * What `parse` makes of a JSON file, or of standard input for "-"; it comes back only if it can be written again.
 * @param what how a person calls such a document, and the kind of problem that anything else is
 */
export async function loadDocument<Read extends object>(
  path: string,
  files: Files,
  parse: (data: unknown) => Read | { readonly problem: string },
  what: { readonly called: string; readonly otherwise: LoadProblem["kind"] },
): Promise<Read | { readonly problem: LoadProblem }> {
  const loaded = await loadJson(path, files);
  if ("problem" in loaded) return loaded;
  const refuse = (why: string) => problem(what.otherwise, `${inputName(path)} is no ${what.called}: ${why}`);
  const parsed = parse(loaded.data);
  if ("problem" in parsed) return refuse(String(parsed.problem));
  try {
    canonicalJson(parsed);
  } catch {
    return refuse("it holds half a surrogate pair.");
  }
  return parsed;
}
