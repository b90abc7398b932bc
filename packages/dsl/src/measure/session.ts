import {
  amps,
  type Bench,
  benchAddresses,
  celsius,
  type Measured,
  type Model,
  type Stop,
  us,
  volts,
} from "@hingeline/core";
import { benchAt, withBench } from "./bench-at.ts";
import { dropReading, enterReading } from "./enter-reading.ts";
import { type Answer, parseAnswer, type Way } from "./parse-answer.ts";

/** What is asked for: what to make safe, what to record, then for each servo its level, its stops and its readings. */
export type Step = "safe" | "record" | "level" | "up" | "down" | "readings" | "finished";

/** A bench session between two answers. It is wholly determined by `before`, `servos` and `answers`. */
export interface Session {
  /** The model as it was. */
  readonly before: Model;
  /** The model with everything measured so far in place. */
  readonly model: Model;
  /** Names of the servos to measure, in order, as the plan writes them. */
  readonly servos: readonly string[];
  /** Place in `servos`. */
  readonly index: number;
  readonly step: Step;
  /** From which side the servo comes while readings are taken. */
  readonly way: Way;
  readonly measured: Measured;
  /** What was entered last, to be shown with what it means. */
  readonly entered?: { readonly servo: string; readonly step: Step; readonly pulseUs?: number };
  /** Something that the last answer did beside what it says. */
  readonly note?: string;
  readonly answers: readonly string[];
}

/** A session before its first answer. @param servos names in the plan; those that the model does not have are a mistake of the caller */
export function startSession(before: Model, servos: readonly string[]): Session {
  return {
    before,
    model: before,
    servos,
    index: 0,
    step: servos.length === 0 ? "finished" : "safe",
    way: "out",
    measured: {},
    answers: [],
  };
}

/** The names of all servos of a model, in its order. */
export function servosOf(model: Model): readonly string[] {
  return [...benchAddresses(model).keys()];
}

/** The session after one more answer, or a sentence for why it is none; "undo" takes the last answer back. */
export function answerSession(
  session: Session,
  line: string,
): { readonly session: Session } | { readonly problem: string } {
  const answer = parseAnswer(line);
  if ("problem" in answer) return answer;
  if (answer.kind === "word" && answer.word === "undo") {
    if (session.answers.length === 0) return { problem: "There is nothing to take back." };
    return replaySession(startSession(session.before, session.servos), session.answers.slice(0, -1));
  }
  const { note: _note, entered: _entered, ...rest } = session;
  const next = step(rest, answer);
  return "problem" in next ? next : { session: { ...next, answers: [...session.answers, line.trim()] } };
}

/** The session after all of these answers, or the sentence for the first that is none. */
export function replaySession(
  start: Session,
  answers: readonly string[],
): { readonly session: Session } | { readonly problem: string } {
  let session = start;
  for (const answer of answers) {
    const next = answerSession(session, answer);
    if ("problem" in next) return next;
    session = next.session;
  }
  return { session };
}

/** The servo that is being measured; undefined before the first and after the last. */
export function servoOf({ servos, index, step }: Session): string | undefined {
  return step === "safe" || step === "record" || step === "finished" ? undefined : servos[index];
}

type Stepped = Session | { readonly problem: string };

function step(session: Session, answer: Answer): Stepped {
  const name = session.servos[session.index] ?? "";
  if (session.step === "finished")
    return { problem: "The session is at its end; undo takes the last answer back." };
  if (session.step === "safe")
    return answer.kind === "word" && answer.word === "yes"
      ? { ...session, step: "record" }
      : { problem: "Nothing is measured before that is done; type yes when it is." };
  if (answer.kind === "go") return goTo(session, answer.servo);
  if (answer.kind === "word" && answer.word === "end") return { ...session, step: "finished" };
  if (session.step === "record") return record(session, answer);
  if (answer.kind === "word" && answer.word === "skip")
    return nextServo({ ...session, model: withBench(session.model, name, benchAt(session.before, name)) });
  if (session.step === "readings") return takeReading(session, name, answer);
  return takePulse(session, name, session.step, answer);
}

