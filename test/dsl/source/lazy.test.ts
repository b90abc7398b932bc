import { readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { expect, test } from "vitest";

const src = resolve(import.meta.dirname, "../../../packages/dsl/src");

/** Files that are loaded with a file, types aside; `import()` loads later. */
function loadedWith(file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  for (const [, from = ""] of readFileSync(file, "utf8").matchAll(
    /^(?:import|export) (?!type )[^;]*?from "([^"]+)";/gms,
  )) {
    if (from.startsWith(".")) loadedWith(resolve(dirname(file), from), seen);
    else seen.add(from);
  }
  return seen;
}

test("no command loads the parser of TypeScript before it is needed", () => {
  for (const entry of ["index.ts", "render/index.ts", "cli/plan-command.ts", "cli/check-command.ts"]) {
    const loaded = [...loadedWith(join(src, entry))].map((file) =>
      file.startsWith("/") ? relative(src, file) : file,
    );
    expect(loaded).toContain("@hingeline/core");
    expect(loaded.filter((file) => file === "ts-morph" || file.startsWith("source/"))).toEqual([]);
  }
  expect([...loadedWith(join(src, "source/index.ts"))]).toContain("ts-morph");
});

test("no command loads the prompt library before it asks its first question", () => {
  for (const entry of ["bin.ts", "cli/measure-command.ts", "cli/terminal-prompt.ts"])
    expect([...loadedWith(join(src, entry))]).not.toContain("@clack/prompts");
  expect(readFileSync(join(src, "cli/terminal-prompt.ts"), "utf8")).toContain('import("@clack/prompts")');
});

test("only source loads ts-morph", () => {
  expect([...loadedWith(join(src, "load/locate-findings.ts"))]).not.toContain("ts-morph");
});
