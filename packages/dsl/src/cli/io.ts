import type { Files } from "../load/files.ts";
import type { Live } from "./live.ts";
import type { Prompt } from "./prompt.ts";

/** Everything a command may touch; the real one is made in bin.ts, tests make their own. */
export interface Io extends Files {
  /** The data that was asked for, and nothing else. */
  readonly stdout: Output;
  /** Everything a person is told beside it. */
  readonly stderr: Output;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly out: OutFiles;
  readonly version: () => string;
  /** Absent where nothing can be watched. */
  readonly live?: Live;
  /** Absent where nobody can be asked: standard input or standard error is no terminal. */
  readonly prompt?: Prompt;
}

export interface Output {
  readonly write: (text: string) => void;
  readonly isTerminal: boolean;
}

/** The writing half of a file system, by full paths; the calls fail as those of `node:fs/promises` do, with a `code`. */
export interface OutFiles {
  /** What stands at a path, links followed to `path`; undefined where nothing does. */
  readonly find: (path: string) => Promise<Found | undefined>;
  /** Writes a file that must not exist yet, with these permission bits where they are given. */
  readonly writeNew: (path: string, text: string, mode?: number) => Promise<void>;
  readonly rename: (from: string, to: string) => Promise<void>;
  readonly remove: (path: string) => Promise<void>;
}

/** What stands at a path. */
export interface Found {
  readonly kind: "file" | "folder" | "other";
  readonly path: string;
  /** Nobody, or not this user, may write it. */
  readonly readOnly?: boolean;
  /** Its permission bits. */
  readonly mode?: number;
}
