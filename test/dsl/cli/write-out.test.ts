import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Io } from "../../../packages/dsl/src/cli/io.ts";
import { nodeFiles } from "../../../packages/dsl/src/cli/node-files.ts";
import { writeNewFile, writeOut } from "../../../packages/dsl/src/cli/write-out.ts";
import { fakeIo } from "./fake-io.ts";

let folder = "";
let io: Io;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "hingeline-"));
  io = { ...fakeIo(), cwd: folder, out: nodeFiles };
});
afterEach(() => rmSync(folder, { recursive: true }));

const inFolder = (name: string) => join(folder, name);

describe("writeOut on a real disk", () => {
  test("writes a new file and replaces an old one, nothing beside them", async () => {
    expect(await writeOut("plan.json", "one", io)).toBeUndefined();
    expect(await writeOut("plan.json", "two", io)).toBeUndefined();
    expect([readdirSync(folder), readFileSync(inFolder("plan.json"), "utf8")]).toEqual([
      ["plan.json"],
      "two",
    ]);
  });

  test("writes to where a link leads and leaves the link", async () => {
    writeFileSync(inFolder("plan.json"), "one");
    symlinkSync("plan.json", inFolder("link.json"));
    expect(await writeOut("link.json", "two", io)).toBeUndefined();
    expect(readFileSync(inFolder("plan.json"), "utf8")).toBe("two");
    expect(readdirSync(folder)).toEqual(["link.json", "plan.json"]);
  });

  test("refuses a folder, a link to a folder, and a folder that is not there", async () => {
    mkdirSync(inFolder("plans"));
    symlinkSync("plans", inFolder("link"));
    expect(await writeOut("plans", "one", io)).toBe("plans is a folder; name a file in it.");
    expect(await writeOut("link", "one", io)).toBe("link is a folder; name a file in it.");
    expect(await writeOut("gone/plan.json", "one", io)).toBe(
      "gone/plan.json cannot be written: its folder does not exist.",
    );
    expect([readdirSync(folder), readdirSync(inFolder("plans"))]).toEqual([["link", "plans"], []]);
  });

  test("takes a name as long as a disk allows", async () => {
    const name = `${"a".repeat(240)}.json`;
    expect(await writeOut(name, "one", io)).toBeUndefined();
    expect(readdirSync(folder)).toEqual([name]);
  });
});

test("writeNewFile leaves a file that exists as it is", async () => {
  expect(await writeNewFile("mine.ts", "one", io)).toBeUndefined();
  expect(await writeNewFile("mine.ts", "two", io)).toBe("mine.ts exists already, and is left as it is.");
  expect(readFileSync(inFolder("mine.ts"), "utf8")).toBe("one");
});
