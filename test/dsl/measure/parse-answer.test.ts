import { expect, test } from "vitest";
import { parseAnswer } from "../../../packages/dsl/src/measure/parse-answer.ts";

test.each([
  ["", { kind: "keep" }],
  ["   ", { kind: "keep" }],
  ["done", { kind: "word", word: "done" }],
  ["UNDO", { kind: "word", word: "undo" }],
  ["go rudder.upper", { kind: "go", servo: "rudder.upper" }],
  ["drop 1535", { kind: "drop", pulseUs: 1535 }],
  ["Go flapLeft", { kind: "go", servo: "flapLeft" }],
  ["DROP 1535", { kind: "drop", pulseUs: 1535 }],
  ["1765 8.6 Back", { kind: "reading", pulseUs: 1765, at: { deg: 8.6 }, way: "back" }],
  ["1880", { kind: "pulse", pulseUs: 1880 }],
  ["1880 us", { kind: "pulse", pulseUs: 1880 }],
  ["1880 contact", { kind: "pulse", pulseUs: 1880, reason: "contact" }],
  ["1880 deadcentre 0.31 A", { kind: "pulse", pulseUs: 1880, reason: "deadCentre", currentA: 0.31 }],
  ["1859 0.12A", { kind: "pulse", pulseUs: 1859, currentA: 0.12 }],
  ["1765 8.6", { kind: "reading", pulseUs: 1765, at: { deg: 8.6 } }],
  ["1765, -8.6", { kind: "reading", pulseUs: 1765, at: { deg: -8.6 } }],
  ["1765us 8.6 deg back", { kind: "reading", pulseUs: 1765, at: { deg: 8.6 }, way: "back" }],
  ["1765 14 mm", { kind: "reading", pulseUs: 1765, at: { mm: 14 } }],
  ["2026-05-02 6.0V 21C", { kind: "record", on: "2026-05-02", supplyV: 6, celsius: 21 }],
  ["21C", { kind: "record", celsius: 21 }],
])("parseAnswer(%j) is that answer", (line, answer) => {
  expect(parseAnswer(line)).toEqual(answer);
});

test.each([
  ["banana", /neither a pulse/],
  ["99", /from 100 to 5000/],
  ["5001 3", /from 100 to 5000/],
  ["1e3", /neither a pulse/],
  ["1765 130", /no deflection/],
  ["1765 8.6 sideways", /the way/],
  ["1880 glue", /no reason/],
  ["1880 contact contact", /no reason/],
  ["2026-02-30", /no date/],
  ["2026-05-02 -1V", /no date/],
  ["go", /which servo/],
  ["drop", /the pulse/],
  ["drop 1 2", /the pulse/],
])("parseAnswer(%j) says what is wrong with it", (line, sentence) => {
  const answer = parseAnswer(line);
  expect("problem" in answer && answer.problem).toMatch(sentence);
});
