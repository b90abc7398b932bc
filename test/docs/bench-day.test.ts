import { spawnSync } from "node:child_process";
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import type { AsBuilt, SetupPlan } from "@hingeline/core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { blocksOf, pageAt, root } from "./pages.ts";

// `npm test` builds first; this needs the build.

const blocks = blocksOf(pageAt("docs/bench-day.md"));
const commands = blocks.filter(({ language }) => language === "sh");
let folder = "";
const file = (name: string) => join(folder, name);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "hingeline-day-"));
  // What npx would run in a project that has hingeline.
  const shim = `#!/bin/sh\nshift\nexec "${process.execPath}" "${join(root, "packages/dsl/bin/hingeline.mjs")}" "$@"\n`;
  writeFileSync(file("npx"), shim);
  chmodSync(file("npx"), 0o755);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe.skipIf(process.platform === "win32")("the bench day, command by command in one folder", () => {
  test.each(commands.map((block) => [block.code.trim(), block] as const))("%s", (_, block) => {
    const { status, stdout, stderr } = run(prepared(block));
    expect({ status, stderr }).toEqual({ status: 0, stderr: expect.not.stringContaining("hingeline: ") });
    expect(stdout + stderr).not.toMatch(/\bundefined\b|\bNaN\b/);
    if (block.remark?.startsWith("filled in: "))
      expect(stdout).toMatch(
        /PASSED[^:]*: of \d+ lines \d+ agreed, 0 differed,\s+0 cannot be told, 0 not\s+measured/,
      );
  });

  test("left a plan without warnings", () => {
    expect(planOf().findings.filter(({ severity }) => severity !== "note")).toEqual([]);
  });

  test("shows that the wish changed afterwards was not entered: the readings no longer verify", () => {
    const { status, stdout } = run("npx hingeline verify tug.ts asbuilt.json");
    expect(status).toBe(1);
    expect(stdout).toContain("another revision of the plan");
  });
});

test("the page uses every command that a bench day needs", () => {
  const used = new Set(
    commands.flatMap(({ code }) => [...code.matchAll(/npx hingeline (\w+)/g)].map(([, name]) => name)),
  );
  const needed = [
    "init",
    "radio",
    "measure",
    "check",
    "doubt",
    "plan",
    "sheet",
    "verify",
    "diff",
    "swap",
    "port",
  ];
  expect(needed.filter((name) => !used.has(name))).toEqual([]);
});

/** The commands of a block, after what its remark says has been done by hand. */
function prepared(block: (typeof blocks)[number]): string {
  const remark = block.remark ?? "";
  if (remark === "typed below") {
    const typed = blocks[blocks.indexOf(block) + 1]?.code ?? "";
    writeFileSync(file("typed.txt"), typed);
    return `${block.code.trim()} --script typed.txt`;
  }
  if (remark.startsWith("filled in: ")) fillIn(file(remark.slice("filled in: ".length)));
  const change = /^changed: (.+) to (.+)$/.exec(remark);
  if (change !== null) {
    const [, from = "", to = ""] = change;
    const before = readFileSync(file("tug.ts"), "utf8");
    expect(before).toContain(from);
    writeFileSync(file("tug.ts"), before.replace(from, to));
  }
  return block.code;
}

function run(code: string) {
  const env = { ...process.env, NO_COLOR: "1", PATH: `${folder}${delimiter}${process.env.PATH ?? ""}` };
  return spawnSync("bash", ["-euo", "pipefail", "-c", code], { cwd: folder, env, encoding: "utf8" });
}

function planOf(): SetupPlan {
  return JSON.parse(readFileSync(file("tug.plan.json"), "utf8")) as SetupPlan;
}

/** Two people who enter the plan without a slip and read it back with instruments that show what is there. */
function fillIn(path: string): void {
  const { channels } = planOf();
  const template = JSON.parse(readFileSync(path, "utf8")) as AsBuilt;
  const built = template.channels.map((one) => {
    const planned = channels.find(({ channel }) => channel === one.channel);
    if (planned === undefined) throw new Error(`the plan has no channel ${one.channel}`);
    const { limits, neutral, failsafe, settings } = planned;
    return {
      ...one,
      limitLowUs: limits.low.pulseUs,
      limitHighUs: limits.high.pulseUs,
      sweptLowUs: Math.min(...settings.map(({ enter }) => enter.pulseUs)),
      sweptHighUs: Math.max(...settings.map(({ enter }) => enter.pulseUs)),
      neutralUs: neutral.pulseUs,
      failsafeUs: failsafe.pulseUs,
      powerUpUs: "none",
      settings: settings.map(({ control, detent, surface, enter, gives }) => ({
        control,
        detent,
        surface,
        pulseUs: enter.pulseUs,
        deflectionDeg: gives?.deflectionDeg,
      })),
    };
  });
  const filled = {
    ...template,
    by: "A. Builder",
    checkedBy: "B. Checker",
    date: "2026-05-02",
    channels: built,
  };
  writeFileSync(path, JSON.stringify(filled));
}
