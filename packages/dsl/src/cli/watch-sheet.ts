import { dirname, resolve } from "node:path";
import { hasErrors, type SetupPlan } from "@hingeline/core";
import { exitDone } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { makeSheet, type SheetArgs } from "./make-sheet.ts";
import { tellFindings, tellUnusable } from "./tell.ts";
import { toldText } from "./told-text.ts";
import { refuseTypeFaults } from "./type-faults.ts";
import { writeOut } from "./write-out.ts";

/** Saving a file often changes it twice; this long after the last change it is read. */
const settleMs = 60;

/**
 * Serves the sheet on this computer alone and makes it anew whenever a file beside the model is saved; the open page follows, the file
 * of `--out` too, unless the plan has errors or the model does not compile. A model that cannot be read leaves the last sheet standing.
 */
export async function watchSheet(args: SheetArgs, io: Io): Promise<number> {
  const { model, out, picture, format } = args;
  const { live } = io;
  if (live === undefined || model === "-" || picture !== undefined || format !== "html")
    return tellUnusable("--watch needs a model file and shows the sheet as HTML.", io);
  const first = await makeSheet(args, io, true);
  if ("exitCode" in first) return first.exitCode;
  let shown = first.text;
  const page = await live.serve(() => shown);
  await writeFollowed(first);
  io.stderr.write(`The sheet is at ${page.url} until this is ended.\n`);
  let timer: ReturnType<typeof setTimeout> | undefined;
  live.watchFolder(dirname(resolve(io.cwd, model)), () => {
    clearTimeout(timer);
    timer = setTimeout(remake, settleMs);
  });
  await live.ended();
  clearTimeout(timer);
  page.close();
  return exitDone;

  async function remake(): Promise<void> {
    const made = await makeSheet(args, io, true);
    if ("exitCode" in made || made.text === shown) return;
    shown = made.text;
    page.announce();
    await writeFollowed(made);
  }

  /** The file is the sheet as it is without a server behind it. */
  async function writeFollowed({ plan }: { readonly plan: SetupPlan }): Promise<void> {
    if (hasErrors(plan)) {
      await tellFindings(model, plan.findings, io);
      return;
    }
    if (out === undefined || (await refuseTypeFaults(model, out, io)) !== undefined) return;
    const made = await makeSheet(args, io);
    if ("exitCode" in made) return;
    const problem = await writeOut(out, made.text, io);
    io.stderr.write(problem === undefined ? `Wrote ${out}.\n` : toldText(problem));
  }
}
