import { benchAddresses, type Servo, type Stop } from "@hingeline/core";
import { visibleText } from "../render/visible-text.ts";
import { hang } from "../render/wrap-text.ts";
import { benchAt } from "./bench-at.ts";
import { type Session, servoOf } from "./session.ts";

/** What to tell the builder before a question, and the question itself, which has room in one line. */
export interface Question {
  readonly advice: readonly string[];
  readonly message: string;
}

const columns = 78;

/** The question that a session stands at; undefined where it is finished. What to make safe and how to approach a stop: common practice, no source. */
export function questionOf(session: Session): Question | undefined {
  const servo = servoOf(session);
  const { step } = session;
  if (step === "safe") return { advice: safe, message: "Is all of this done? (yes)" };
  if (step === "record")
    return {
      advice: [],
      message: "Date, supply, temperature to record (2026-05-02 6.0V 21C; Enter: none)",
    };
  if (servo === undefined) return undefined;
  const bench = benchAt(session.model, servo);
  switch (step) {
    case "level":
      return {
        advice: [...title(session, servo), ...hang("  ", levelAdvice, columns)],
        message: `Level: pulse, and current if known (${bench.level} 0.12A)${kept(bench.level)}`,
      };
    case "up":
    case "down":
      return {
        advice: step === "up" ? stopAdvice : [],
        message: `Last good pulse ${step}, and why it is the last${kept(bench[step])}`,
      };
    default:
      return {
        advice: session.entered?.step === "readings" ? [] : readingAdvice(bench.readings?.length ?? 0),
        message: `Reading, on the way ${session.way}: pulse and deflection (1765 8.6)`,
      };
  }
}

/** The words that can be typed, for `help`. */
export const helpLines: readonly string[] = [
  ["Enter", "keeps what stands in brackets"],
  ["1765 8.6", "a reading: pulse in us, deflection in degrees, trailing edge down positive"],
  ["1765 14mm", "a reading as throw at the chord, or as extension of a track"],
  ["1880 contact", "a stop and its reason: contact, deadCentre, structure, servo, signal, choice"],
  ["1880 contact 0.31A", "the same with the holding current"],
  ["out, back", "from here on the servo comes from that side"],
  ["drop 1535", "drops the reading at a pulse"],
  ["clear", "drops all readings of this servo, to begin anew"],
  ["done", "this servo is finished"],
  ["skip", "leaves this servo as it was, and goes on to the next"],
  ["go flapLeft", "goes to that servo, forward or back"],
  ["undo", "takes the last answer back"],
  ["end", "finishes the session and writes what was measured"],
  ["stop", "stops for now; the session goes on from here another time"],
].flatMap(([word = "", meaning = ""]) => hang(`  ${word.padEnd(20)}`, meaning, columns));

const safe = [
  "Before a servo moves:",
  ...[
    "propeller off, or the motor lead out, or the fuel off;",
    "the model held so that nothing can move but the surface;",
    "the servo on a tester with a supply that limits the current to about 1 A a servo;",
    "the receiver and every other servo of the same surface unplugged, and unhooked at the horn;",
    "on unexpected movement, buzzing or high current pull the supply at once.",
  ].flatMap((line) => hang("  - ", line, columns)),
];

const levelAdvice =
  "Set the pulse at which the surface stands level, and zero the meter on the fixed surface ahead of it.";

const stopAdvice = hang(
  "  ",
  "Stops, each approached from the inside: steps of 10 us, then of 2 us. The last good pulse is the one before contact (a strip of paper still slides), before the holding current rises by more than 0.06 A, before any buzz; not the one at which it stops.",
  columns,
);

function readingAdvice(readings: number): readonly string[] {
  const kept =
    readings === 0
      ? []
      : hang(
          "  ",
          `${readings === 1 ? "1 reading is in the model and stays" : `${readings} readings are in the model and stay`}, unless you read the same pulse again; clear drops ${readings === 1 ? "it" : "them"}.`,
          columns,
        );
  return [
    ...hang(
      "  ",
      "Readings, never past a stop: from one end to the other, and for the play type back and read the same pulses on the way back. Then done; help shows every word.",
      columns,
    ),
    ...kept,
  ];
}

function title({ servos, index, model }: Session, servo: string): readonly string[] {
  const { channel, label } = servoAt(model, servo);
  const name = `${servo}, channel ${channel}${label === undefined ? "" : `, ${label}`}`;
  return ["", ...hang("", `${visibleText(name)} (servo ${index + 1} of ${servos.length})`, columns)];
}

function servoAt(model: Session["model"], name: string): Servo {
  const address = benchAddresses(model).get(name)?.slice(0, -1) ?? [];
  return address.reduce<unknown>((part, key) => (part as Record<string, unknown>)[key], model) as Servo;
}

function kept(stop: Stop | undefined): string {
  if (stop === undefined) return " [none]";
  return typeof stop === "number" ? ` [${stop}]` : ` [${stop.pulse} ${stop.reason}]`;
}
