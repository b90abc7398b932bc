import type { Files } from "./files.ts";
import { findJsonFault } from "./find-json-fault.ts";
import { inputName } from "./input-name.ts";
import { type LoadProblem, problem } from "./load-problem.ts";
import { readText } from "./read-text.ts";

/** The data of a JSON file, or of standard input for "-". A fault is named with its line and column. */
export async function loadJson(
  path: string,
  files: Files,
): Promise<{ readonly data: unknown } | { readonly problem: LoadProblem }> {
  const read = await readText(path, files);
  if ("problem" in read) return read;
  const fault = findJsonFault(read.text);
  if (fault === undefined) return { data: JSON.parse(read.text) };
  const name = inputName(path);
  return problem(
    "bad-json",
    `${name} is not JSON: line ${fault.line}, column ${fault.column}: ${fault.message}.`,
  );
}
