import { readFileSync, realpathSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Io } from "../../../packages/dsl/src/cli/io.ts";

/** Where the fixtures of model files lie. */
export const fixtures = fileURLToPath(new URL("../../fixtures/load/", import.meta.url));

export interface FakeIo extends Io {
  /** What was printed so far. */
  readonly printed: { stdout: string; stderr: string };
  /** The files of a made-up file system, by full path; what is not here is read from the real one. */
  readonly disk: Map<string, string>;
}

/** An io whose files, streams and environment are all in memory, standing in the folder of fixtures. */
export function fakeIo({
  stdin = "",
  env = {},
  terminal = false,
  disk = new Map<string, string>(),
  folders = [],
  broken,
}: {
  readonly stdin?: string;
  readonly env?: Readonly<Record<string, string>>;
  readonly terminal?: boolean;
  readonly disk?: Map<string, string>;
  readonly folders?: readonly string[];
  /** The call that fails, with this code. */
  readonly broken?: { readonly call: "writeNew" | "rename"; readonly code: string };
} = {}): FakeIo {
  const printed = { stdout: "", stderr: "" };
  const check = (call: string) => {
    if (broken?.call === call) throw failure(broken.code);
  };
  const output = (name: keyof typeof printed) => ({
    write: (text: string) => {
      printed[name] += text;
    },
    isTerminal: terminal,
  });
  return {
    printed,
    disk,
    cwd: fixtures,
    env,
    stdout: output("stdout"),
    stderr: output("stderr"),
    readFile: async (path) => Buffer.from(disk.get(path) ?? readFileSync(path)),
    realPath: async (path) => (disk.has(path) ? path : realpathSync(path)),
    readStdin: async () => Buffer.from(stdin),
    version: () => "1.2.3",
    out: {
      find: async (path) =>
        folders.includes(path)
          ? { kind: "folder", path }
          : disk.has(path)
            ? { kind: "file", path }
            : undefined,
      writeNew: async (path, text) => {
        if (disk.has(path)) throw failure("EEXIST");
        disk.set(path, text);
        check("writeNew");
      },
      rename: async (from, to) => {
        check("rename");
        disk.set(to, disk.get(from) ?? "");
        disk.delete(from);
      },
      remove: async (path) => void disk.delete(path),
    },
  };
}

/** An error as a file system throws it. */
function failure(code: string): Error {
  return Object.assign(new Error(code), { code });
}
