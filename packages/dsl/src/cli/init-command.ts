import { basename } from "node:path";
import { inputName } from "../load/input-name.ts";
import { loadJson } from "../load/load-json.ts";
import { readText } from "../load/read-text.ts";
import { type ReadTable, readCsv, readJsonReadings } from "../measure/read-readings.ts";
import { exitDone } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { readingsModel } from "./readings-model.ts";
import { starterModel } from "./starter-model.ts";
import { tellUnusable } from "./tell.ts";
import { writeNewFile } from "./write-out.ts";

export interface InitArgs {
  /** The file to begin; without it the model is printed. */
  readonly file?: string;
  /** Bench readings to make the model of; without them it is the starter model. */
  readonly from?: string;
}

/** Prints a model to begin with, or begins a file with it; never over one that exists. */
export async function initCommand({ file, from }: InitArgs, io: Io): Promise<number> {
  if (file !== undefined && !/\.m?ts$/.test(file))
    return tellUnusable(`${file} should end in .ts: the model is TypeScript.`, io);
  const made = from === undefined ? { source: starterModel } : await modelFrom(from, io);
  if ("problem" in made) return tellUnusable(made.problem, io);
  if (file === undefined) {
    io.stdout.write(made.source);
    return exitDone;
  }
  const problem = await writeNewFile(file, made.source, io);
  if (problem !== undefined) return tellUnusable(problem, io);
  const task = from === undefined ? "Put your own readings into it" : "Put in what readings cannot tell";
  io.stderr.write(`Wrote ${file}. ${task}, then: hingeline check ${file}\n`);
  return exitDone;
}

async function modelFrom(
  path: string,
  io: Io,
): Promise<{ readonly source: string } | { readonly problem: string }> {
  const table = await readTable(path, io);
  if ("fault" in table) return { problem: table.fault };
  if ("problem" in table) return { problem: `${inputName(path)}: ${table.problem}.` };
  const made = readingsModel(table.readings, titleOf(path));
  return "problem" in made ? { problem: `${inputName(path)}: ${made.problem}` } : made;
}

/** The model's name, after its file. What could not stand in a string or a comment is left out. */
function titleOf(path: string): string {
  const title = basename(path)
    .replace(/\.\w+$/, "")
    .replaceAll(/[^\w .-]/g, "")
    .slice(0, 40)
    .trim();
  return path === "-" || title === "" ? "my model" : title;
}

async function readTable(path: string, io: Io): Promise<ReadTable | { readonly fault: string }> {
  if (path.toLowerCase().endsWith(".json")) {
    const loaded = await loadJson(path, io);
    return "problem" in loaded ? { fault: loaded.problem.message } : readJsonReadings(loaded.data);
  }
  const read = await readText(path, io);
  return "problem" in read ? { fault: read.problem.message } : readCsv(read.text);
}
