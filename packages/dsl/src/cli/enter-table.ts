import type { Model } from "@hingeline/core";
import { inputName } from "../load/input-name.ts";
import { readText } from "../load/read-text.ts";
import { progressLines } from "../measure/progress-lines.ts";
import { readCsv, type TableReading } from "../measure/read-readings.ts";
import { answerSession, servosOf, startSession } from "../measure/session.ts";
import { finishSession } from "./finish-session.ts";
import type { Io } from "./io.ts";
import { tellUnusable } from "./tell.ts";

/**
 * Plays a table of readings through a session, as the answers that a builder would have typed, and finishes it. The readings take
 * the place of those in the model; level and stops stay.
 * @param args.servo the only servos whose readings may stand in it; one alone is meant where the table does not say
 */
export async function enterTable(
  args: { readonly model: string; readonly servo?: readonly string[]; readonly dryRun?: boolean },
  path: string,
  model: Model,
  io: Io,
): Promise<number> {
  const read = await readText(path, io);
  if ("problem" in read) return tellUnusable(read.problem.message, io);
  const name = inputName(path);
  const table = readCsv(read.text);
  if ("problem" in table) return tellUnusable(`${name}: ${table.problem}.`, io);
  const [only, ...more] = args.servo ?? [];
  const lists = new Map<string, TableReading[]>();
  for (const reading of table.readings) {
    const servo = reading.servo === "" && more.length === 0 ? (only ?? "") : reading.servo;
    if (servo === "")
      return tellUnusable(`${name} does not say which servo was read; give one with --servo.`, io);
    if (!servosOf(model).includes(servo))
      return tellUnusable(`${name}: "${servo}" is no servo of ${args.model}.`, io);
    if (args.servo !== undefined && !args.servo.includes(servo))
      return tellUnusable(`${name} has readings of "${servo}", which --servo does not name.`, io);
    lists.set(servo, [...(lists.get(servo) ?? []), reading]);
  }
  let session = startSession(model, [...lists.keys()]);
  for (const line of ["yes", "", ...[...lists.values()].flatMap(answersOf)]) {
    const next = answerSession(session, line);
    if ("problem" in next) return tellUnusable(`${name}: ${next.problem}`, io);
    session = next.session;
    if (session.note !== undefined) io.stderr.write(`${line}: ${session.note}\n`);
    if (line === "done")
      io.stderr.write(
        progressLines(session)
          .map((one) => `${one}\n`)
          .join(""),
      );
  }
  return finishSession(session, args, undefined, io);
}

/** The answers for one servo. */
function answersOf(readings: readonly TableReading[]): readonly string[] {
  const lines = readings.map(
    ({ pulseUs, deflectionDeg, way = "out" }) => `${pulseUs} ${deflectionDeg} ${way}`,
  );
  const [level, up, down] = ["", "", ""];
  return [level, up, down, "clear", ...lines, "done"];
}