function goTo(session: Session, servo: string): Stepped {
  const index = session.servos.indexOf(servo);
  return index < 0
    ? { problem: `There is no servo "${servo}" in this session; there is ${session.servos.join(", ")}.` }
    : { ...session, index, step: "level", way: "out" };
}

function nextServo(session: Session): Session {
  const index = session.index + 1;
  return index < session.servos.length
    ? { ...session, index, step: "level", way: "out" }
    : { ...session, step: "finished" };
}

function record(session: Session, answer: Answer): Stepped {
  if (answer.kind === "keep") return { ...session, step: "level" };
  if (answer.kind !== "record")
    return { problem: "Give a date, a voltage, a temperature, or Enter for none." };
  const { on, supplyV, celsius: degrees } = answer;
  const measured: Measured = {
    ...(on === undefined ? {} : { on }),
    ...(supplyV === undefined ? {} : { supply: volts(supplyV) }),
    ...(degrees === undefined ? {} : { temperature: celsius(degrees) }),
  };
  return { ...session, measured, step: "level" };
}

function takePulse(session: Session, name: string, at: "level" | "up" | "down", answer: Answer): Stepped {
  const bench = benchAt(session.model, name);
  const after = { level: "up", up: "down", down: "readings" } as const;
  const next = { ...session, step: after[at] };
  if (answer.kind === "keep") return next;
  if (answer.kind !== "pulse")
    return {
      problem: at === "level" ? "Give the pulse at level." : "Give the pulse of the stop, and its reason.",
    };
  const entered = { servo: name, step: at, pulseUs: answer.pulseUs };
  const put = (changed: Bench) => ({ ...next, entered, model: withBench(session.model, name, changed) });
  if (at === "level") {
    if (answer.reason !== undefined) return { problem: "Level has no reason; only a stop has." };
    const { currentA } = answer;
    return put({
      ...bench,
      level: us(answer.pulseUs),
      ...(currentA === undefined ? {} : { freeCurrent: amps(currentA) }),
    });
  }
  const stop = stopOf(answer, bench[at]);
  return "problem" in stop ? stop : put({ ...bench, [at]: stop.stop });
}

/** A stop as entered; one that had a reason keeps it where no other is given. */
function stopOf(
  { pulseUs, reason, currentA }: Extract<Answer, { kind: "pulse" }>,
  before: Stop | undefined,
): { readonly stop: Stop } | { readonly problem: string } {
  const why = reason ?? (typeof before === "object" ? before.reason : undefined);
  if (why === undefined)
    return currentA === undefined
      ? { stop: us(pulseUs) }
      : { problem: "A stop that has a current needs its reason too, such as contact." };
  const pulse = us(pulseUs);
  const current = currentA === undefined ? {} : { current: amps(currentA) };
  return { stop: { kind: "stop", pulse, reason: why, ...current } };
}

function takeReading(session: Session, name: string, answer: Answer): Stepped {
  const bench = benchAt(session.model, name);
  const put = (readings: Bench["readings"]) =>
    withBench(session.model, name, { ...bench, readings: readings ?? [] });
  const entered = { servo: name, step: session.step };
  switch (answer.kind) {
    case "reading": {
      const taken = enterReading(benchAt(session.before, name), bench, answer, answer.way ?? session.way);
      if ("problem" in taken) return taken;
      const { readings, replaced } = taken;
      const model = put(readings);
      const note = replaced === undefined ? {} : { note: `This takes the place of ${replaced}.` };
      return { ...session, model, entered: { ...entered, pulseUs: answer.pulseUs }, ...note };
    }
    case "drop": {
      const left = dropReading(bench, answer.pulseUs);
      return left === undefined
        ? { problem: `There is no reading at ${answer.pulseUs} us.` }
        : { ...session, model: put(left), entered };
    }
    case "word":
      if (answer.word === "out" || answer.word === "back") return { ...session, way: answer.word };
      if (answer.word === "clear") return { ...session, model: put([]), way: "out", entered };
      if (answer.word === "done")
        return { ...nextServo(session), entered: { servo: name, step: "finished" } };
  }
  return { problem: "Give a pulse and a deflection, such as 1765 8.6, or done." };
}
