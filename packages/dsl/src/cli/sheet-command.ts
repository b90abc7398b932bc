import { hasErrors } from "@hingeline/core";
import { countFindings } from "../render/findings-to-text.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { makeSheet, type SheetArgs } from "./make-sheet.ts";
import { refuseOut } from "./refuse-out.ts";
import { tellFindings, tellUnusable } from "./tell.ts";
import { refuseTypeFaults } from "./type-faults.ts";
import { watchSheet } from "./watch-sheet.ts";
import { writeOut } from "./write-out.ts";

/**
 * Prints a model's bench sheet or one of its pictures, or writes it to a file. A sheet with errors is printed, but never written; nor is
 * one of a model that does not compile.
 */
export async function sheetCommand(args: SheetArgs, io: Io): Promise<number> {
  const { model, out } = args;
  const over = await refuseOut(out, [model, args.asBuilt], io);
  if (over !== undefined) return over;
  if (args.watch === true) return watchSheet(args, io);
  const unfit = out === undefined ? undefined : await refuseTypeFaults(model, out, io);
  if (unfit !== undefined) return unfit;
  const made = await makeSheet(args, io);
  if ("exitCode" in made) return made.exitCode;
  const { plan, text } = made;
  const refused = hasErrors(plan);
  if (out === undefined) {
    io.stdout.write(text);
    return refused ? exitFindings : exitDone;
  }
  if (refused) {
    await tellFindings(model, plan.findings, io);
    io.stderr.write(`\nNothing was written to ${out}.\n`);
    return exitFindings;
  }
  const problem = await writeOut(out, text, io);
  if (problem !== undefined) return tellUnusable(problem, io);
  io.stderr.write(`Wrote ${out}: ${countFindings(plan.findings)}.\n`);
  return exitDone;
}
