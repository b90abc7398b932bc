import { exitDone } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { starterModel } from "./starter-model.ts";
import { tellUnusable } from "./tell.ts";
import { writeNewFile } from "./write-out.ts";

export interface InitArgs {
  /** The file to begin; without it the model is printed. */
  readonly file?: string;
}

/** Prints a starter model, or begins a file with it; never over one that exists. */
export async function initCommand({ file }: InitArgs, io: Io): Promise<number> {
  if (file === undefined) {
    io.stdout.write(starterModel);
    return exitDone;
  }
  if (!/\.m?ts$/.test(file))
    return tellUnusable(`${file} should end in .ts: the starter model is TypeScript.`, io);
  const problem = await writeNewFile(file, starterModel, io);
  if (problem !== undefined) return tellUnusable(problem, io);
  io.stderr.write(`Wrote ${file}. Put your own readings into it, then: hingeline plan ${file}\n`);
  return exitDone;
}
