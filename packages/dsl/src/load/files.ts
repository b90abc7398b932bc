/** The reading half of a file system; the calls fail as those of `node:fs/promises` do, with a `code`. */
export interface Files {
  /** Folder that relative paths start from. */
  readonly cwd: string;
  readonly readFile: (path: string) => Promise<Uint8Array>;
  /** A full path with every link on it followed. */
  readonly realPath: (path: string) => Promise<string>;
  /** All of standard input. */
  readonly readStdin: () => Promise<Uint8Array>;
}

/** The `code` of a failed file call ("ENOENT"), if there is one. */
export function codeOf(error: unknown): string | undefined {
  return error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : undefined;
}
