import { posix } from "node:path";
import { ts } from "ts-morph";
import { type ImportLine, listImports } from "./list-imports.ts";
import { parseFile } from "./parse-file.ts";
import { placeAt, placeOf } from "./place-of.ts";
import type { ReadProjectFile, Refusal, Source, SourceFile } from "./source.ts";

const mostFiles = 100;

/**
 * The model file at `entry` and every file of the project that it imports, however far. Imports with or without suffix, `.js`
 * for a `.ts` file as TypeScript has it, and `index` files are found; nothing outside the project is ever asked for.
 * @param entry path of the model file within the project, with "/"
 */
export async function gatherSource(entry: string, read: ReadProjectFile): Promise<Source> {
  const files = new Map<string, SourceFile>();
  const refusals: Refusal[] = [];
  const text = await read(entry);
  if (text === undefined) {
    const empty = ts.createSourceFile(entry, "", ts.ScriptTarget.Latest);
    refusals.push({
      place: placeAt(empty, 0, 0),
      what: `${entry} cannot be read.`,
      remedy: "Name a model file of the project.",
    });
    return { entry, files, refusals };
  }
  const queue: { readonly path: string; readonly text: string }[] = [{ path: entry, text }];
  for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
    if (files.has(next.path)) continue;
    const { tree, refusal } = parseFile(next.path, next.text);
    if (refusal !== undefined) refusals.push(refusal);
    const imports = new Map<string, string>();
    files.set(next.path, { ...next, tree, imports });
    for (const line of listImports(tree)) {
      if (!line.specifier.startsWith(".")) continue;
      const found = await findImport(next.path, line, read);
      if ("what" in found) refusals.push(found);
      else if (files.size + queue.length >= mostFiles) {
        refusals.push(refuse(line, `The project has more than ${mostFiles} files.`, "Read fewer at once."));
        return { entry, files, refusals };
      } else {
        imports.set(line.specifier, found.path);
        queue.push(found);
      }
    }
  }
  return { entry, files, refusals: [...refusals, ...cycles(entry, files)] };
}

async function findImport(
  from: string,
  line: ImportLine,
  read: ReadProjectFile,
): Promise<{ readonly path: string; readonly text: string } | Refusal> {
  const path = posix.join(posix.dirname(from), line.specifier);
  if (path === ".." || path.startsWith("../"))
    return refuse(
      line,
      `"${line.specifier}" lies outside the project folder.`,
      "Copy what is needed into the project.",
    );
  const found: { readonly path: string; readonly text: string }[] = [];
  for (const candidate of candidates(path)) {
    const text = await read(candidate);
    if (text !== undefined) found.push({ path: candidate, text });
  }
  const [first, second] = found;
  if (first === undefined)
    return refuse(line, `"${line.specifier}" is no code file of the project.`, "Correct the import.");
  if (second !== undefined)
    return refuse(
      line,
      `"${line.specifier}" may stand for ${first.path} or ${second.path}.`,
      "Write the import with its suffix, or remove one of the two.",
    );
  return first;
}

function candidates(path: string): string[] {
  const suffix = posix.extname(path);
  if (suffix === ".ts" || suffix === ".mts") return [path];
  if (suffix === ".js" || suffix === ".mjs")
    return [`${path.slice(0, -suffix.length)}${suffix.replace("js", "ts")}`, path];
  // All that running would look for, so that what is found is what would run.
  const suffixes = [".ts", ".mts", ".js", ".mjs", ".cjs", ".cts", ".tsx"];
  return [...suffixes.map((end) => path + end), ...suffixes.map((end) => posix.join(path, `index${end}`))];
}

/** An import that leads back to its own file: which of the two runs first decides what it gets. */
function cycles(entry: string, files: ReadonlyMap<string, SourceFile>): Refusal[] {
  const refusals: Refusal[] = [];
  const done = new Set<string>();
  const around: string[] = [];
  const walk = (path: string) => {
    const file = files.get(path);
    if (file === undefined || done.has(path)) return;
    around.push(path);
    for (const line of listImports(file.tree)) {
      const target = file.imports.get(line.specifier);
      if (target === undefined) continue;
      if (around.includes(target))
        refusals.push(
          refuse(
            line,
            `${[...around.slice(around.indexOf(target)), target].join(" imports ")}.`,
            "Move what both need into a third file, or import types with `import type`.",
          ),
        );
      else walk(target);
    }
    around.pop();
    done.add(path);
  };
  walk(entry);
  return refusals;
}

function refuse({ node }: ImportLine, what: string, remedy: string): Refusal {
  return { place: placeOf(node), what, remedy };
}
