import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import * as core from "@hingeline/core";
import { expect, test } from "vitest";
import { pageAt, root } from "./pages.ts";

const { text: page } = pageAt("docs/formulas.md");
const labels = ["Symbols", "Holds for", "Source", "Code", "Check"] as const;
const entries = page
  .split(/^### /m)
  .slice(1)
  .map((section) => ({
    title: section.split("\n")[0] ?? "",
    formula: /^```text\n([\s\S]+?)^```$/m.exec(section)?.[1] ?? "",
    lines: new Map(
      labels.map((label) => [
        label,
        new RegExp(`^- \\*\\*${label}\\*\\* (.+)$`, "m").exec(section)?.[1] ?? "",
      ]),
    ),
  }));
type Entry = (typeof entries)[number];

interface Link {
  readonly names: readonly string[];
  readonly path: string;
}
const linksIn = (entry: Entry, label: (typeof labels)[number]): readonly Link[] =>
  [...(entry.lines.get(label) ?? "").matchAll(/\[([^\]]+)\]\(\.\.\/([^)]+)\)/g)].map(
    ([, names = "", path = ""]) => ({
      names: names.split(", ").map((name) => name.replaceAll("`", "")),
      path,
    }),
  );
const read = (path: string) => readFileSync(join(root, path), "utf8");
const fixturesOf = (path: string) =>
  [...read(path).matchAll(/fixtures\/([\w/.-]+\.json)/g)].map(([, name = ""]) => join("test/fixtures", name));
/** Letters and digits alone: a source may break across the lines of a comment. */
const plain = (text: string) =>
  text
    .replaceAll(/[^\p{L}\p{N}]+/gu, " ")
    .toLowerCase()
    .trim();

test("there are formulas, and no two have one title", () => {
  expect(entries.length).toBeGreaterThanOrEqual(45);
  expect(new Set(entries.map(({ title }) => title)).size).toBe(entries.length);
});

test("every formula says what stands for what, where it holds, whence it comes and where it is", () => {
  for (const { title, formula, lines } of entries) {
    expect(formula.trim(), title).not.toBe("");
    for (const label of labels) expect(lines.get(label), `${title}: ${label}`).toMatch(/\S/);
  }
});

test("every code link names what its file exports", () => {
  const missing = entries.flatMap((entry) => {
    const links = linksIn(entry, "Code");
    if (links.length === 0) return [`${entry.title}: no code`];
    return links.flatMap(({ names, path }) =>
      names
        .filter((name) => !exportsOf(path).includes(name))
        .map((name) => `${entry.title}: ${path} does not export ${name}`),
    );
  });
  expect(missing).toEqual([]);
});

test("every check is a test that imports the code", () => {
  const missing = entries.flatMap((entry) => {
    const names = linksIn(entry, "Code").flatMap((link) => link.names);
    const checks = linksIn(entry, "Check");
    if (checks.length === 0) return [`${entry.title}: no check`];
    return checks
      .filter(({ path }) => !importsOf(path).some((name) => names.includes(name)))
      .map(({ path }) => `${entry.title}: ${path} imports none of ${names.join(", ")}`);
  });
  expect(missing).toEqual([]);
});

test("every source that is quoted is named beside the code, in the check or in its figures", () => {
  const missing = entries.flatMap((entry) => {
    const checks = linksIn(entry, "Check").map(({ path }) => path);
    const files = [
      ...linksIn(entry, "Code").map(({ path }) => path),
      ...checks,
      ...checks.flatMap(fixturesOf),
    ];
    const there = plain(files.map(read).join("\n"));
    return quotedIn(entry)
      .filter((source) => !there.includes(plain(source)))
      .map((source) => `${entry.title}: ${source}`);
  });
  expect(missing).toEqual([]);
});

test("a formula without a published source says what it rests on instead", () => {
  const grounds = [
    /common practice, no source|assumption of experience/,
    /textbook|elementary|arithmetic|derived here|by definition|chain rule/i,
    /virtual work|in series|thermal expansion|least squares|BIPM|linear function/,
  ];
  const without = entries.filter(
    (entry) =>
      quotedIn(entry).length === 0 && !grounds.some((ground) => ground.test(entry.lines.get("Source") ?? "")),
  );
  expect(without.map(({ title }) => title)).toEqual([]);
});

test("every function of the core's maths stands on the page", () => {
  const index = read("packages/core/src/index.ts");
  const maths = [
    ...index.matchAll(/export \{([^}]+)\} from "\.\/(signal|surface|uncertainty|linkage|response)\//g),
  ]
    .flatMap(([, list = ""]) => list.split(","))
    .map((name) => name.trim())
    .filter(
      (name) => /^[a-z]\w*$/.test(name) && typeof (core as Record<string, unknown>)[name] === "function",
    );
  const there = new Set(entries.flatMap((entry) => linksIn(entry, "Code").flatMap(({ names }) => names)));
  // They tell what cannot be used, and compute nothing.
  const computesNothing = ["scaleProblems", "isLinkageProblem"];
  expect(maths.length).toBeGreaterThan(60);
  expect(maths.filter((name) => !there.has(name) && !computesNothing.includes(name))).toEqual([]);
});

test("every kind of linkage stands on the page, by the function that makes its drive", () => {
  const table =
    /const makers: [^=]+ = \{([^}]+)\}/.exec(read("packages/core/src/linkage/drives.ts"))?.[1] ?? "";
  const drives = [...table.matchAll(/^ {2}\w+: (\w+),$/gm)].map(([, name = ""]) => name);
  const there = entries.flatMap((entry) => linksIn(entry, "Code").flatMap(({ names }) => names));
  expect(drives.length).toBeGreaterThanOrEqual(7);
  expect(drives.filter((name) => !there.includes(name))).toEqual([]);
});

function quotedIn(entry: Entry): readonly string[] {
  return [...(entry.lines.get("Source") ?? "").matchAll(/`([^`]+)`/g)].map(([, source = ""]) => source);
}

function exportsOf(path: string): readonly string[] {
  return [...read(path).matchAll(/^export (?:function|const) (\w+)/gm)].map(([, name = ""]) => name);
}

/** What a test imports, by name, itself or by a helper of its own folder. */
function importsOf(path: string): readonly string[] {
  return [...read(path).matchAll(/^import ([\s\S]*?) from "([^"]+)"/gm)].flatMap(
    ([, what = "", from = ""]) => {
      const file = join(dirname(path), from);
      if (what.startsWith("* as ")) return exportsOf(file);
      const helper = from.startsWith("./") && from.endsWith(".ts");
      return [...(what.match(/\w+/g) ?? []), ...(helper ? importsOf(file) : [])];
    },
  );
}
