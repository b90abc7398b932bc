import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { runProgram } from "../../packages/dsl/src/cli/program.ts";
import { fakeIo } from "../dsl/cli/fake-io.ts";
import { allPages, anchorOf, blocksOf, linksOf, pageAt, root } from "./pages.ts";

const pages = allPages();
const manifest = (path: string) =>
  JSON.parse(readFileSync(join(root, path), "utf8")) as {
    readonly version: string;
    readonly packageManager?: string;
    readonly scripts: Readonly<Record<string, string>>;
  };
const { scripts, version } = manifest("package.json");
/** What `hingeline --help`, or that of a command, prints. */
async function help(...command: readonly string[]): Promise<string> {
  const io = fakeIo();
  await runProgram([...command, "--help"], io);
  return io.printed.stdout;
}
const commandsOf = (text: string) =>
  [...text.matchAll(/^ {2}(\w+) (?:\[|<|\w)/gm)].map(([, name = ""]) => name);

describe("the pages", () => {
  test("link only to files and headings that are there", () => {
    const broken = pages.flatMap((page) =>
      linksOf(page)
        .filter(({ file, heading }) => !existsSync(join(root, file)) || !hasHeading(file, heading))
        .map(({ file, heading }) => `${page.path}: ${file}#${heading}`),
    );
    expect(broken).toEqual([]);
  });

  test("of docs/ can all be reached from the README or the contributors' page", () => {
    const linked = new Set(
      ["README.md", "DEVELOPERS.md"].flatMap((path) => linksOf(pageAt(path)).map(({ file }) => file)),
    );
    const own = [
      "CHANGELOG.md",
      "SECURITY.md",
      "DEVELOPERS.md",
      ...readdirSync(join(root, "docs"))
        .filter((name) => name.endsWith(".md"))
        .map((name) => `docs/${name}`),
    ];
    expect(own.filter((path) => !linked.has(path))).toEqual([]);
  });

  test("name no script that package.json does not have", () => {
    const named = pages.flatMap(({ path, text }) =>
      [...text.matchAll(/npm run (\w[\w:-]*)/g)].map(([, name = ""]) => ({ path, name })),
    );
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter(({ name }) => !Object.hasOwn(scripts, name))).toEqual([]);
  });

  test("name no command that hingeline does not have", async () => {
    const known = commandsOf(await help());
    const named = pages.flatMap(({ path, text }) =>
      [...text.matchAll(/(?:npx|npm run) hingeline (?:-- )?([a-z]\w*)/g)].map(([, name = ""]) => ({
        path,
        name,
      })),
    );
    expect(known.length).toBeGreaterThan(10);
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter(({ name }) => !known.includes(name))).toEqual([]);
  });
});

test("DEVELOPERS.md has every script of package.json in its table", () => {
  const table = pageAt("DEVELOPERS.md")
    .text.split("\n")
    .filter((line) => line.startsWith("| `"));
  const isNamed = (name: string) =>
    table.some((line) => new RegExp(`npm (run )?${name}\\b`).test(line.split(" | ")[0] ?? ""));
  // npm runs `pretest` before `test` by itself.
  const missing = Object.keys(scripts).filter((name) => name !== "pretest" && !isNamed(name));
  expect(missing).toEqual([]);
});

test("DEVELOPERS.md has every folder of the sources in its layers", () => {
  const [layers] = blocksOf(pageAt("DEVELOPERS.md")).filter(({ language }) => language === "text");
  const folders = ["core", "dsl"].flatMap((name) =>
    readdirSync(join(root, "packages", name, "src"), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name),
  );
  expect(folders.filter((name) => !layers?.code.includes(`${name}/`))).toEqual([]);
});

test("DEVELOPERS.md packs with the pnpm that package.json pins", () => {
  expect(pageAt("DEVELOPERS.md").text).toContain(`npx ${manifest("package.json").packageManager} pack`);
});

test("CHANGELOG.md has the version that all packages carry, and every command", async () => {
  const { text } = pageAt("CHANGELOG.md");
  for (const name of ["core", "dsl", "examples"])
    expect(manifest(`packages/${name}/package.json`).version).toBe(version);
  expect(text).toMatch(new RegExp(`^## ${version.replaceAll(".", "\\.")} — `, "m"));
  expect(commandsOf(await help()).filter((name) => !text.includes(`\`${name}\``))).toEqual([]);
});

test("SECURITY.md names the commands that take a model and cannot be kept from running it", async () => {
  const { text } = pageAt("SECURITY.md");
  const helps = await Promise.all(
    commandsOf(await help()).map(async (name) => ({ name, shown: await help(name) })),
  );
  const without = helps
    .filter(({ shown }) => /^ {2}(model|before) /m.test(shown) && !shown.includes("--static"))
    .map(({ name }) => name);
  // `measure` reads the file and never runs it.
  expect(without).toEqual(["convert", "size", "measure"]);
  expect(text).toContain("`convert` and `size` run the code file that they are given");
});

test("no line of prose is too long for an editor", () => {
  for (const { path, text } of pages) {
    const prose = text.replaceAll(/^```[\s\S]*?^```$/gm, "").split("\n");
    const long = prose.filter(
      (line) =>
        line.length > 150 && !/^[|]|^- \*\*(Code|Check|Source|Symbols|Holds for)|^!\[|\]\(/.test(line),
    );
    expect(long, path).toEqual([]);
  }
});

test("a shell finds no fault in the syntax of any block of commands", () => {
  for (const { code, page } of pages.flatMap(blocksOf).filter(({ language }) => language === "sh"))
    expect(spawnSync("bash", ["-n", "-c", code], { encoding: "utf8" }).stderr, page).toBe("");
});

function hasHeading(file: string, heading: string): boolean {
  if (heading === "") return true;
  return [...readFileSync(join(root, file), "utf8").matchAll(/^#+ (.*)$/gm)].some(
    ([, title = ""]) => anchorOf(title) === heading,
  );
}
