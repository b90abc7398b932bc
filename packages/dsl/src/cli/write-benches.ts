import { resolve } from "node:path";
import { openProject } from "../load/open-project.ts";
import type { BenchChange } from "../measure/changes-of.ts";
import { codeFrame } from "../render/code-frame.ts";
import { visibleText } from "../render/visible-text.ts";
import { hang } from "../render/wrap-text.ts";
import type { Refusal } from "../source/source.ts";
import type { Io } from "./io.ts";
import { lineDiff } from "./line-diff.ts";
import { rewriteFile } from "./write-out.ts";

/** What measuring changes in the files of a model. */
export interface BenchEdits {
  readonly files: readonly BenchEdit[];
  /** What has to be typed by hand, because it is computed where it stands. */
  readonly refusals: readonly Refusal[];
}

export interface BenchEdit {
  /** As the user would write it. */
  readonly path: string;
  readonly before: string;
  readonly after: string;
}

/** The texts that a model's files get. A change that would overwrite what is computed is left out and the others are made. */
export async function editBenches(
  model: string,
  changes: readonly BenchChange[],
  io: Io,
): Promise<BenchEdits> {
  const project = await openProject(resolve(io.cwd, model), io);
  // Loaded here: the parser is large.
  const [{ gatherSource }, { editModel }] = await Promise.all([
    import("../source/gather-source.ts"),
    import("../source/edit-model.ts"),
  ]);
  const source = await gatherSource(project.entry, project.read);
  const named = (refused: readonly Refusal[]) =>
    refused.map(({ place, ...words }) => ({
      place: { ...place, file: project.nameOf(place.file) },
      ...words,
    }));
  const refusals: Refusal[] = [];
  const possible = changes.filter((change) => {
    const edited = editModel(source, [change]);
    if ("refusals" in edited) refusals.push(...named(edited.refusals));
    return "files" in edited;
  });
  if (possible.length === 0) return { files: [], refusals };
  const edited = editModel(source, possible);
  // Alone each is possible; together they are not where two of them would be written at one place.
  if ("refusals" in edited) return { files: [], refusals: [...refusals, ...named(edited.refusals)] };
  return {
    files: edited.files.map(({ path, text }) => ({
      path: project.nameOf(path),
      before: source.files.get(path)?.text ?? "",
      after: text,
    })),
    refusals,
  };
}

/** What the edits change, line by line, as a text for a person. */
export function showEdits({ files }: BenchEdits): string {
  return files
    .flatMap(({ path, before, after }) => [visibleText(path), ...lineDiff(before, after)])
    .map((line) => `${line}\n`)
    .join("");
}

/** What has to be typed by hand, each with its place. */
export function showRefusals({ refusals }: BenchEdits): string {
  return refusals
    .flatMap(({ place, what, remedy }) => [
      "",
      ...hang("  ", visibleText(what), 80),
      ...hang("  -> ", visibleText(remedy), 80),
      ...codeFrame(place),
    ])
    .map((line) => `${line}\n`)
    .join("");
}

/** Writes the files, each whole or not at all; the sentence for the first that was not written. */
export async function writeEdits({ files }: BenchEdits, io: Io): Promise<string | undefined> {
  for (const file of files) {
    const problem = await rewriteFile(file.path, file, io);
    if (problem !== undefined) return problem;
  }
  return undefined;
}
