import { readText } from "../load/read-text.ts";
import { progressLines } from "../measure/progress-lines.ts";
import { readCsv, type TableReading } from "../measure/read-readings.ts";
import { answerSession, type Session } from "../measure/session.ts";
import { finishSession } from "./finish-session.ts";
import type { Io } from "./io.ts";
import { tellUnusable } from "./tell.ts";

/** Plays a table of readings through a session, as the answers that a builder would have typed, and finishes it. */
export async function enterTable(
  args: { readonly model: string; readonly servo?: readonly string[]; readonly dryRun?: boolean },
  path: string,
  start: Session,
  io: Io,
): Promise<number> {
  const read = await readText(path, io);
  if ("problem" in read) return tellUnusable(read.problem.message, io);
  const table = readCsv(read.text);
  if ("problem" in table) return tellUnusable(`${path}: ${table.problem}.`, io);
  const [only, ...more] = args.servo ?? [];
  if (table.readings.some(({ servo }) => servo === "") && (only === undefined || more.length > 0))
    return tellUnusable(`${path} does not say which servo was read; give one with --servo.`, io);
  let session = start;
  for (const line of answersOf(table.readings, only ?? "")) {
    const next = answerSession(session, line);
    if ("problem" in next) return tellUnusable(`${path}: ${next.problem}`, io);
    session = next.session;
    const isServoDone = line === "done";
    if (isServoDone)
      io.stderr.write(
        progressLines(session)
          .map((one) => `${one}\n`)
          .join(""),
      );
  }
  return finishSession(session, args, undefined, io);
}

/** The readings of a table take the place of those in the model; level and stops stay. */
function answersOf(readings: readonly TableReading[], only: string): readonly string[] {
  const servos = new Map<string, TableReading[]>();
  for (const reading of readings) {
    const servo = reading.servo === "" ? only : reading.servo;
    servos.set(servo, [...(servos.get(servo) ?? []), reading]);
  }
  const perServo = [...servos].flatMap(([servo, list]) => [
    `go ${servo}`,
    "",
    "",
    "",
    "clear",
    ...list.map(({ pulseUs, deflectionDeg, way = "out" }) => `${pulseUs} ${deflectionDeg} ${way}`),
    "done",
  ]);
  return ["yes", "", ...perServo, "end"];
}
