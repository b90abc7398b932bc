import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Block, blocksOf, fileOf, pageAt, root } from "./pages.ts";

const steps = blocksOf(pageAt("docs/adding.md"));
const written = steps.flatMap((step) => fileOf(step) ?? []);
/** Tests of the project that must hold with the examples in it: each kind of finding, each function of a model file, the layers. */
const held = [
  "test/core/compile/findings.test.ts",
  "test/core/model/types-match.test.ts",
  "test/dsl/source/read-model.test.ts",
  "test/architecture",
];
let tree = "";

beforeAll(() => {
  tree = mkdtempSync(join(tmpdir(), "hingeline-adding-"));
  for (const name of [
    "biome.json",
    ".gitignore",
    "tsconfig.json",
    "tsconfig.base.json",
    "vitest.config.ts",
    "package.json",
  ])
    cpSync(join(root, name), join(tree, name));
  cpSync(join(root, "test"), join(tree, "test"), { recursive: true });
  symlinkSync(join(root, "node_modules"), join(tree, "node_modules"));
  for (const name of ["core", "dsl", "examples"]) {
    const [from, to] = [join(root, "packages", name), join(tree, "packages", name)];
    cpSync(join(from, "src"), join(to, "src"), { recursive: true });
    cpSync(join(from, "package.json"), join(to, "package.json"));
    symlinkSync(join(from, "node_modules"), join(to, "node_modules"));
  }
});
afterAll(() => rmSync(tree, { recursive: true, force: true }));

describe("the steps of docs/adding.md, in their order, on a copy of the sources", () => {
  test("fit the sources as they are", () => {
    for (const step of steps) apply(step);
    expect(written).toHaveLength(4);
  });

  test("type-check", () => {
    const config = {
      extends: "./tsconfig.json",
      include: ["packages/*/src", ...written, "test/core/compile/findings.test.ts"],
    };
    writeFileSync(join(tree, "tsconfig.added.json"), JSON.stringify(config));
    expect(node("typescript/bin/tsc", "-p", "tsconfig.added.json", "--pretty", "false")).toEqual({
      status: 0,
      output: "",
    });
  }, 240_000);

  test("are written as the linter wants it", () => {
    const changed = [...new Set(steps.map((step) => fileOf(step) ?? changedBy(step)))];
    const { status, output } = node("@biomejs/biome/bin/biome", "check", "--colors=off", ...changed);
    expect(`${status} ${output}`).toMatch(/^0 /);
  });

  test("pass their own tests, and those of the project that look at every kind", () => {
    const tests = written.filter((name) => name.startsWith("test/"));
    const { status, output } = node("vitest/vitest.mjs", "run", ...tests, ...held);
    expect(`${status} ${output}`).toMatch(/^0 /);
    for (const name of tests) expect(output).toContain(name);
  }, 240_000);
});

/** Writes a new file, or replaces the lines that a change takes away, with those around them, where they stand once. */
function apply(step: Block): void {
  const [, ...lines] = step.code.trimEnd().split("\n");
  const created = fileOf(step);
  if (created !== undefined) {
    writeFileSync(join(tree, created), `${lines.join("\n")}\n`, { flag: "wx" });
    return;
  }
  const changed = changedBy(step);
  const side = (other: string) =>
    lines.flatMap((line) => (line.startsWith(other) ? [] : `${line.slice(1)}\n`)).join("");
  const parts = readFileSync(join(tree, changed), "utf8").split(side("+"));
  expect(parts, `${changed} has these lines once:\n${side("+")}`).toHaveLength(2);
  writeFileSync(join(tree, changed), parts.join(side("-")));
}

/** The file that a change is made in: `--- packages/core/src/index.ts`. */
function changedBy({ code }: Block): string {
  return /^--- (\S+)/.exec(code)?.[1] ?? "";
}

function node(script: string, ...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(tree, "node_modules", script), ...args],
    {
      cwd: tree,
      encoding: "utf8",
      env: { ...process.env, TEST_BUILD: "", VITEST_JSON: "" },
    },
  );
  return { status, output: stdout + stderr };
}
