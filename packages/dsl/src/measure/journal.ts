import { type Bench, canonicalJson, type Model } from "@hingeline/core";
import { benchAt, withBench } from "./bench-at.ts";
import { writtenModel } from "./changes-of.ts";
import { replaySession, type Session, servosOf, startSession } from "./session.ts";

/** Where the journal of a model file's session lies. */
export function journalPath(model: string): string {
  return `${model}.bench.jsonl`;
}

/** A session as lines of JSON: what the benches were, then each answer. With it the session can be taken up again. */
export function writeJournal({ before, servos, answers }: Session): string {
  const head = { format: journalFormat, version: 1, servos, benches: benchesOf(before) };
  return `${[canonicalJson(head), ...answers.map((answer) => JSON.stringify(answer))].join("\n")}\n`;
}

export type ResumedSession =
  | { readonly session: Session }
  /** All that was measured stands in the model already. */
  | { readonly written: true }
  | { readonly problem: "notAJournal" | "modelChanged" };

/** Takes a session up again from its journal, if the model still is what it began with. */
export function resumeSession(journal: string, model: Model): ResumedSession {
  const parsed = parse(journal);
  if (parsed === undefined) return { problem: "notAJournal" };
  const { head, answers } = parsed;
  const names = servosOf(model);
  if (canonicalJson(Object.keys(head.benches)) !== canonicalJson([...names].sort()))
    return { problem: "modelChanged" };
  if (head.servos.some((servo) => !names.includes(servo))) return { problem: "notAJournal" };
  const before = names.reduce((made, name) => {
    const bench = head.benches[name];
    return bench === undefined ? made : withBench(made, name, bench);
  }, model);
  const now = canonicalJson(benchesOf(model));
  if (now === canonicalJson(head.benches)) {
    const replayed = replaySession(startSession(model, head.servos), answers);
    return "problem" in replayed ? { problem: "notAJournal" } : replayed;
  }
  const replayed = replaySession(startSession(before, head.servos), answers);
  if ("problem" in replayed) return { problem: "notAJournal" };
  const isWritten =
    replayed.session.step === "finished" && now === canonicalJson(benchesOf(writtenModel(replayed.session)));
  return isWritten ? { written: true } : { problem: "modelChanged" };
}

const journalFormat = "hingeline/bench-journal";

interface Head {
  readonly servos: readonly string[];
  readonly benches: Readonly<Record<string, Bench>>;
}

function parse(journal: string): { readonly head: Head; readonly answers: readonly string[] } | undefined {
  try {
    const [head, ...answers] = journal
      .split("\n")
      .filter((line) => line !== "")
      .map((line) => JSON.parse(line) as unknown);
    return isHead(head) && answers.every((answer) => typeof answer === "string")
      ? { head, answers }
      : undefined;
  } catch {
    return undefined;
  }
}

function isHead(value: unknown): value is Head {
  return (
    typeof value === "object" &&
    value !== null &&
    "format" in value &&
    value.format === journalFormat &&
    "version" in value &&
    value.version === 1 &&
    "servos" in value &&
    Array.isArray(value.servos) &&
    "benches" in value &&
    typeof value.benches === "object" &&
    value.benches !== null
  );
}

function benchesOf(model: Model): Readonly<Record<string, Bench>> {
  return Object.fromEntries(servosOf(model).map((name) => [name, benchAt(model, name)]));
}
