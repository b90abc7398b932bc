import { resolve } from "node:path";
import type { Model } from "@hingeline/core";
import { findModel } from "../load/find-model.ts";
import { loadModel } from "../load/load-model.ts";
import { readText } from "../load/read-text.ts";
import { journalPath, resumeSession, writeJournal } from "../measure/journal.ts";
import { type Session, servosOf, startSession } from "../measure/session.ts";
import { enterTable } from "./enter-table.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import { finishSession } from "./finish-session.ts";
import type { Io } from "./io.ts";
import { runSession } from "./run-session.ts";
import { scriptPrompt } from "./script-prompt.ts";
import { tellFindings, tellProblem, tellUnusable } from "./tell.ts";
import { writeOut } from "./write-out.ts";

export interface MeasureArgs {
  readonly model: string;
  /** Names of the servos to measure; without it all. */
  readonly servo?: readonly string[];
  /** A file of answers, one a line. */
  readonly script?: string;
  /** A table of readings. */
  readonly csv?: string;
  readonly dryRun?: boolean;
}

/**
 * Leads through a bench session and writes what was measured into the model file. Every answer is kept in a journal beside the
 * model, so that a session that was stopped, or killed, goes on where it was.
 */
export async function measureCommand(args: MeasureArgs, io: Io): Promise<number> {
  const { model: path, script, csv } = args;
  if (script !== undefined && csv !== undefined) return tellUnusable("Give --script or --csv, not both.", io);
  if (script === undefined && csv === undefined && io.prompt === undefined)
    return tellUnusable("measure asks its questions at a terminal; without one give --script or --csv.", io);
  const found = findModel(path, io.cwd);
  if ("problem" in found) return tellUnusable(found.problem.message, io);
  if (found.kind === "json")
    return tellUnusable("measure writes into a model file in code, not into JSON.", io);
  // Read and not run: what cannot be read that way could not be written back either.
  const loaded = await loadModel(path, io, { runs: false });
  if ("problem" in loaded) return tellProblem(loaded.problem, io);
  if ("findings" in loaded) return tellFindings(path, loaded.findings, io);
  const { model } = loaded;
  const unknown = args.servo?.find((name) => !servosOf(model).includes(name));
  if (unknown !== undefined)
    return tellUnusable(`${path} has no servo "${unknown}"; it has ${servosOf(model).join(", ")}.`, io);
  const begun = await beginSession(args, model, io);
  if ("exitCode" in begun) return begun.exitCode;
  return csv === undefined ? askThrough(args, begun.session, io) : enterTable(args, csv, model, io);
}

/** A new session, or the one that was broken off. */
async function beginSession(
  { model: path, servo, csv }: MeasureArgs,
  model: Model,
  io: Io,
): Promise<{ readonly session: Session } | { readonly exitCode: number }> {
  const journal = journalPath(path);
  const fresh = { session: startSession(model, servo ?? servosOf(model)) };
  const read = await readText(journal, io);
  if ("problem" in read) {
    return read.problem.kind === "not-found" ? fresh : { exitCode: tellUnusable(read.problem.message, io) };
  }
  if (csv !== undefined)
    return {
      exitCode: tellUnusable(`A session is not finished: ${journal}. Finish it, or remove that file.`, io),
    };
  const resumed = resumeSession(read.text, model);
  if ("written" in resumed) {
    await io.out.remove(resolve(io.cwd, journal));
    io.stderr.write(`All that ${journal} holds stands in ${path} already; a new session begins.\n`);
    return fresh;
  }
  if ("problem" in resumed)
    return {
      exitCode: tellUnusable(
        resumed.problem === "notAJournal"
          ? `${journal} is no journal of a bench session; move it away.`
          : `The benches in ${path} are no longer those that ${journal} began with; put them back, or move the journal away.`,
        io,
      ),
    };
  const { session } = resumed;
  if (servo !== undefined && servo.join() !== session.servos.join())
    return {
      exitCode: tellUnusable(
        `The session that is not finished measures ${session.servos.join(", ")}; finish it, or move ${journal} away.`,
        io,
      ),
    };
  io.stderr.write(`Going on with ${journal}, ${session.answers.length} answers in.\n`);
  return { session };
}

async function askThrough(args: MeasureArgs, start: Session, io: Io): Promise<number> {
  const { model: path, script, dryRun = false } = args;
  const read = script === undefined ? undefined : await readText(script, io);
  if (read !== undefined && "problem" in read) return tellUnusable(read.problem.message, io);
  const scripted = read === undefined ? undefined : scriptPrompt(read.text);
  const prompt = scripted ?? io.prompt;
  if (prompt === undefined) throw new Error("a session without anyone to ask");
  const journal = journalPath(path);
  const keep = async (session: Session) =>
    dryRun ? undefined : writeOut(journal, writeJournal(session), io);
  if (dryRun) io.stderr.write("Dry run: nothing is written, and nothing kept if you stop.\n");
  // Better now than after the first servo.
  const unkept = await keep(start);
  if (unkept !== undefined) return tellUnusable(unkept, io);
  const { session, end } = await runSession(start, prompt, keep, io);
  if (end === "finished")
    return finishSession(session, args, scripted === undefined ? io.prompt : undefined, io);
  const kept = dryRun
    ? "Nothing was kept."
    : `The answers so far are kept in ${journal}; run the same command to go on.`;
  if (typeof end === "object") return tellUnusable(`${end.broken} ${kept}`, io);
  const fault = scripted?.fault();
  if (fault !== undefined) return tellUnusable(`${script}, line ${fault.line}: ${fault.problem} ${kept}`, io);
  io.stderr.write(`Stopped. ${kept}\n`);
  return scripted === undefined ? exitDone : exitFindings;
}
