import { createRequire } from "node:module";
import { dirname, join, sep } from "node:path";
import { fileURLToPath } from "node:url";
import type { Finding } from "@hingeline/core";
import type { Place } from "../source/source.ts";
import type { Files } from "./files.ts";
import { findModel } from "./find-model.ts";
import { openProject } from "./open-project.ts";

/** A finding of a file that does not compile, and its place; it has no address in a model, so that it is named by its place. */
export interface TypeFinding {
  readonly finding: Finding;
  readonly place: Place;
}

/**
 * What the compiler says of a model file in TypeScript and of the files of its project that it imports, held against the types of
 * this very copy of hingeline. Nothing is run. Empty for JSON, for JavaScript and for a file that cannot be read.
 */
export async function checkTypes(path: string, files: Files): Promise<readonly TypeFinding[]> {
  const model = findModel(path, files.cwd);
  if ("problem" in model || model.kind === "json" || !/\.m?ts$/i.test(path)) return [];
  // Loaded here: the compiler is large.
  const [{ gatherSource }, { findTypeFaults }] = await Promise.all([
    import("../source/gather-source.ts"),
    import("../source/find-type-faults.ts"),
  ]);
  let project = await openProject(model.fullPath, files);
  let source = await gatherSource(project.entry, project.read);
  if (source.files.size === 0) {
    // A link to a file of another project, which runs as well as any.
    const real = await files.realPath(model.fullPath).catch(() => model.fullPath);
    project = await openProject(real, files);
    source = await gatherSource(project.entry, project.read);
  }
  const node = await findNodeTypes(project.folder, files);
  const types = { modules: ownTypes(), node };
  return findTypeFaults(source, slashed(project.folder), types).map(({ place, what, remedy }) => {
    const named = { ...place, file: project.nameOf(place.file) };
    return {
      place: named,
      finding: {
        code: "does-not-compile",
        severity: "error",
        at: `${named.file}:${named.line}:${named.column}`,
        message: what,
        do: remedy,
        numbers: {},
      },
    };
  });
}

/** The declarations of what runs here: those of the build, or the sources where they are what runs. */
function ownTypes(): Readonly<Record<string, string>> {
  const here = (path: string) => slashed(fileURLToPath(new URL(path, import.meta.url)));
  const [dsl, core, suffix] = import.meta.url.endsWith(".ts")
    ? [here("../"), here("../../../core/src/"), ".ts"]
    : [
        here("../dist/"),
        `${slashed(dirname(createRequire(import.meta.url).resolve("@hingeline/core")))}/`,
        ".d.ts",
      ];
  return {
    "@hingeline/core": `${core}index${suffix}`,
    "@hingeline/core/schema": `${core}schema${suffix}`,
    "@hingeline/dsl": `${dsl}index${suffix}`,
    "@hingeline/dsl/render": `${dsl}render/index${suffix}`,
    "@hingeline/dsl/sheet": `${dsl}render/sheet/index${suffix}`,
    "@hingeline/dsl/source": `${dsl}source/index${suffix}`,
  };
}

/** The nearest `node_modules/@types` at or above a folder that has Node's types. */
async function findNodeTypes(start: string, files: Files): Promise<string | undefined> {
  for (let folder = start; ; folder = dirname(folder)) {
    const types = join(folder, "node_modules/@types");
    try {
      await files.realPath(join(types, "node/index.d.ts"));
      return slashed(types);
    } catch {
      if (dirname(folder) === folder) return undefined;
    }
  }
}

/** A path with "/" on every system. */
function slashed(path: string): string {
  return path.split(sep).join("/");
}
