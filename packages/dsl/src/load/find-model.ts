import { extname, resolve } from "node:path";
import { type LoadProblem, problem } from "./load-problem.ts";

/** Where a model comes from, by the name given on the command line. */
export type ModelSource =
  | { readonly kind: "json"; readonly path: string }
  | { readonly kind: "code"; readonly path: string; readonly fullPath: string };

const code = [".ts", ".mts", ".js", ".mjs"];

/** What a MODEL argument stands for: JSON for "-" and `.json`, code to run for `.ts`, `.mts`, `.js` and `.mjs`. Reads nothing. */
export function findModel(path: string, cwd: string): ModelSource | { readonly problem: LoadProblem } {
  const extension = extname(path).toLowerCase();
  if (path === "-" || extension === ".json") return { kind: "json", path };
  if (code.includes(extension)) return { kind: "code", path, fullPath: resolve(cwd, path) };
  return problem(
    "unknown-kind",
    `${path} is no model file; its name should end in ${code.join(", ")} or .json, or be - for JSON on standard input.`,
  );
}
