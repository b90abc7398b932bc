import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Io } from "../../../packages/dsl/src/cli/io.ts";
import { nodeFiles } from "../../../packages/dsl/src/cli/node-files.ts";
import { rewriteFile, writeNewFile, writeOut } from "../../../packages/dsl/src/cli/write-out.ts";
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

describe("rewriteFile on a real disk", () => {
  const change = { before: "\ufeffold\r\n", after: "\ufeffnew\r\n" };
  const read = (name: string) => readFileSync(inFolder(name), "utf8");

  test("writes to where a link leads, keeps link and permissions, leaves nothing beside them", async () => {
    mkdirSync(inFolder("models"));
    writeFileSync(inFolder("models/tug.ts"), change.before, { mode: 0o640 });
    symlinkSync("models/tug.ts", inFolder("tug.ts"));
    expect(await rewriteFile("tug.ts", change, io)).toBeUndefined();
    expect(read("models/tug.ts")).toBe(change.after);
    expect(statSync(inFolder("models/tug.ts")).mode & 0o777).toBe(0o640);
    expect([readdirSync(folder), readdirSync(inFolder("models"))]).toEqual([
      ["models", "tug.ts"],
      ["tug.ts"],
    ]);
  });

  test("refuses a file that was changed, removed or made read-only meanwhile", async () => {
    expect(await rewriteFile("tug.ts", change, io)).toBe("tug.ts is no longer there; nothing was written.");
    expect(readdirSync(folder)).toEqual([]);
    writeFileSync(inFolder("tug.ts"), "old\r\n");
    expect(await rewriteFile("tug.ts", change, io)).toBe(
      "tug.ts was changed by something else meanwhile; nothing was written. Start again from what it says now.",
    );
    expect([read("tug.ts"), readdirSync(folder)]).toEqual(["old\r\n", ["tug.ts"]]);
    writeFileSync(inFolder("tug.ts"), change.before);
    chmodSync(inFolder("tug.ts"), 0o444);
    expect(await rewriteFile("tug.ts", change, io)).toBe("tug.ts is read-only, and is left alone.");
    expect([read("tug.ts"), readdirSync(folder)]).toEqual([change.before, ["tug.ts"]]);
  });
});

describe("a rewrite that stops between any two calls", () => {
  /** An io over these files that does `calls` calls and then nothing more, the last one half. */
  function crashing(disk: Map<string, string>, calls: number) {
    let left = calls;
    const call = <T>(whole: () => T, half: () => void = () => {}): Promise<T> => {
      left -= 1;
      if (left > 0) return Promise.resolve(whole());
      if (left === 0) half();
      return new Promise(() => {});
    };
    const fake = fakeIo({ disk });
    const out: Io["out"] = {
      find: (path) => call(() => ({ kind: "file", path })),
      writeNew: (path, text) =>
        call(
          () => void disk.set(path, text),
          () => void disk.set(path, text.slice(0, text.length / 2)),
        ),
      rename: (from, to) =>
        call(() => {
          disk.set(to, disk.get(from) ?? "");
          disk.delete(from);
        }),
      remove: (path) => call(() => void disk.delete(path)),
    };
    return {
      ...fake,
      cwd: "/made-up",
      out,
      readFile: (path: string) => call(() => Buffer.from(disk.get(path) ?? "")),
    };
  }

  test.each([1, 2, 3, 4, 5])("at call %i leaves the old or the new file, whole", async (calls) => {
    const disk = new Map([["/made-up/tug.ts", "the old text"]]);
    const change = { before: "the old text", after: "the new text" };
    const done = rewriteFile("tug.ts", change, crashing(disk, calls)).then(() => "done");
    const outcome = await Promise.race([done, new Promise((end) => setTimeout(() => end("stopped"), 20))]);
    expect(outcome).toBe(calls === 5 ? "done" : "stopped");
    expect(disk.get("/made-up/tug.ts")).toBe(calls === 5 ? "the new text" : "the old text");
  });

  test.each(["writeNew", "rename"] as const)(
    "fails at %s with the old file and nothing beside it",
    async (call) => {
      const disk = new Map([["/made-up/tug.ts", "old"]]);
      const broken = { ...fakeIo({ disk, broken: { call, code: "ENOSPC" } }), cwd: "/made-up" };
      expect(await rewriteFile("tug.ts", { before: "old", after: "new" }, broken)).toBe(
        "tug.ts cannot be written: the disk is full.",
      );
      expect([...disk]).toEqual([["/made-up/tug.ts", "old"]]);
    },
  );
});
