import { access, chmod, constants, readFile, realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import { codeOf } from "../load/files.ts";
import type { Io, OutFiles } from "./io.ts";

/** The files of this computer. */
export const nodeFiles: OutFiles & Pick<Io, "readFile" | "realPath"> = {
  readFile: (path) => readFile(path),
  realPath: (path) => realpath(path),
  find: async (path) => {
    try {
      const [stats, real] = await Promise.all([stat(path), realpath(path)]);
      return {
        kind: stats.isFile() ? "file" : stats.isDirectory() ? "folder" : "other",
        path: real,
        // The bits count for the superuser too, who may write everything.
        readOnly: (stats.mode & 0o222) === 0 || !(await isWritable(path)),
        mode: stats.mode & 0o7777,
      };
    } catch (error) {
      if (codeOf(error) === "ENOENT") return undefined;
      throw error;
    }
  },
  writeNew: async (path, text, mode) => {
    await writeFile(path, text, { flag: "wx", flush: true });
    if (mode !== undefined) await chmod(path, mode);
  },
  rename,
  remove: (path) => rm(path, { force: true }),
};

async function isWritable(path: string): Promise<boolean> {
  try {
    await access(path, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}
