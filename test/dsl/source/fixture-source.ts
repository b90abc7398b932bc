import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gatherSource } from "../../../packages/dsl/src/source/gather-source.ts";
import type { Refusal, Source } from "../../../packages/dsl/src/source/source.ts";

/** Where the awkward model files lie. */
export const fixtures = fileURLToPath(new URL("../../fixtures/source/", import.meta.url));
export const examples = fileURLToPath(new URL("../../../packages/examples/src/", import.meta.url));

/** A file of a folder, and what it imports, parsed; `asked` gets the path of every file that was asked for. */
export function sourceIn(folder: string, entry: string, asked: string[] = []): Promise<Source> {
  return gatherSource(entry, async (path) => {
    asked.push(path);
    try {
      return readFileSync(join(folder, path), "utf8");
    } catch {
      return undefined;
    }
  });
}

/** A source whose files are these texts. */
export function sourceOf(files: Readonly<Record<string, string>>, entry = "model.ts"): Promise<Source> {
  return gatherSource(entry, async (path) => (Object.hasOwn(files, path) ? files[path] : undefined));
}

/** "12:5 What is wrong." for each. */
export function brief(refusals: readonly Refusal[]): string[] {
  return refusals.map(({ place, what }) => `${place.line}:${place.column} ${what}`);
}
