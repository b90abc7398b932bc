import type { Bench } from "@hingeline/core";
import { parseModel } from "@hingeline/core/schema";
import bramblehook from "@hingeline/examples/bramblehook";
import corvane from "@hingeline/examples/corvane";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { benchAt, withBench } from "../../../packages/dsl/src/measure/bench-at.ts";
import { changesOf, writtenModel } from "../../../packages/dsl/src/measure/changes-of.ts";
import { resumeSession, writeJournal } from "../../../packages/dsl/src/measure/journal.ts";
import { progressLines } from "../../../packages/dsl/src/measure/progress-lines.ts";
import { questionOf } from "../../../packages/dsl/src/measure/question-of.ts";
import {
  answerSession,
  replaySession,
  type Session,
  servosOf,
  startSession,
} from "../../../packages/dsl/src/measure/session.ts";

const all = servosOf(bramblehook);
const start = startSession(bramblehook, all);

/** The session after these answers, every one of which must be taken. */
function sessionAfter(answers: readonly string[], from: Session = start): Session {
  const replayed = replaySession(from, answers);
  if ("problem" in replayed) throw new Error(replayed.problem);
  return replayed.session;
}

function refusalOf(answers: readonly string[], last: string): string {
  const next = answerSession(sessionAfter(answers), last);
  return "problem" in next ? next.problem : "";
}

/** Safe, nothing to record, level and stops of the left flap kept. */
const toReadings = ["yes", "", "", "", ""];
const readingsOf = (session: Session): Bench["readings"] => benchAt(session.model, "flapLeft").readings;
const before = benchAt(bramblehook, "flapLeft").readings ?? [];

/** Answers of every kind, some of which are refused where they come. */
const anyAnswer = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom("yes", "", "done", "out", "back", "clear", "skip", "go elevator") },
  {
    weight: 4,
    arbitrary: fc
      .tuple(fc.integer({ min: 1100, max: 1900 }), fc.integer({ min: -250, max: 450 }))
      .map(([pulseUs, tenths]) => `${pulseUs} ${tenths / 10}`),
  },
  { weight: 2, arbitrary: fc.integer({ min: 1100, max: 1900 }).map((pulseUs) => `${pulseUs} contact 0.2A`) },
  { weight: 1, arbitrary: fc.constantFrom("drop 1535", "2026-05-02 6V 21C", "1857 0.1 back", "1500 12mm") },
);
const anyAnswers = fc.array(anyAnswer, { minLength: 1, maxLength: 40 }).map((answers) => ["yes", ...answers]);

/** The session after those of the answers that are taken. */
function afterTaken(answers: readonly string[]): Session {
  return answers.reduce((session, answer) => {
    const next = answerSession(session, answer);
    return "problem" in next ? session : next.session;
  }, start);
}

describe("whatever is answered", () => {
  test("a session is what its answers make of it, and its journal brings it back", () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const session = afterTaken(answers);
        expect(sessionAfter(session.answers)).toEqual(session);
        expect(resumeSession(writeJournal(session), bramblehook)).toEqual({ session });
      }),
      { numRuns: 60 },
    );
  });

  test("undo brings back the session before the last answer", () => {
    fc.assert(
      fc.property(anyAnswers, anyAnswer, (answers, last) => {
        const session = afterTaken(answers);
        const next = answerSession(session, last);
        if ("problem" in next) return;
        expect(answerSession(next.session, "undo")).toEqual({ session });
      }),
      { numRuns: 60 },
    );
  });

  test("what is to be written is a model, and differs from the one before in nothing but the changes", () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const session = afterTaken(answers);
        const written = writtenModel(session);
        expect(parseModel(JSON.parse(JSON.stringify(written)))).toEqual({ model: written });
        const changed = new Set(changesOf(session).map(({ address }) => address.replace(/\.\w+$/, "")));
        for (const servo of all)
          if (!changed.has(`surfaces.${servo}.servo.bench`))
            expect(benchAt(written, servo)).toEqual(benchAt(bramblehook, servo));
      }),
      { numRuns: 60 },
    );
  });

  test("questions and what is shown have room at 80 columns", () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const session = afterTaken(answers);
        const { advice = [], message = "" } = questionOf(session) ?? {};
        // The terminal puts a mark and two spaces before the question.
        const lines = [...advice, ...progressLines(session), `   ${message}`];
        expect(lines.filter((line) => line.length > 80)).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });
});

