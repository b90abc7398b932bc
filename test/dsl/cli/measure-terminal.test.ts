import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { examples } from "../source/fixture-source.ts";

const bin = resolve(import.meta.dirname, "../../../packages/dsl/bin/hingeline.mjs");
const tug = readFileSync(join(examples, "bramblehook.ts"), "utf8");
let folder = "";
const sessions: ChildProcess[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "hingeline-"));
  writeFileSync(join(folder, "tug.ts"), tug);
});
afterEach(() => {
  for (const { pid, exitCode, signalCode } of sessions.splice(0))
    if (pid !== undefined && exitCode === null && signalCode === null) process.kill(-pid, "SIGKILL");
  rmSync(folder, { recursive: true });
});

/** `hingeline measure` behind a pseudo-terminal of 80 columns, made by script(1) of util-linux. */
function openTerminal() {
  const command = `stty cols 80 rows 24; exec '${process.execPath}' '${bin}' measure tug.ts`;
  // A group of its own, so that it can be killed whole.
  const child = spawn("script", ["-qec", command, "/dev/null"], { cwd: folder, detached: true });
  sessions.push(child);
  let shown = "";
  child.stdout.on("data", (chunk: Buffer) => {
    shown += chunk.toString();
  });
  const ended = new Promise<number | null>((end) => child.on("close", end));
  let seen = 0;
  return {
    shown: () => shown,
    ended,
    /** Waits until a question is open and answers it; one that is answered is shown again, with another mark. */
    answer: async (question: string, line: string) => {
      const open = `◆  ${question}`;
      const until = Date.now() + 50_000;
      while (!plain(shown).includes(open, seen)) {
        if (Date.now() > until) throw new Error(`no "${question}" in: ${plain(shown).slice(seen)}`);
        await new Promise((wait) => setTimeout(wait, 20));
      }
      seen = plain(shown).indexOf(open, seen) + open.length;
      child.stdin.write(`${line}\r`);
    },
    kill: async () => {
      if (child.pid !== undefined) process.kill(-child.pid, "SIGKILL");
      await ended;
    },
  };
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const controls = /\u001b\[[0-9;?]*[A-Za-z]|\r/g;
const plain = (shown: string) => shown.replace(controls, "");

// Needs the build, as bin.test.ts does.
test.runIf(process.platform === "linux")(
  "a session at a terminal of 80 columns, killed half-way and resumed, ends with only the new numbers changed",
  async () => {
    const first = openTerminal();
    await first.answer("Is all of this done?", "yes");
    await first.answer("Date, supply", "");
    await first.answer("Level: pulse", "1860 0.12A");
    await first.answer("Last good pulse up", "1879");
    await first.answer("Last good pulse down", "");
    await first.answer("Reading, on the way out", "1765 8.4");
    await first.answer("Reading, on the way out", "");
    await first.kill();
    expect(readFileSync(join(folder, "tug.ts"), "utf8")).toBe(tug);
    expect(existsSync(join(folder, "tug.ts.bench.jsonl"))).toBe(true);

    const second = openTerminal();
    await second.answer("Reading, on the way out", "1700 14.1");
    await second.answer("Reading, on the way out", "done");
    await second.answer("Level: pulse", "end");
    await second.answer("Write this into tug.ts?", "yes");
    expect(await second.ended).toBe(0);
    expect(readFileSync(join(folder, "tug.ts"), "utf8")).toBe(
      tug
        .replace('up: stopAt(us(1880), "contact"),', 'up: stopAt(us(1879), "contact"),')
        .replace("level: us(1859)", "level: us(1860)")
        .replace("[us(1765), deg(8.6)],", "[us(1765), deg(8.4)],\n            [us(1700), deg(14.1)],")
        .replace(/( +\[us\(1172\), deg\(44\.6\)\],\n +\],\n)/, "$1          freeCurrent: amps(0.12),\n"),
    );
    expect(existsSync(join(folder, "tug.ts.bench.jsonl"))).toBe(false);
    expect(second.shown()).toContain("Going on with tug.ts.bench.jsonl, 6 answers in.");
    expect(second.shown()).toContain("Enough:");

    const lines = plain(first.shown() + second.shown()).split("\n");
    expect(lines.filter((line) => [...line].length > 80 && !line.includes("█"))).toEqual([]);
  },
);
