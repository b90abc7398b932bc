import { spawnSync } from "node:child_process";
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";

const root = resolve(import.meta.dirname, "../..");
const ci = join(root, "packages/examples/ci");
const slatewing = readFileSync(join(root, "packages/examples/src/slatewing.ts"), "utf8");
let folder = "";

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "hingeline-"));
  mkdirSync(join(folder, "models"));
  mkdirSync(join(folder, "node_modules/.bin"), { recursive: true });
  // As an installation leaves it: npx looks here first and never asks a registry.
  symlinkSync(join(root, "packages/dsl/bin/hingeline.mjs"), join(folder, "node_modules/.bin/hingeline"));
  writeFileSync(join(folder, "package.json"), "{}");
  writeFileSync(join(folder, "models/my delta.ts"), slatewing);
  git("init", "--quiet");
  sh("npx hingeline plan 'models/my delta.ts' --format json --out 'models/my delta.plan.json'");
});
beforeEach(() => writeFileSync(join(folder, "models/my delta.ts"), slatewing));
afterAll(() => rmSync(folder, { recursive: true }));

function git(...args: readonly string[]): void {
  expect(spawnSync("git", args, { cwd: folder }).status).toBe(0);
}

/** Runs a script as the forge does: bash, ended by the first command that fails. */
function sh(script: string) {
  const { status, stdout, stderr } = spawnSync("bash", ["-e", "-o", "pipefail", "-c", script], {
    cwd: folder,
    encoding: "utf8",
    env: { ...process.env, npm_config_offline: "true" },
  });
  return { status, output: stdout + stderr };
}

/** The script of a step of the workflow. */
function step(name: string): string {
  const workflow = readFileSync(join(ci, "check-models.yml"), "utf8");
  const [, script = ""] =
    new RegExp(`- name: ${name}\\n +run: \\|\\n((?: {10}.*\\n|\\n)+)`).exec(workflow) ?? [];
  expect(script).toContain("npx hingeline");
  return script.replaceAll(/^ {10}/gm, "");
}

const tooFar = slatewing.replace(/pitch: \{ elevons: \[deg\(-14\)/, "pitch: { elevons: [deg(-34)");

// Needs the build, as the command's own tests do.
describe("the workflow for a forge", () => {
  test("logs the findings of every model, and passes with the plan that was committed", () => {
    expect(sh(step("Find"))).toMatchObject({ status: 0 });
    expect(readdirSync(join(folder, "sarif"))).toEqual(["my delta.sarif"]);
    const log = JSON.parse(readFileSync(join(folder, "sarif/my delta.sarif"), "utf8")) as { version: string };
    expect(log.version).toBe("2.1.0");
    const { status, output } = sh(step("Judge"));
    expect(output).toContain("is up to date.");
    expect(status).toBe(0);
  });

  test("logs a model with an error too, and fails", () => {
    expect(tooFar).not.toBe(slatewing);
    writeFileSync(join(folder, "models/my delta.ts"), tooFar);
    expect(sh(step("Find"))).toMatchObject({ status: 0 });
    expect(readFileSync(join(folder, "sarif/my delta.sarif"), "utf8")).toContain('"level":"error"');
    const { status, output } = sh(step("Judge"));
    expect(output).toContain("STALE");
    expect(status).toBe(1);
  });

  test("stops at a model that cannot be read", () => {
    writeFileSync(join(folder, "models/my delta.ts"), "export default 3;\n");
    expect(sh(step("Find")).status).not.toBe(0);
  });
});

describe("the pre-commit hook", () => {
  beforeAll(() => {
    cpSync(join(ci, "pre-commit"), join(folder, ".git/hooks/pre-commit"));
  });
  const commit = (text: string) => {
    writeFileSync(join(folder, "models/my delta.ts"), text);
    git("add", "models");
    return sh("git -c user.name=me -c user.email=me@example.org commit --quiet --message test");
  };

  test("keeps a model with a stale plan back, and says why", () => {
    const { status, output } = commit(slatewing.replace("Slatewing 13", "Slatewing 14"));
    expect(output).toContain("models/my delta.ts");
    expect(output).toContain("STALE");
    expect(status).toBe(1);
  });

  test("lets a model and its plan through, in silence", () => {
    expect(commit(slatewing)).toEqual({ status: 0, output: "" });
  });
});
