import { resolve } from "node:path";
import type { Io } from "./io.ts";
import { tellUnusable } from "./tell.ts";

/**
 * Refuses to write over what the user wrote: a file that the command reads, by whatever name or link, or any file of code, as models
 * are. The exit code; undefined where `out` may be written.
 * @param inputs the files that the command reads; "-" and undefined are none
 */
export async function refuseOut(
  out: string | undefined,
  inputs: readonly (string | undefined)[],
  io: Io,
): Promise<number | undefined> {
  if (out === undefined) return undefined;
  const target = await realPath(out, io);
  for (const input of inputs)
    if (input !== undefined && input !== "-" && (await realPath(input, io)) === target)
      return tellUnusable(`--out ${out} would write over ${input}, which is read; name another file.`, io);
  return code.test(out) || code.test(target)
    ? tellUnusable(`--out ${out} is the name of a model file, and none is written over; name another.`, io)
    : undefined;
}

const code = /\.m?[jt]s$/i;

async function realPath(path: string, io: Io): Promise<string> {
  const full = resolve(io.cwd, path);
  return io.realPath(full).catch(() => full);
}
