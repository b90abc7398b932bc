import type { Cause, DeflectionVerdict, PulseVerdict } from "@hingeline/core";
import { describe, expect, test } from "vitest";
import {
  causesIntro,
  farTexts,
  resultText,
  unexplainedText,
} from "../../../packages/dsl/src/render/verify-words.ts";

const setting = { kind: "setting", control: "flap", detent: "landing", surface: "flap" } as const;
const deflection = (channel: number): DeflectionVerdict => ({
  quantity: "deflection",
  channel,
  place: setting,
  expectedDeg: 30,
  withinDeg: 1,
  readDeg: 35,
  byDeg: 5,
  outcome: "differs",
});
const pulse = (byUs: number, over: Partial<PulseVerdict> = {}): PulseVerdict => ({
  quantity: "pulse",
  channel: 5,
  place: setting,
  expectedUs: [1230, 1230],
  withinUs: 3,
  readUs: 1230 + byUs,
  byUs,
  outcome: "differs",
  ...over,
});
const cause = (channels: readonly number[], all: boolean): Cause => ({
  kind: "minusSign",
  channels,
  all,
  message: "A sign.",
  do: "Enter it.",
  numbers: {},
});

describe("a channel that differs", () => {
  test("without a cause is named, alone or beside those that have one", () => {
    expect(unexplainedText([cause([5], false)], [pulse(20), deflection(7)])).toMatch(
      /^Channel 7: no known cause\./,
    );
    expect(unexplainedText([], [pulse(20), deflection(7)])).toMatch(/^Channels 5, 7: no known cause\./);
  });

  test("and that a cause explains is not", () => {
    expect(unexplainedText([cause([5], false)], [pulse(20)])).toBeUndefined();
    expect(unexplainedText([cause([5, 7], true)], [pulse(20), deflection(7)])).toBeUndefined();
    expect(unexplainedText([], [pulse(0, { outcome: "agrees" })])).toBeUndefined();
    expect(causesIntro([cause([5], false)], [pulse(20)])).toBe(
      "No single cause gives all the readings. What would give those of one channel alone:",
    );
  });
});

test("a pulse far from what it should be is called out from 100 us on, where it is not unsafe already", () => {
  expect(farTexts([pulse(99), pulse(-99), pulse(270, { unsafe: true }), deflection(5)])).toEqual([]);
  expect(farTexts([pulse(-270)])).toEqual([
    "Channel 5, flap at landing: 960.0 us is 270.0 us from what it should be. Not a small slip: do not connect it, and do not fly, until it agrees.",
  ]);
});

test("the result says what to do about what cannot be told, where there is any", () => {
  const result = (...verdicts: readonly PulseVerdict[]) =>
    resultText({
      revision: { ofPlan: "0123abcd", measured: "0123abcd", same: true },
      verdicts,
      causes: [],
      strays: [],
      passed: true,
    });
  expect(result(pulse(0, { outcome: "agrees" }))).toBe(
    "PASSED: of 1 lines 1 agreed, 0 differed, 0 cannot be told, 0 not measured",
  );
  expect(result(pulse(0, { outcome: "agrees" }), pulse(3, { outcome: "cannotTell" }))).toBe(
    "PASSED: of 2 lines 1 agreed, 0 differed, 1 cannot be told (read again with a finer meter, stated under instruments), 0 not measured",
  );
});
