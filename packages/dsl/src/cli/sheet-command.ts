import { countFindings } from "../render/findings-to-text.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { makeSheet, type SheetArgs } from "./make-sheet.ts";
import { tellFindings, tellUnusable } from "./tell.ts";
import { refuseTypeFaults } from "./type-faults.ts";
import { watchSheet } from "./watch-sheet.ts";
import { writeOut } from "./write-out.ts";

/** Prints a model's bench sheet or one of its pictures, or writes it to a file; a sheet with errors is printed, but never written. */
export async function sheetCommand(args: SheetArgs, io: Io): Promise<number> {
  if (args.watch === true) return watchSheet(args, io);
  const unfit = args.out === undefined ? undefined : await refuseTypeFaults(args.model, args.out, io);
  if (unfit !== undefined) return unfit;
  const made = await makeSheet(args, io);
  if ("exitCode" in made) return made.exitCode;
  const { plan, text } = made;
  const refused = plan.findings.some(({ severity }) => severity === "error");
  if (args.out === undefined) {
    io.stdout.write(text);
    return refused ? exitFindings : exitDone;
  }
  if (refused) {
    tellFindings(plan.findings, io);
    io.stderr.write(`\nNothing was written to ${args.out}.\n`);
    return exitFindings;
  }
  const problem = await writeOut(args.out, text, io);
  if (problem !== undefined) return tellUnusable(problem, io);
  io.stderr.write(`Wrote ${args.out}: ${countFindings(plan.findings)}.\n`);
  return exitDone;
}
