import { dirname, isAbsolute, join, relative, sep } from "node:path";
import type { ReadProjectFile } from "../source/source.ts";
import type { Files } from "./files.ts";

/** The folder that a model's files lie in, and nothing outside it. */
export interface Project {
  readonly folder: string;
  /** The model file's path in it, with "/". */
  readonly entry: string;
  readonly read: ReadProjectFile;
  /** A path of the project as the user would write it: from where they stand, or whole where it does not lie below. */
  readonly nameOf: (path: string) => string;
}

/**
 * The project of a model file: the nearest folder above it that has a package.json, or its own where none has. Links are
 * followed only where they stay inside.
 * @param fullPath the model file, absolute
 */
export async function openProject(fullPath: string, files: Files): Promise<Project> {
  const folder = await findFolder(dirname(fullPath), files);
  return {
    folder,
    entry: relative(folder, fullPath).split(sep).join("/"),
    read: async (path) => {
      try {
        const [real, realFolder] = await Promise.all([
          files.realPath(join(folder, path)),
          files.realPath(folder),
        ]);
        if (isOutside(relative(realFolder, real))) return undefined;
        // The byte order mark is part of the text: offsets count it, and it is written back.
        return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(await files.readFile(real));
      } catch {
        return undefined;
      }
    },
    nameOf: (path) => {
      const full = join(folder, path);
      const name = relative(files.cwd, full);
      return isOutside(name) ? full : name;
    },
  };
}

/** Whether a relative path leads out of the folder that it starts from. */
function isOutside(path: string): boolean {
  return path === ".." || path.startsWith(`..${sep}`) || isAbsolute(path);
}

async function findFolder(start: string, files: Files): Promise<string> {
  for (let folder = start; ; folder = dirname(folder)) {
    try {
      await files.realPath(join(folder, "package.json"));
      return folder;
    } catch {
      if (dirname(folder) === folder) return start;
    }
  }
}
