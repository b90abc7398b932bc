import type { ts } from "ts-morph";

/** A model file and the files of its project that it imports, parsed. Nothing in them is ever run. */
export interface Source {
  /** The model file's path within the project. */
  readonly entry: string;
  /** By path within the project, in the order in which they were found. */
  readonly files: ReadonlyMap<string, SourceFile>;
  /** What keeps the files from being read as a whole: syntax, missing imports, cycles, size. */
  readonly refusals: readonly Refusal[];
}

/** A file of a model: its text and what it imports. */
export interface SourceFile {
  /** Path within the project, with "/" on every system. */
  readonly path: string;
  /** As it stands on disk, a byte order mark included. */
  readonly text: string;
  readonly tree: ts.SourceFile;
  /** Import specifiers as written, and the path of the file that each stands for. */
  readonly imports: ReadonlyMap<string, string>;
}

/** The text of a file of the project by its path within it; undefined where it is not there or not to be read. */
export type ReadProjectFile = (path: string) => Promise<string | undefined>;

/** A stretch of a file. Lines and columns count from 1, columns in UTF-16 units, a byte order mark not counted. */
export interface Place {
  /** Path within the project. */
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  /** The column behind the last character. */
  readonly endColumn: number;
  /** What stands there. */
  readonly text: string;
  /** The whole of the first line. */
  readonly sourceLine: string;
}

/** Something in a file that is not read, or not written, and what to do about it. */
export interface Refusal {
  readonly place: Place;
  /** One sentence. */
  readonly what: string;
  /** One sentence. */
  readonly remedy: string;
}
