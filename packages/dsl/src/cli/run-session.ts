import { progressLines } from "../measure/progress-lines.ts";
import { helpLines, questionOf } from "../measure/question-of.ts";
import { answerSession, type Session } from "../measure/session.ts";
import { paintFor } from "../render/paint.ts";
import type { Io } from "./io.ts";
import type { Prompt } from "./prompt.ts";
import { wantsColour } from "./tell.ts";

/** How a run of questions ended; `broken` where an answer could not be kept. */
export type SessionEnd = "finished" | "stopped" | { readonly broken: string };

/**
 * Asks from where the session stands to its end, or until the person stops. After each answer `keep` is called, and what the
 * answer means is shown.
 */
export async function runSession(
  start: Session,
  prompt: Prompt,
  keep: (session: Session) => Promise<string | undefined>,
  io: Io,
): Promise<{ readonly session: Session; readonly end: SessionEnd }> {
  const paint = paintFor(wantsColour(io.stderr, io));
  const tell = (lines: readonly string[]) => io.stderr.write(lines.map((line) => `${line}\n`).join(""));
  let session = start;
  let advised = "";
  for (;;) {
    const question = questionOf(session);
    if (question === undefined) return { session, end: "finished" };
    const { advice, message } = question;
    const standing = `${session.index} ${session.step}`;
    // The same advice twice in a row only takes room.
    if (standing !== advised) tell(advice);
    advised = standing;
    const line = await prompt.ask(message, (typed) => {
      if (isCommand(typed)) return undefined;
      const next = answerSession(session, typed);
      return "problem" in next ? next.problem : undefined;
    });
    if (line === undefined || line.trim().toLowerCase() === "stop") return { session, end: "stopped" };
    if (line.trim().toLowerCase() === "help") {
      tell(helpLines);
      continue;
    }
    const next = answerSession(session, line);
    if ("problem" in next) continue;
    session = next.session;
    const broken = await keep(session);
    if (broken !== undefined) return { session, end: { broken } };
    tell(progressLines(session, paint));
  }
}

function isCommand(typed: string): boolean {
  return ["stop", "help"].includes(typed.trim().toLowerCase());
}
