import { readFile, realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import { codeOf } from "../load/files.ts";
import type { OutFiles } from "./io.ts";

/** The files of this computer. */
export const nodeFiles: OutFiles & { readonly readFile: (path: string) => Promise<Uint8Array> } = {
  readFile: (path) => readFile(path),
  find: async (path) => {
    try {
      const [stats, real] = await Promise.all([stat(path), realpath(path)]);
      return { kind: stats.isFile() ? "file" : stats.isDirectory() ? "folder" : "other", path: real };
    } catch (error) {
      if (codeOf(error) === "ENOENT") return undefined;
      throw error;
    }
  },
  writeNew: (path, text) => writeFile(path, text, { flag: "wx" }),
  rename,
  remove: (path) => rm(path, { force: true }),
};
