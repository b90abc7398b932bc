import { pathToFileURL } from "node:url";
import type { Files } from "./files.ts";
import { type LoadProblem, problem } from "./load-problem.ts";
import { readText } from "./read-text.ts";
import { throwSentence } from "./throw-sentence.ts";

/**
 * The default export of a model file, which is run: TypeScript or JavaScript, imports with or without suffix. Whatever the
 * version installed beside it, the file gets this very copy of hingeline, so that the model and its compiler agree.
 */
export async function runModelFile(
  path: string,
  fullPath: string,
  files: Files,
): Promise<{ readonly data: unknown } | { readonly problem: LoadProblem }> {
  const read = await readText(path, files);
  if ("problem" in read) return read;
  let exported: Readonly<Record<string, unknown>>;
  try {
    exported = await importFile(fullPath);
  } catch (error) {
    return problem("throws", throwSentence(path, fullPath, error));
  }
  if (!("default" in exported))
    return problem("no-default", `${path} has no default export; write "export default model(...)".`);
  const data = exported.default;
  const wrong = kindOfWrong(data);
  return wrong === undefined
    ? { data }
    : problem(
        "bad-default",
        `The default export of ${path} is ${wrong}, not a model; export what model(...) returns.`,
      );
}

async function importFile(fullPath: string): Promise<Readonly<Record<string, unknown>>> {
  // Loaded here, so that a command on JSON does not pay for them.
  const { createJiti } = await import("jiti");
  const { transform } = await import("sucrase");
  const virtualModules = {
    "@hingeline/core": await import("@hingeline/core"),
    "@hingeline/core/schema": await import("@hingeline/core/schema"),
    "@hingeline/dsl": await import("../index.ts"),
    "@hingeline/dsl/render": await import("../render/index.ts"),
  };
  // No cache of files: reading a model writes nothing. No joining of the default export with the named ones: the data
  // is what was exported, without a proxy around it.
  const jiti = createJiti(pathToFileURL(fullPath).href, {
    fsCache: false,
    interopDefault: false,
    virtualModules,
    // Types are taken out line by line, so that a line of a throw is a line of the file, and far faster than jiti's own way.
    transform: ({ source, filename = fullPath }) => ({
      code: transform(source, {
        transforms: ["typescript", "imports"],
        filePath: filename,
        preserveDynamicImport: true,
        disableESTransforms: true,
      }).code,
    }),
  });
  // Read again, as a watcher does, a model is run again, with all that it imports; what is installed stays.
  for (const file of Object.keys(jiti.cache)) if (!file.includes("node_modules")) delete jiti.cache[file];
  return jiti.import(fullPath);
}

function kindOfWrong(data: unknown): string | undefined {
  if (data === undefined || data === null) return String(data);
  if (typeof data === "function") return "a function";
  if (typeof data !== "object") return `a ${typeof data}`;
  if (Array.isArray(data)) return "a list";
  return "then" in data && typeof data.then === "function" ? "a promise" : undefined;
}
