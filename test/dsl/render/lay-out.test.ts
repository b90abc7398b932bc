import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { alignTable } from "../../../packages/dsl/src/render/align-table.ts";
import { decimalsShown } from "../../../packages/dsl/src/render/decimals-shown.ts";
import { displayWidth, padEnd, padStart } from "../../../packages/dsl/src/render/display-width.ts";
import { numbersOf, signed, withUnit } from "../../../packages/dsl/src/render/numbers.ts";
import { visibleText } from "../../../packages/dsl/src/render/visible-text.ts";
import { hang, wrapText } from "../../../packages/dsl/src/render/wrap-text.ts";

describe("visibleText", () => {
  test("leaves letters, accents, signs and spaces as they are", () => {
    expect(visibleText("Klappe links, aileron gauche é e\u0301, 左翼, 27°")).toBe(
      "Klappe links, aileron gauche é e\u0301, 左翼, 27°",
    );
  });

  test.each([
    ["\u0000", "\\u{0000}"],
    ["\n", "\\u{000A}"],
    ["\u001b", "\\u{001B}"],
    ["\u0085", "\\u{0085}"],
    ["\u200b", "\\u{200B}"],
    ["\u200f", "\\u{200F}"],
    ["\u2028", "\\u{2028}"],
    ["\u202e", "\\u{202E}"],
    ["\u2066", "\\u{2066}"],
    ["\ufeff", "\\u{FEFF}"],
    ["\ud800", "\\u{D800}"],
    ["\u{e0041}", "\\u{E0041}"],
  ])("%j is shown as %s", (character, shown) => {
    expect(visibleText(`a${character}b`)).toBe(`a${shown}b`);
  });
});

test("displayWidth counts no column for a combining accent and two for a wide character", () => {
  expect(["", "abc", "é", "e\u0301", "左翼", "한", "ｆ", "🛩a", "°"].map(displayWidth)).toEqual([
    0, 3, 1, 1, 4, 2, 2, 3, 1,
  ]);
});

test("padEnd and padStart fill to a width and cut nothing", () => {
  expect([padEnd("左", 4), padStart("左", 4), padEnd("abc", 2)]).toEqual(["左  ", "  左", "abc"]);
});

describe("wrapText", () => {
  const words = fc.string({ unit: fc.constantFrom("a", "b", "左", " "), maxLength: 100 });

  test("keeps within the columns and loses no letter", () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 2, max: 40 }), (text, columns) => {
        const lines = wrapText(text, columns);
        expect(Math.max(...lines.map(displayWidth))).toBeLessThanOrEqual(columns);
        expect(lines.join("").replaceAll(" ", "")).toBe(text.replaceAll(" ", ""));
      }),
    );
  });

  test("breaks at spaces, and a word only where it has no room in a line", () => {
    expect(wrapText("two words", 5)).toEqual(["two", "words"]);
    expect(wrapText("a longword", 4)).toEqual(["a", "long", "word"]);
  });

  test("never parts a number from its unit", () => {
    expect(wrapText("the guard is 10 us wide", 15)).toEqual(["the guard is", "10 us wide"]);
    expect(wrapText("channel 7 usually", 10)).toEqual(["channel 7", "usually"]);
    expect(wrapText("adds -42.5 share", 12)).toEqual(["adds", "-42.5 share"]);
    expect(wrapText("Load about 0.40 of 2.00 N m (20 %)", 25)).toEqual([
      "Load about 0.40 of",
      "2.00 N m (20 %)",
    ]);
    expect(wrapText("a push of 12 N and more", 14)).toEqual(["a push of 12 N", "and more"]);
    for (const unit of ["A", "V", "K", "ms", "m/s"])
      expect(wrapText(`it was 0.31 ${unit}`, 11)).toEqual(["it was", `0.31 ${unit}`]);
  });

  test("hang sets later lines under the first", () => {
    expect(hang("- ", "two words", 7)).toEqual(["- two", "  words"]);
  });
});

describe("alignTable", () => {
  const column = { head: "ENTER", unit: "%", cells: ["+72", "-53"] };

  test("sets numbers to the right under head and unit", () => {
    expect(alignTable("Position", ["up", "down"], [column], 40)).toEqual([
      "  Position      ENTER",
      "                    %",
      "  up              +72",
      "  down            -53",
    ]);
  });

  test("moves a label without room above its numbers, which stay in their columns", () => {
    expect(alignTable("Position", ["up", "a name that is rather long"], [column], 24)).toEqual([
      "  Position         ENTER",
      "                       %",
      "  up                 +72",
      "  a name that is rather",
      "  long",
      "                     -53",
    ]);
  });
});

test("signed gives every number but zero its sign, and never -0", () => {
  expect([signed(13.91, 1), signed(-0.07, 2), signed(0, 1), signed(0.04, 1), signed(-0.04, 1)]).toEqual([
    "+13.9",
    "-0.07",
    "0.0",
    "0.0",
    "0.0",
  ]);
});

test("percents have the decimals of the radio's step, exact ones have one more", () => {
  const { percent, exactPercent } = numbersOf({ stepPercent: 0.25, endPoints: "clamp" });
  expect([percent(72.5), exactPercent(72.5125)]).toEqual(["+72.50", "+72.513"]);
  expect(numbersOf({ stepPercent: 1, endPoints: "clamp" }).percent(-53)).toBe("-53");
});

test("what is typed is a percent where limits clamp; where they scale a position is a share and a limit a percent", () => {
  const [clamping, scaling] = (["clamp", "scale"] as const).map((endPoints) =>
    numbersOf({ stepPercent: 0.5, endPoints }),
  );
  if (clamping === undefined || scaling === undefined) throw new Error("no numbers");
  const position = { percent: -53, sharePercent: 12.5 };
  const shown = [clamping, scaling].map((numbers) => [
    withUnit(numbers.typed(position), "position", numbers),
    withUnit(numbers.percent(-63), "limit", numbers),
  ]);
  expect(shown).toEqual([
    ["-53.0 %", "-63.0 %"],
    ["+12.5 share", "-63.0 %"],
  ]);
});

test("decimalsShown shows what was stated, one decimal at least and two at most", () => {
  expect([[], [14], [14.5, 2.25], [1 / 3]].map(decimalsShown)).toEqual([1, 1, 2, 2]);
});
