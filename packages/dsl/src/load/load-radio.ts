import type { Finding, Model, Radio } from "@hingeline/core";
import type { Files } from "./files.ts";
import { findModel } from "./find-model.ts";
import { loadJson } from "./load-json.ts";
import { loadModel } from "./load-model.ts";
import type { LoadProblem } from "./load-problem.ts";

/** A radio; or what is wrong with its form; or why there is none. */
export type LoadedRadio =
  | { readonly radio: Radio }
  | { readonly findings: readonly Finding[] }
  | { readonly problem: LoadProblem };

/** The radio that a JSON file describes, or the one of a model in a file. It is checked as the radio of `model`. */
export async function loadRadio(
  path: string,
  model: Model,
  files: Files,
  options: { readonly runs?: boolean } = {},
): Promise<LoadedRadio> {
  const source = findModel(path, files.cwd);
  if ("problem" in source) return source;
  if (source.kind === "json") {
    const loaded = await loadJson(path, files);
    if ("problem" in loaded) return loaded;
    if (!saysFormat(loaded.data)) {
      const { modelFindings, parseModel } = await import("@hingeline/core/schema");
      const parsed = parseModel({ ...model, radio: loaded.data });
      return "model" in parsed ? { radio: parsed.model.radio } : { findings: modelFindings(parsed.problems) };
    }
  }
  const loaded = await loadModel(path, files, options);
  return "model" in loaded ? { radio: loaded.model.radio } : loaded;
}

function saysFormat(data: unknown): boolean {
  return typeof data === "object" && data !== null && "format" in data;
}
