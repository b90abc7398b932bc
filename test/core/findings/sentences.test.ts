import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FindingCode, makeFinding } from "../../../packages/core/src/findings/make-finding.ts";
import { type Facts, type Sentence, sentences } from "../../../packages/core/src/findings/sentences.ts";
import { evenly } from "../../support/evenly.ts";

const codes = Object.keys(sentences) as FindingCode[];
const primes = [11, 13, 17, 19, 23, 29, 31, 37, 41, 43];

/** A sentence filled with a prime of its own for each fact it asks for; `given` has its way. */
function fill(code: FindingCode, given: Facts = {}) {
  const asked = new Map<string, number | string>();
  const facts = new Proxy({} as Facts, {
    get: (_, key: string) => {
      const value = given[key] ?? asked.get(key) ?? primes[asked.size];
      if (value === undefined) throw new Error(`${code} asks for more facts than there are primes`);
      asked.set(key, value);
      return value;
    },
  });
  const { severity, message, remedy } = sentences[code] as unknown as Sentence<Facts>;
  return { severity, message: message(facts), remedy: remedy(facts), asked };
}

/** Sentences with two wordings, and what brings the other one. */
const otherWordings: readonly (readonly [code: FindingCode, given: Facts])[] = [
  ["moves-mismatch", { kind: "stick" }],
  ["no-response", { readings: 1 }],
  ["linkage-not-fitted", { pulses: 1 }],
  ["unknown-name", { nearest: "" }],
  ["linkage-misfit", { guesses: "" }],
  ["not-measured", { end: "stop" }],
  ["sides-differ", { at: 0, from: 47 }],
  ["sides-differ", { at: 0.5 }],
  ["sides-differ", { at: 1, to: 47 }],
];
const wordings = [...codes.map((code) => [code, {}] as const), ...otherWordings];

// What a sentence asks for only to choose its words.
const choosing = new Set(["sides-differ at", "moves-mismatch kind", "not-measured end"]);

describe("every sentence", () => {
  it.each(wordings)("states every fact that it asks for: %s %o", (code, given) => {
    const { message, remedy, asked } = fill(code, given);
    for (const [key, value] of asked)
      if (!choosing.has(`${code} ${key}`))
        expect(`${message} ${remedy}`).toMatch(new RegExp(`\\b${value}\\b`));
  });

  it.each(wordings)("says what is and what to do, each in whole sentences: %s %o", (code, given) => {
    const { severity, message, remedy } = fill(code, given);
    // A note may ask for nothing.
    const texts = severity === "note" && remedy === "" ? [message] : [message, remedy];
    for (const text of texts.map(String)) {
      // A text may be, begin or end with what it was given.
      expect(text).toMatch(/^["A-Z\d]/);
      expect(text).toMatch(/[.\d]$/);
      expect(text).not.toMatch(/ {2}|undefined|NaN|\[object| [.,;:]/);
    }
  });

  it.each(codes)("has one of three severities: %s", (code) => {
    expect(["error", "warning", "note"]).toContain(fill(code).severity);
  });
});

describe("a sentence with two wordings", () => {
  it("asks for what its kind of control needs", () => {
    expect(fill("moves-mismatch", { kind: "stick" }).remedy).toContain("-1");
    expect(fill("moves-mismatch", { kind: "selector" }).remedy).toContain("detent");
  });

  it("speaks of one reading and of several", () => {
    expect(fill("no-response", { readings: 1 }).message).toContain("1 reading and");
    expect(fill("no-response", { readings: 2 }).message).toContain("2 readings and");
  });

  it("adds what the readings say of the dimensions, where they say something", () => {
    expect(fill("linkage-misfit", { guesses: "the arm is 9 mm" }).message).toMatch(/: the arm is 9 mm\.$/);
    expect(fill("linkage-misfit", { guesses: "" }).message).toMatch(/doubt\.$/);
  });

  it("asks whether a name that is known was meant, where one is near", () => {
    expect(fill("unknown-name", { nearest: "flapLeft" }).remedy).toContain('mean "flapLeft"?');
    expect(fill("unknown-name", { nearest: "" }).remedy).not.toContain("mean");
  });

  it("asks for a reading past the last one, and for none past a stop", () => {
    expect(fill("not-measured", { end: "reading" }).remedy).toContain("reading");
    expect(fill("not-measured", { end: "stop" }).remedy).not.toContain("reading");
  });

  it("tells a difference on the way from one at either end", () => {
    const differ = (at: number) => fill("sides-differ", { at, from: "stowed", to: "landing", placeDeg: 47 });
    expect(differ(0.4).message).toMatch(/on the way from stowed to landing, near 47 deg/);
    expect(differ(0.4).remedy).toContain("47");
    expect(differ(0).message).toContain("at stowed;");
    expect(differ(1).message).toContain("at landing;");
    for (const end of [0, 1]) expect(differ(end).remedy).not.toContain("47");
  });
});

it("a limit that is passed is passed by the way from the limit to the pulse, on either side", () => {
  for (const [pulseUs, limitUs] of [
    [1890, 1868],
    [1100, 1122],
  ] as const) {
    const { message } = fill("limit-passed", { pulseUs, limitUs });
    expect(message).toContain(`needs ${pulseUs} us, 22 us past the safe ${limitUs} us`);
  }
});

describe("a number in a sentence", () => {
  const stated = (guardUs: number) => makeFinding("guard-thick", [], { guardUs }).message;

  it("has two decimals below 100 and one from there on, to either side of zero, and no trailing zeros", () => {
    expect(stated(12.346)).toContain(" 12.35 us");
    expect(stated(99.75)).toContain(" 99.75 us");
    expect(stated(123.46)).toContain(" 123.5 us");
    expect(stated(-123.46)).toContain(" -123.5 us");
    expect(stated(7.5)).toContain(" 7.5 us");
    expect(stated(200)).toContain(" 200 us");
  });

  it("is whole where it is a share of the torque", () => {
    const { message } = makeFinding("load-high", [], {
      servo: "it",
      what: "level",
      sharePercent: 87.6,
      airspeedMps: 30,
      limitMps: 20,
      momentNm: 1,
    });
    expect(message).toContain("about 88 %");
  });

  it("is within half of its last place of what it stands for", () => {
    fc.assert(
      fc.property(evenly(-2500, 2500), (value) => {
        const [, text = "none"] = / guard of (\S+) us/i.exec(stated(value)) ?? [];
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(Math.abs(value) < 100 ? 0.00501 : 0.0501);
      }),
    );
  });
});

describe("makeFinding", () => {
  it("keeps the numbers among the facts, the address as text, and the texts of its sentence", () => {
    const finding = makeFinding("stop-pushed", ["surfaces", "flap", "servo"], {
      stop: "down",
      stopAmps: 0.9,
      freeAmps: 0.2,
    });
    expect(finding).toMatchObject({
      code: "stop-pushed",
      severity: "warning",
      at: "surfaces.flap.servo",
      numbers: { stopAmps: 0.9, freeAmps: 0.2 },
    });
    expect(Object.keys(finding.numbers)).toHaveLength(2);
    expect(finding.message).toContain("0.9 A");
    expect(finding.do).toContain("Approach the stop");
  });
});
