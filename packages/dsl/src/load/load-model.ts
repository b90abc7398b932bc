import type { Finding, Model } from "@hingeline/core";
import type { Files } from "./files.ts";
import { findModel } from "./find-model.ts";
import { inputName } from "./input-name.ts";
import { loadJson } from "./load-json.ts";
import { type LoadProblem, problem } from "./load-problem.ts";
import { readModelFile } from "./read-model-file.ts";
import { runModelFile } from "./run-model-file.ts";

/** A model; or what is wrong with the form of one; or why there is none at all. */
export type LoadedModel =
  | { readonly model: Model }
  | { readonly findings: readonly Finding[] }
  | { readonly problem: LoadProblem };

/**
 * The model that a MODEL argument of the command line stands for. Data that does not even say that it is a model is a problem;
 * what says so and has mistakes gives a finding for each. Never throws.
 * @param options.runs false: a code file is read without running any of it
 */
export async function loadModel(
  path: string,
  files: Files,
  { runs = true }: { readonly runs?: boolean } = {},
): Promise<LoadedModel> {
  const source = findModel(path, files.cwd);
  if ("problem" in source) return source;
  const loadCode = runs ? runModelFile : readModelFile;
  const loaded =
    source.kind === "json" ? await loadJson(path, files) : await loadCode(path, source.fullPath, files);
  if ("problem" in loaded) return loaded;
  const name = inputName(path);
  const format = formatOf(loaded.data);
  if (format !== "hingeline/model") {
    const says = typeof format === "string" ? `says that it is "${format}"` : "does not say that it is one";
    return problem(
      "not-a-model",
      `${name} is no model: it ${says}; a model has "format": "hingeline/model".`,
    );
  }
  const { modelFindings, parseModel } = await import("@hingeline/core/schema");
  const parsed = parseModel(loaded.data);
  return "model" in parsed ? parsed : { findings: modelFindings(parsed.problems) };
}

function formatOf(data: unknown): unknown {
  if (typeof data !== "object" || data === null) return undefined;
  try {
    return "format" in data ? data.format : undefined;
  } catch {
    // A getter or proxy of the user's.
    return undefined;
  }
}
