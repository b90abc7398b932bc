import { readFileSync } from "node:fs";
import { compile } from "@hingeline/core";
import { describe, expect, test } from "vitest";
import type { Files } from "../../../packages/dsl/src/load/files.ts";
import { findModel } from "../../../packages/dsl/src/load/find-model.ts";
import { loadModel } from "../../../packages/dsl/src/load/load-model.ts";
import { runModelFile } from "../../../packages/dsl/src/load/run-model-file.ts";
import { fakeIo, fixtures } from "../cli/fake-io.ts";

const files: Files = fakeIo();
const code = (path: string) => runModelFile(path, fixtures + path, files);

describe("a model", () => {
  const json: unknown = JSON.parse(readFileSync(`${fixtures}wrenfield.json`, "utf8"));

  test.each(["wrenfield.json", "wrenfield.ts", "plain.js"])("is the same from %s", async (path) => {
    expect(await loadModel(path, files)).toEqual({ model: json });
  });

  test("is the same from JSON on standard input", async () => {
    expect(await loadModel("-", fakeIo({ stdin: JSON.stringify(json) }))).toEqual({ model: json });
  });

  test("that says it is one and is malformed gives findings with addresses", async () => {
    const loaded = await loadModel("misspelt.json", files);
    expect("findings" in loaded && loaded.findings.map(({ severity, at }) => [severity, at])).toEqual([
      ["error", "radio"],
      ["error", "controls"],
      ["error", "moves"],
      ["error", "surface"],
    ]);
  });
});

describe("a model file", () => {
  test("in a path with spaces imports with .js, .ts and no suffix", async () => {
    expect(await code("path with spaces/model.ts")).toEqual({
      data: { format: "hingeline/model", name: "spaced", detents: ["up", "down"], step: 1 },
    });
  });

  test("is not touched by a tsconfig.json beside it, and may await", async () => {
    expect(await code("nested/model.ts")).toEqual({
      data: { format: "hingeline/model", pulses: [1500], types: ["function", "function"] },
    });
  });

  test("gets the very hingeline that compiles it", async () => {
    await code("version.ts");
    expect((globalThis as { compileOfModelFile?: unknown }).compileOfModelFile).toBe(compile);
  });
});

test("a byte order mark before JSON is skipped", async () => {
  expect("findings" in (await loadModel("bom.json", files))).toBe(true);
});

test.each([
  ["gone.ts", "not-found", "gone.ts does not exist."],
  ["gone.json", "not-found", "gone.json does not exist."],
  ["wrenfield.json/model.json", "not-found", "wrenfield.json/model.json does not exist."],
  [
    "wrenfield.txt",
    "unknown-kind",
    "wrenfield.txt is no model file; its name should end in .ts, .mts, .js, .mjs or .json, or be - for JSON on standard input.",
  ],
  ["empty.ts", "empty", "empty.ts is empty."],
  ["empty.json", "empty", "empty.json is empty."],
  ["not-text.json", "not-text", "not-text.json is not UTF-8 text."],
  [
    "trailing-comma.json",
    "bad-json",
    "trailing-comma.json is not JSON: line 4, column 1: expected a key in double quotes.",
  ],
  ["throws.ts", "throws", "throws.ts, line 6, threw an error: no such part."],
  ["throws-inside.ts", "throws", "throws.ts, line 6, threw an error: no such part."],
  ["throws-text.ts", "throws", "throws-text.ts threw an error: a text."],
  ["no-code.ts", "throws", "no-code.ts is no valid code: line 1, column 21: Unexpected token."],
  [
    "not-a-number.ts",
    "throws",
    "not-a-number.ts, line 3, threw an error: us(NaN): expected a finite number.",
  ],
  [
    "misspelt-import.ts",
    "throws",
    "misspelt-import.ts, line 3, threw an error: a function called there does not exist; is its name spelt as in the file it is imported from?",
  ],
  ["missing-import.ts", "throws", 'missing-import.ts imports "./gone.ts", which cannot be found.'],
  ["no-default.ts", "no-default", 'no-default.ts has no default export; write "export default model(...)".'],
  [
    "promise.ts",
    "bad-default",
    "The default export of promise.ts is a promise, not a model; export what model(...) returns.",
  ],
  [
    "function.ts",
    "bad-default",
    "The default export of function.ts is a function, not a model; export what model(...) returns.",
  ],
  [
    "list.ts",
    "bad-default",
    "The default export of list.ts is a list, not a model; export what model(...) returns.",
  ],
  [
    "list.json",
    "not-a-model",
    'list.json is no model: it does not say that it is one; a model has "format": "hingeline/model".',
  ],
  [
    "plan-not-model.json",
    "not-a-model",
    'plan-not-model.json is no model: it says that it is "hingeline/setup-plan"; a model has "format": "hingeline/model".',
  ],
])("loadModel(%j) is the problem %s", async (path, kind, message) => {
  expect(await loadModel(path, files)).toEqual({ problem: { kind, message } });
});

test("a folder that is named like a model is the problem folder", async () => {
  const readFile = async () => {
    throw Object.assign(new Error(), { code: "EISDIR" });
  };
  expect(await loadModel("a.ts", { ...files, readFile })).toEqual({
    problem: { kind: "folder", message: "a.ts is a folder, not a file." },
  });
});

test("a file of more than 16 mebibytes is the problem too-large", async () => {
  const readFile = async () => new Uint8Array(16 * 1024 * 1024 + 1);
  expect(await loadModel("a.json", { ...files, readFile })).toEqual({
    problem: {
      kind: "too-large",
      message: "a.json has 16777217 bytes; 16777216 is the most that is read.",
    },
  });
});

test("findModel takes a file's kind from its suffix, whatever its case, and a path as absolute as it is", () => {
  expect(findModel("a.JSON", "/models")).toEqual({ kind: "json", path: "a.JSON" });
  expect(findModel("a.mts", "/models")).toEqual({ kind: "code", path: "a.mts", fullPath: "/models/a.mts" });
  expect(findModel("/b/a.js", "/models")).toMatchObject({ fullPath: "/b/a.js" });
});
