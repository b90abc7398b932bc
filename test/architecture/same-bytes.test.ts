import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";

const core = resolve(import.meta.dirname, "../../packages/core/src");
const files = readdirSync(core, { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".ts"));
/**
 * What ECMA-262 21.3.2 leaves to the engine ("implementation-approximated"): all of Math but what IEEE 754 fixes. `**` only
 * of 2 is the same in all, and of 2 itself to a whole power.
 */
const rounded =
  /\bMath(?:\.(?:a?(?:sin|cos|tan)h?|atan2|cbrt|exp|expm1|hypot|log|log10|log1p|log2|pow)\b|\[|;)|=\s*Math\b(?!\.)|\*\*(?! 2\b)/;
const isRounded = (line: string) =>
  !/^\s*(?:\*|\/\/|\/\*)/.test(line) && rounded.test(line.replace(/\b2 \*\* \d+/g, ""));

test("the core uses nothing whose last digit is left to the engine: core/src/numeric has it instead", () => {
  const found = files.flatMap((file) =>
    readFileSync(join(core, file), "utf8")
      .split("\n")
      .filter(isRounded)
      .map((line) => `${file}: ${line.trim()}`),
  );
  expect(files.length).toBeGreaterThan(200);
  expect(found).toEqual([]);
});

test("every function of Math that an engine may round its own way is seen, under any name", () => {
  // What IEEE 754 or the language fixes to the bit.
  const fixed =
    "abs ceil clz32 f16round floor fround imul max min random round sign sqrt sumPrecise trunc".split(" ");
  const own = Object.getOwnPropertyNames(Math).filter((name) => name !== name.toUpperCase());
  for (const name of own) expect(isRounded(`const x = Math.${name}(1);`), name).toBe(!fixed.includes(name));
  expect(own.length).toBeGreaterThan(30);
  expect(["const { sin } = Math;", 'Math["sin"](1)', "x ** 3", "const m = Math;"].every(isRounded)).toBe(
    true,
  );
  expect(["x ** 2", "2 ** 32", "// Math.sin", "Math.PI / 2"].some(isRounded)).toBe(false);
});