describe("a session", () => {
  test("measures nothing before all is safe", () => {
    expect(refusalOf([], "1880")).toMatch(/type yes/);
    expect(sessionAfter(["yes"]).step).toBe("record");
  });

  test("goes servo by servo through level, stops and readings", () => {
    const steps: string[] = [];
    let session = start;
    for (const answer of ["yes", "", "", "", "", "done", "", "", "", "done"]) {
      session = sessionAfter([answer], session);
      steps.push(`${session.servos[session.index]} ${session.step}`);
    }
    expect(steps).toEqual([
      "flapLeft record",
      "flapLeft level",
      "flapLeft up",
      "flapLeft down",
      "flapLeft readings",
      "flapRight level",
      "flapRight up",
      "flapRight down",
      "flapRight readings",
      "aileronLeft level",
    ]);
  });

  test("with nothing but Enter changes nothing", () => {
    const session = sessionAfter(["yes", "", ...all.flatMap(() => ["", "", "", "done"])]);
    expect(session.step).toBe("finished");
    expect(changesOf(session)).toEqual([]);
  });

  test("keeps a stop's reason where only its pulse is new", () => {
    const session = sessionAfter(["yes", "", "1861", "1878", "1174 choice 0.3A"]);
    expect(changesOf(session)).toEqual([
      {
        address: "surfaces.flapLeft.servo.bench.up",
        value: { kind: "stop", pulse: 1878, reason: "contact" },
      },
      { address: "surfaces.flapLeft.servo.bench.level", value: 1861 },
      {
        address: "surfaces.flapLeft.servo.bench.down",
        value: { kind: "stop", pulse: 1174, reason: "choice", current: 0.3 },
      },
    ]);
  });

  test("puts a reading in the place of one at the same pulse, and says so", () => {
    const session = sessionAfter([...toReadings, "1766 8.4"]);
    expect(readingsOf(session)).toHaveLength(before.length);
    expect(session.note).toBe("This takes the place of 1765 us, 8.6 deg.");
    expect(changesOf(session)).toEqual([
      {
        address: "surfaces.flapLeft.servo.bench.readings",
        value: before.map((reading) => (reading[0] === 1765 ? [1766, 8.4] : reading)),
      },
    ]);
  });

  test("puts a reading between others where its pulse belongs", () => {
    const session = sessionAfter([...toReadings, "1700 14.1"]);
    expect(readingsOf(session)?.map(([pulse]) => pulse)).toEqual([
      1880, 1857, 1765, 1700, 1660, 1535, 1395, 1270, 1172,
    ]);
  });

  test("marks ways only where both were taken, in the order of measuring", () => {
    const oneWay = sessionAfter([...toReadings, "clear", "1880 -2.5", "1172 44.6"]);
    expect(changesOf(oneWay)).toMatchObject([
      {
        value: [
          [1880, -2.5],
          [1172, 44.6],
        ],
      },
    ]);
    const bothWays = sessionAfter(["1500 27", "back", "1500 26.6", "1172 44.3"], oneWay);
    expect(changesOf(bothWays)).toMatchObject([
      {
        value: [
          [1880, -2.5, "out"],
          [1500, 27, "out"],
          [1172, 44.6, "out"],
          [1500, 26.6, "back"],
          [1172, 44.3, "back"],
        ],
      },
    ]);
  });

  test("refuses a reading back at a pulse of which another day left the way open", () => {
    expect(refusalOf([...toReadings, "back"], "1766 8.4")).toMatch(/1765 us does not say/);
    expect(sessionAfter([...toReadings, "1766 8.4", "back", "1766 8.1"]).step).toBe("readings");
  });

  test("takes millimetres as throw, and as extension where the bench was read so", () => {
    const session = sessionAfter([...toReadings, "1700 23.5mm"]);
    expect(readingsOf(session)?.find(([pulse]) => pulse === 1700)?.[1]).toEqual({ kind: "throw", mm: 23.5 });
    const [flap = ""] = servosOf(corvane);
    const scale = sessionAfter(["yes", "", "", "", "", "clear", "1300 7.2mm"], startSession(corvane, [flap]));
    const wasExtension = (benchAt(corvane, flap).readings ?? []).some(
      ([, at]) => typeof at === "object" && at.kind === "extension",
    );
    expect(benchAt(scale.model, flap).readings?.[0]?.[1]).toEqual({
      kind: wasExtension ? "extension" : "throw",
      mm: 7.2,
    });
  });

  test("skip leaves a servo as it was; go returns to one", () => {
    const session = sessionAfter(["yes", "", "1861", "1878", "skip"]);
    expect([session.index, changesOf(session)]).toEqual([1, []]);
    expect(sessionAfter(["go flapLeft"], session)).toMatchObject({ index: 0, step: "level" });
    expect(refusalOf(["yes", ""], "go flap")).toMatch(/no servo "flap".*flapRight/);
  });

  test("records date, supply and temperature with what was measured, and with nothing else", () => {
    const session = sessionAfter(["yes", "2026-05-02 6V 21C", "1861", "skip", "1155"]);
    expect(changesOf(session)).toEqual([
      { address: "surfaces.flapRight.servo.bench.level", value: 1155 },
      {
        address: "surfaces.flapRight.servo.bench.measured",
        value: { on: "2026-05-02", supply: 6, temperature: 21 },
      },
    ]);
  });

  test("undo before the first answer is refused", () => {
    expect(refusalOf([], "undo")).toMatch(/nothing to take back/);
  });
});

