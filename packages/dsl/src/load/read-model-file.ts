import type { Files } from "./files.ts";
import type { LoadProblem } from "./load-problem.ts";
import { openProject } from "./open-project.ts";
import { readText } from "./read-text.ts";

/** The default export of a model file, which is read and not run. What cannot be read that way comes back place by place. */
export async function readModelFile(
  path: string,
  fullPath: string,
  files: Files,
): Promise<{ readonly data: unknown } | { readonly problem: LoadProblem }> {
  const text = await readText(path, files);
  if ("problem" in text) return text;
  const project = await openProject(fullPath, files);
  // Loaded here: the parser is large.
  const [{ gatherSource }, { readData }] = await Promise.all([
    import("../source/gather-source.ts"),
    import("../source/read-model.ts"),
  ]);
  const read = readData(await gatherSource(project.entry, project.read));
  if ("data" in read) return { data: read.data };
  const refusals = read.refusals.map(({ place, ...words }) => ({
    place: { ...place, file: project.nameOf(place.file) },
    ...words,
  }));
  const message = `${path} cannot be read without running it.`;
  return { problem: { kind: "not-read", message, refusals } };
}
