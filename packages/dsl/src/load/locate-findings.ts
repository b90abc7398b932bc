import { type Finding, parseAddress } from "@hingeline/core";
import type { Located } from "../source/locate.ts";
import type { Files } from "./files.ts";
import { findModel } from "./find-model.ts";
import { openProject } from "./open-project.ts";

/**
 * Where the findings of a model file are written, by their address; a finding of the model as a whole has no place, and
 * neither has one of a model in JSON. The parser is loaded only where there is something to look for. Never throws.
 */
export async function locateFindings(
  path: string,
  findings: readonly Finding[],
  files: Files,
): Promise<ReadonlyMap<string, Located>> {
  const model = findModel(path, files.cwd);
  const addresses = new Set(findings.map(({ at }) => at).filter((at) => at !== ""));
  const places = new Map<string, Located>();
  if (addresses.size === 0 || "problem" in model || model.kind === "json") return places;
  const [{ gatherSource }, { locateAll }] = await Promise.all([
    import("../source/gather-source.ts"),
    import("../source/locate.ts"),
  ]);
  const project = await openProject(model.fullPath, files);
  const source = await gatherSource(project.entry, project.read);
  const keys = new Set(findings.filter(speaksOfKey).map(({ at }) => at));
  for (const [at, place] of locateAll(source, [...addresses], keys))
    places.set(at, { ...place, file: project.nameOf(place.file) });
  return places;
}

const codesOfKeys: ReadonlySet<string> = new Set(["unknown-name", "name-twice", "model-malformed"]);

/** Whether a finding faults the name at the end of its address rather than what stands under it: then it quotes that name. */
function speaksOfKey({ code, at, message }: Finding): boolean {
  const name = parseAddress(at)?.at(-1);
  return codesOfKeys.has(code) && typeof name === "string" && message.includes(JSON.stringify(name));
}