describe("a journal", () => {
  const session = sessionAfter(["yes", "", "1861", "end"]);

  test("whose session stands in the model already says so", () => {
    expect(resumeSession(writeJournal(session), writtenModel(session))).toEqual({ written: true });
  });

  test("of benches that were changed since is not gone on with", () => {
    const other = writtenModel(sessionAfter(["yes", "", "1870", "end"]));
    expect(resumeSession(writeJournal(session), other)).toEqual({ problem: "modelChanged" });
  });

  test("of a model that was changed elsewhere is gone on with", () => {
    const renamed = { ...bramblehook, name: "Another" };
    expect(resumeSession(writeJournal(session), renamed)).toMatchObject({
      session: { answers: session.answers, model: { name: "Another" } },
    });
  });

  test.each(["", "{}", "nonsense", '{"format":"hingeline/bench-journal","version":2}'])(
    "%j is none",
    (text) => {
      expect(resumeSession(text, bramblehook)).toEqual({ problem: "notAJournal" });
    },
  );

  test("with an answer that is none is refused whole", () => {
    expect(resumeSession(`${writeJournal(session)}"banana"\n`, bramblehook)).toEqual({
      problem: "notAJournal",
    });
  });
});

test("after a reading everything is shown at once", () => {
  const shown = progressLines(sessionAfter([...toReadings, "1700 14.1"])).join("\n");
  for (const part of [
    /pulse +percent +deflection +slope +residual +out-back/,
    /entered +1700 +\+40\.0 +\+14\.1 +-0\.07\d\d +[+-]\d\.\d\d +-/,
    /flap at takeoff: \+14\.0 deg at 1697\.\d us, known to ±0\.6 deg/,
    /Enough/,
  ])
    expect(shown).toMatch(part);
});

test("that level was not read is told where level is entered and with the readings, not at the stops", () => {
  const bench = benchAt(bramblehook, "flapLeft");
  const short = withBench(bramblehook, "flapLeft", {
    ...bench,
    readings: before.filter(([us]) => us < 1700),
  });
  const answers = ["yes", "", "1859", "1880 contact", "1172 contact", "1650 17.5"];
  const told = answers.map((_, index) =>
    progressLines(sessionAfter(answers.slice(0, index + 1), startSession(short, all)))
      .join(" ")
      .includes("(level-not-measured)"),
  );
  expect(told).toEqual([false, false, true, false, false, true]);
});

test("one reading is spoken of as one", () => {
  const adviceAfter = (...readings: string[]) =>
    questionOf(sessionAfter([...toReadings, "clear", ...readings, "go flapLeft", "", "", ""]))?.advice.join(
      " ",
    );
  expect(adviceAfter("1700 14.1")).toMatch(/1 reading is in the model and stays, .* clear drops it\./);
  expect(adviceAfter("1700 14.1", "1500 27.2")).toMatch(
    /2 readings are in the model and stay, .* drops\s+them\./,
  );
});
