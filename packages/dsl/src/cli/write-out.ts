import { randomUUID } from "node:crypto";
import { basename, dirname, join, resolve } from "node:path";
import { codeOf } from "../load/files.ts";
import type { Io } from "./io.ts";

/**
 * Writes a file whole or not at all: to a new name beside it, then renamed over it. Returns the sentence for why it was not
 * written; then whatever stood there still does.
 */
export async function writeOut(path: string, text: string, io: Io): Promise<string | undefined> {
  return replaceFile(path, text, io, async () => undefined);
}

/**
 * Writes a file anew, whole or not at all, if it still holds `before`. Follows a link to the file it leads to, keeps the
 * permissions. Returns the sentence for why it was not written; then the file is as it was.
 */
export async function rewriteFile(
  path: string,
  { before, after }: { readonly before: string; readonly after: string },
  io: Io,
): Promise<string | undefined> {
  const expected = Buffer.from(before);
  return replaceFile(path, after, io, async (target) => {
    if (target === undefined) return `${path} is no longer there; nothing was written.`;
    return expected.equals(await io.readFile(target))
      ? undefined
      : `${path} was changed by something else meanwhile; nothing was written. Start again from what it says now.`;
  });
}

/** @param refuse called last before the file is replaced, with the path that links lead to if something is there */
async function replaceFile(
  path: string,
  text: string,
  io: Io,
  refuse: (target: string | undefined) => Promise<string | undefined>,
): Promise<string | undefined> {
  const full = resolve(io.cwd, path);
  try {
    const there = await io.out.find(full);
    if (there?.kind === "folder") return `${path} is a folder; name a file in it.`;
    if (there?.kind === "other") return `${path} is not a plain file, and is left alone.`;
    if (there?.readOnly === true) return `${path} is read-only, and is left alone.`;
    const target = there?.path ?? full;
    const beside = join(dirname(target), `.${basename(target).slice(0, 100)}.${randomUUID()}.tmp`);
    try {
      await io.out.writeNew(beside, text, there?.mode);
      const refusal = await refuse(there?.path);
      if (refusal === undefined) await io.out.rename(beside, target);
      else await io.out.remove(beside);
      return refusal;
    } catch (error) {
      await io.out.remove(beside);
      throw error;
    }
  } catch (error) {
    return writeSentence(path, error);
  }
}

/** Writes a file that must not exist yet; returns the sentence for why it was not written. */
export async function writeNewFile(path: string, text: string, io: Io): Promise<string | undefined> {
  try {
    await io.out.writeNew(resolve(io.cwd, path), text);
    return undefined;
  } catch (error) {
    return codeOf(error) === "EEXIST"
      ? `${path} exists already, and is left as it is.`
      : writeSentence(path, error);
  }
}

function writeSentence(path: string, error: unknown): string {
  switch (codeOf(error)) {
    case "ENOENT":
    case "ENOTDIR":
      return `${path} cannot be written: its folder does not exist.`;
    case "EACCES":
    case "EPERM":
    case "EROFS":
      return `${path} may not be written by this user.`;
    case "ENOSPC":
      return `${path} cannot be written: the disk is full.`;
    default:
      return `${path} cannot be written (${codeOf(error) ?? String(error)}).`;
  }
}
