import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { checkTypes } from "../../../packages/dsl/src/load/check-types.ts";
import { fakeIo, fixtures } from "../cli/fake-io.ts";
import { slips, model as sound } from "../declare/slips.ts";
import { examples } from "../source/fixture-source.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "hingeline-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

function write(name: string, text: string): void {
  mkdirSync(dirname(join(folder, name)), { recursive: true });
  writeFileSync(join(folder, name), text);
}

/** Place, sentence and remedy of each finding of a file in the folder. */
async function check(name = "tug.ts", cwd = folder): Promise<readonly string[]> {
  const found = await checkTypes(name, { ...fakeIo(), cwd });
  return found.map(({ finding: { at, message, do: remedy } }) => `${at} ${message} -> ${remedy}`);
}

test("the likeliest slips come as findings in plain words; `-u` writes test/golden/slips-in-check.txt again", async () => {
  const names = slips.map((_, index) => `slip-${index + 1}.ts`);
  for (const [index, [, right, wrong]] of slips.entries())
    write(names[index] ?? "", sound.replace(right, wrong));
  // One model for all, which is faster: each is a file that it imports.
  write("tug.ts", names.map((name) => `import "./${name}";\n`).join(""));
  const findings = await check();
  const said = slips.map(([what], index) => {
    const own = findings.filter((finding) => finding.startsWith(`${names[index]}:`));
    expect(own, what).not.toEqual([]);
    return `## ${what}\n${own.map((finding) => finding.replace(/^slip-\d+\.ts:/, "")).join("\n")}\n`;
  });
  await expect(said.join("\n")).toMatchFileSnapshot("../../golden/slips-in-check.txt");
});

test("a model without a fault has no finding, nor have the examples", async () => {
  write("tug.ts", sound);
  expect(await check()).toEqual([]);
  for (const name of ["bramblehook.ts", "corvane.ts", "ostrevale.ts", "slatewing.ts"])
    expect(await check(name, examples)).toEqual([]);
});

describe("files are told apart:", () => {
  test("what the model imports from its project is checked too, and named by its own file", async () => {
    write("package.json", "{}");
    write(
      "parts/angles.ts",
      'import { deg, type Deg, us } from "@hingeline/dsl";\nexport const full: Deg = us(3);\nexport const none = deg(0);\n',
    );
    write("models/tug.ts", `import { full } from "../parts/angles";\n${sound.replace("deg(15)", "full")}`);
    expect(await check("models/tug.ts")).toEqual([
      "parts/angles.ts:2:14 A value in microseconds stands where one in degrees is wanted. -> Write it as deg(…).",
    ]);
  });

  test("a file that has come, gone or changed since the last check is seen as it is now", async () => {
    const text = `import { full } from "./full";\n${sound.replace("deg(15)", "full")}`;
    write("tug.ts", text);
    expect(await check()).toEqual([
      "tug.ts:1:22 Cannot find module './full' or its corresponding type declarations. -> Correct it.",
    ]);
    write("full.ts", 'import { deg } from "@hingeline/dsl";\nexport const full = deg(15);\n');
    expect(await check()).toEqual([]);
    write("full.ts", 'import { us } from "@hingeline/dsl";\nexport const full = us(15);\n');
    expect(await check()).toHaveLength(1);
    rmSync(join(folder, "full.ts"));
    expect(await check()).toHaveLength(1);
  });

  test("a link to a model of another project is followed", async () => {
    write("mine/package.json", "{}");
    write("hers/tug.ts", sound.replace("flaps: deg(15)", "flaps: 15"));
    symlinkSync("../hers/tug.ts", join(folder, "mine/tug.ts"));
    expect((await check("mine/tug.ts")).map((finding) => finding.split(" ", 1))).toEqual([
      ["hers/tug.ts:18:18"],
    ]);
  });

  test("JavaScript, JSON, what is not there and what is no model file are not checked", async () => {
    write("tug.mjs", "export default 3 as number;");
    for (const name of ["tug.mjs", "-", "tug.json", "gone.ts", "tug.txt"])
      expect(await check(name)).toEqual([]);
  });

  test("a helper in JavaScript, and data in JSON, keep their types", async () => {
    write("angles.js", "export const full = 15;\n");
    write("channels.json", '{ "elevator": "2" }');
    write(
      "tug.ts",
      `import { full } from "./angles.js";\nimport channels from "./channels.json";\n${sound.replace("deg(15)", "deg(full)").replace("channel: 2", "channel: channels.elevator")}`,
    );
    expect(await check()).toEqual([
      "tug.ts:13:26 A value of type string stands where number is wanted. -> Correct it.",
    ]);
  });
});

describe("what Node has", () => {
  const model = `import { readFileSync } from "node:fs";\nconsole.log(new URL(import.meta.url).pathname, process.argv);\nconst text = readFileSync("a", "utf8");\n${sound.replace("s(2.5)", "s(Number(text))")}`;

  test("is known without its types", async () => {
    write("tug.ts", model);
    expect(await check()).toEqual([]);
  });

  test("has its types where the project has them", async () => {
    write("package.json", "{}");
    mkdirSync(join(folder, "node_modules"));
    symlinkSync(join(examples, "../../../node_modules/@types"), join(folder, "node_modules/@types"));
    write("tug.ts", model);
    expect(await check()).toEqual([]);
    write("tug.ts", model.replace("Number(text)", "text"));
    expect(await check()).toEqual([
      "tug.ts:26:22 A value of type string stands where number is wanted. -> Correct it.",
    ]);
  });
});

test("a file that is no valid code is told so, once for each fault and of nothing else", async () => {
  write(
    "tug.ts",
    sound.replace("reach: pct(125),", "reach: pct(125)").replace("flaps: deg(15)", "flaps: 15"),
  );
  expect(await check()).toEqual(["tug.ts:4:82 The file is no valid code: ',' expected. -> Correct it."]);
});

test("a byte order mark and CRLF move no place; a file nested too deeply is told so", async () => {
  write("tug.ts", `\ufeff${sound.replace("flaps: deg(15)", "flaps: 15").replaceAll("\n", "\r\n")}`);
  expect((await check()).map((finding) => finding.split(" ", 1))).toEqual([["tug.ts:18:18"]]);
  write("tug.ts", `export default ${"[".repeat(20_000)}${"]".repeat(20_000)};\n`);
  expect(await check()).toEqual([
    "tug.ts:1:1 The file is nested too deeply to be checked. -> Split it into smaller parts.",
  ]);
});

test("the fixtures whose types hold pass, and one that throws is not run", async () => {
  expect(await check("wrenfield.ts", fixtures)).toEqual([]);
  expect(await check("throws.ts", fixtures)).toEqual([]);
});

test("a suffix in capitals is no way round", async () => {
  write("TUG.TS", sound.replace("flaps: deg(15)", "flaps: 15"));
  expect(await check("TUG.TS")).toHaveLength(1);
});
