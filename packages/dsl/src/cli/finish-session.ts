import { resolve } from "node:path";
import { loadModel } from "../load/load-model.ts";
import { changesOf } from "../measure/changes-of.ts";
import { journalPath, writeJournal } from "../measure/journal.ts";
import { replaySession, type Session, startSession } from "../measure/session.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import type { Prompt } from "./prompt.ts";
import { tellUnusable } from "./tell.ts";
import { editBenches, showEdits, showRefusals, writeEdits } from "./write-benches.ts";
import { writeOut } from "./write-out.ts";

/**
 * Shows what a finished session changes in the model's files and writes it; the journal goes once everything stands there.
 * @param prompt where given, it is asked before anything is written
 */
export async function finishSession(
  session: Session,
  { model: path, dryRun = false }: { readonly model: string; readonly dryRun?: boolean },
  prompt: Prompt | undefined,
  io: Io,
): Promise<number> {
  const journal = journalPath(path);
  const dropJournal = () => io.out.remove(resolve(io.cwd, journal));
  const edits = await editBenches(path, changesOf(session), io);
  const hasRefusals = edits.refusals.length > 0;
  if (edits.files.length === 0 && !hasRefusals) {
    if (!dryRun) await dropJournal();
    io.stderr.write("Nothing was measured otherwise than the model says; nothing is written.\n");
    return exitDone;
  }
  io.stdout.write(showEdits(edits));
  if (hasRefusals) io.stderr.write(`\nTo be typed by hand:\n${showRefusals(edits)}`);
  if (dryRun) {
    io.stderr.write("Dry run: nothing was written.\n");
    return hasRefusals ? exitFindings : exitDone;
  }
  if (edits.files.length > 0) {
    const names = edits.files.map((file) => file.path).join(", ");
    const agreed = await prompt?.ask(`Write this into ${names}? (yes, or stop)`, (typed) =>
      ["yes", "stop"].includes(typed.trim().toLowerCase()) ? undefined : "Type yes, or stop.",
    );
    if (prompt !== undefined && agreed?.trim().toLowerCase() !== "yes") {
      io.stderr.write(`Nothing was written; ${journal} keeps the session.\n`);
      return exitDone;
    }
    const problem = await writeEdits(edits, io);
    if (problem !== undefined) return tellUnusable(`${problem} ${journal} keeps the session.`, io);
    io.stderr.write(`Wrote ${names}. Then: hingeline check ${path}\n`);
  }
  if (!hasRefusals) {
    await dropJournal();
    return exitDone;
  }
  await keepRest(session, path, io);
  io.stderr.write(`${journal} is kept until what is computed has been changed too.\n`);
  return exitFindings;
}

/** The journal on top of what was written, so that the rest can still be shown. */
async function keepRest(session: Session, path: string, io: Io): Promise<void> {
  const loaded = await loadModel(path, io, { runs: false });
  if (!("model" in loaded)) return;
  const rest = replaySession(startSession(loaded.model, session.servos), session.answers);
  if ("session" in rest) await writeOut(journalPath(path), writeJournal(rest.session), io);
}
