import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";

const core = resolve(import.meta.dirname, "../../packages/core/src");
const files = readdirSync(core, { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".ts"));
/** What engines round differently; `**` only of 2 is the same in all, and of 2 itself to a whole power. */
const rounded = /Math\.(?:sin|cos|pow|log1p)\b|\*\*(?! 2\b)/;

test("the core uses nothing whose last digit is left to the engine: numeric/sine.ts and numeric/power.ts instead", () => {
  const found = files.flatMap((file) =>
    readFileSync(join(core, file), "utf8")
      .split("\n")
      .filter((line) => !/^\s*(?:\*|\/\/|\/\*)/.test(line) && rounded.test(line.replace(/\b2 \*\* \d+/g, "")))
      .map((line) => `${file}: ${line.trim()}`),
  );
  expect(files.length).toBeGreaterThan(200);
  expect(found).toEqual([]);
});
