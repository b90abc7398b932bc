import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { codeFrame } from "../../../packages/dsl/src/render/code-frame.ts";
import { displayWidth } from "../../../packages/dsl/src/render/display-width.ts";

/** The frame of `text` in a line, which holds it once. */
const frame = (sourceLine: string, text: string, options = {}) => {
  const column = sourceLine.indexOf(text) + 1;
  return codeFrame(
    { file: "tug.ts", line: 23, column, endLine: 23, endColumn: column + text.length, sourceLine },
    options,
  );
};

describe("codeFrame", () => {
  test("shows file, line and column, the line, and carets below the stretch", () => {
    expect(frame("      level: us(1872), // cold", "1872")).toEqual([
      "  tug.ts:23:17",
      "  23 |       level: us(1872), // cold",
      "     |                 ^^^^",
    ]);
  });

  test("puts a remark behind the place", () => {
    expect(frame("down: stop()", "stop()", { remark: "(computed here)" })[0]).toBe(
      "  tug.ts:23:7 (computed here)",
    );
  });

  test("widens tabs to the next fourth column", () => {
    expect(frame("\t  \tlevel:\tus(1872)", "1872").slice(1)).toEqual([
      "  23 |         level:  us(1872)",
      "     |                    ^^^^",
    ]);
  });

  test("counts wide characters as two columns and accents as none", () => {
    expect(frame('"左フラップ e\u0301": us(1872)', "1872").slice(1)).toEqual([
      '  23 | "左フラップ e\u0301": us(1872)',
      "     |                    ^^^^",
    ]);
    expect(frame('label: "左フ", // x', '"左フ"')[2]).toBe("     |        ^^^^^^");
  });

  test("spells out what cannot be seen", () => {
    expect(frame('name: "a\u202eb", level: 3', "3").slice(1)).toEqual([
      '  23 | name: "a\\u{202E}b", level: 3',
      "     |                            ^",
    ]);
  });

  test("marks to the end of the line where the stretch goes on, and one column where it is empty", () => {
    const place = { file: "a.ts", line: 1, column: 7, endLine: 4, endColumn: 2, sourceLine: "bench: {  " };
    expect(codeFrame(place)[2]).toBe("    |       ^^");
    expect(codeFrame({ ...place, sourceLine: "", column: 1, endLine: 1, endColumn: 1 }).slice(1)).toEqual([
      "  1 |",
      "    | ^",
    ]);
  });

  test("cuts a long line on both sides of the carets", () => {
    const long = `${"a".repeat(100)} us(1872) ${"b".repeat(100)}`;
    const [, line = "", carets = ""] = frame(long, "1872");
    expect(line).toMatch(/^ {2}23 \| …a+ us\(1872\) b+…$/);
    expect(line.slice(carets.indexOf("^"), carets.lastIndexOf("^") + 1)).toBe("1872");
  });

  test("is never wider than asked, and its carets lie below the stretch, whatever the line", () => {
    const character = fc.constantFrom(..."ab (\t,\u00e9左e\u0301\u202e😀".split(""), "😀", "left");
    const line = fc.array(character, { maxLength: 120 }).map((parts) => parts.join(""));
    fc.assert(
      fc.property(line, line, fc.integer({ min: 40, max: 100 }), (before, after, columns) => {
        const lines = frame(`${before}1872${after}`, "1872", { columns });
        for (const one of lines) expect(displayWidth(one)).toBeLessThanOrEqual(columns);
        const [, shown = "", carets = ""] = lines;
        const at = displayWidth(shown.slice(0, shown.indexOf("1872")));
        expect([at, at + 4]).toEqual([carets.indexOf("^"), carets.length]);
      }),
      { numRuns: 300 },
    );
  });
});
