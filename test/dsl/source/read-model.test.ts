import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { canonicalJson } from "@hingeline/core";
import * as hingeline from "@hingeline/dsl";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { runModelFile } from "../../../packages/dsl/src/load/run-model-file.ts";
import { hingelineFunctions } from "../../../packages/dsl/src/source/hingeline-functions.ts";
import { readData, readModel } from "../../../packages/dsl/src/source/read-model.ts";
import { fakeIo } from "../cli/fake-io.ts";
import { brief, examples, fixtures, sourceIn, sourceOf } from "./fixture-source.ts";

const run = async (folder: string, name: string) => {
  const ran = await runModelFile(join(folder, name), join(folder, name), fakeIo());
  if ("problem" in ran) throw new Error(ran.problem.message);
  return ran.data;
};
const read = async (folder: string, name: string) => {
  const data = readData(await sourceIn(folder, name));
  if ("refusals" in data) throw new Error(brief(data.refusals).join("\n"));
  return data.data;
};
const filesIn = (folder: string) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) => /\.m?[jt]s$/.test(name));

describe("readData gives what running the file gives, to the byte", () => {
  const folder = join(fixtures, "read");
  test.each(filesIn(folder).filter((name) => !name.startsWith("parts")))("%s", async (name) => {
    expect(JSON.stringify(await read(folder, name))).toBe(JSON.stringify(await run(folder, name)));
    expect(await read(folder, name)).toEqual(await run(folder, name));
  });

  test.each(filesIn(examples))("example %s", async (name) => {
    const ran = await run(examples, name);
    expect(JSON.stringify(await read(examples, name))).toBe(JSON.stringify(ran));
    const model = await readModel(await sourceIn(examples, name));
    expect("model" in model && canonicalJson(model.model)).toBe(canonicalJson(ran));
  });
});

test("every function that declares is known, and is the one that model files import", () => {
  const exported = Object.entries(hingeline).filter(([name]) => name !== "plan" && name !== "PlanRefused");
  expect(new Map([...hingelineFunctions].map(([name, { run }]) => [name, run]))).toEqual(new Map(exported));
});

describe("what is refused", () => {
  const folder = join(fixtures, "refused");
  const names = filesIn(folder).filter((name) => !/^(?:hostile-side|twice|import-cycle-back)\./.test(name));

  test("is named at its place, and nothing of it is run or read outside the project", async () => {
    const said: Record<string, string[]> = {};
    for (const name of names) {
      const asked: string[] = [];
      const answer = await readModel(await sourceIn(folder, name, asked));
      said[name] = "refusals" in answer ? brief(answer.refusals) : ["read"];
      expect(asked.filter((path) => path.startsWith("..") || path.startsWith("/"))).toEqual([]);
    }
    expect("hostileRan" in globalThis).toBe(false);
    expect(Object.values(said).filter((lines) => lines.includes("read"))).toEqual([]);
    await expect(`${JSON.stringify(said, undefined, 2)}\n`).toMatchFileSnapshot(
      join(fixtures, "refusals.json"),
    );
  });

  test("has a remedy in one sentence", async () => {
    for (const name of names) {
      const answer = await readModel(await sourceIn(folder, name));
      for (const { what, remedy } of "refusals" in answer ? answer.refusals : []) {
        expect(remedy).toMatch(/^[A-Z].*[.?]$/);
        expect(what).toMatch(/[.?]$/);
      }
    }
  });

  test.each([
    ["brackets", (depth: number) => "[".repeat(depth) + "]".repeat(depth)],
    ["braces", (depth: number) => `${"{a:".repeat(depth)}1${"}".repeat(depth)}`],
    ["parentheses", (depth: number) => `${"(".repeat(depth)}1${")".repeat(depth)}`],
    ["signs", (depth: number) => `${"- ".repeat(depth)}1`],
    ["sums", (depth: number) => `${"1 + ".repeat(depth)}1`],
    ["calls", (depth: number) => `${"us(".repeat(depth)}1${")".repeat(depth)}`],
    ["accesses", (depth: number) => `a${".a".repeat(depth)}`],
    ["templates", (depth: number) => `${"`${".repeat(depth)}1${"}`".repeat(depth)}`],
    ["functions", (depth: number) => `${"() => ".repeat(depth)}1`],
  ])("%s nested deeply are refused, however deep", async (_, nest) => {
    for (const depth of [250, 3_000, 30_000]) {
      const text = `import { us } from "@hingeline/dsl";\nconst a = {};\nexport default ${nest(depth)};`;
      expect(readData(await sourceOf({ "model.ts": text }))).toHaveProperty("refusals");
    }
  });

  test("constants that hold one another deeply are refused", async () => {
    const lines = Array.from({ length: 20_000 }, (_, index) => `const a${index + 1} = [a${index}];`);
    const text = `const a0 = 1;\n${lines.join("\n")}\nexport default a20000;`;
    expect(brief(refusalsOf(await sourceOf({ "model.ts": text })))).toEqual([
      expect.stringContaining("more than 64 levels deep"),
    ]);
  });

  test("a file of more than a mebibyte, and a project of more than 100 files", async () => {
    const long = `export default "${"x".repeat(1024 * 1024)}";`;
    expect(brief(refusalsOf(await sourceOf({ "model.ts": long })))[0]).toContain("1048576 is the most");
    const files = Object.fromEntries(
      Array.from({ length: 150 }, (_, index) => [
        `f${index}.ts`,
        `import "./f${index + 1}.ts";\nexport default 1;`,
      ]),
    );
    expect(brief(refusalsOf(await sourceOf(files, "f0.ts")))).toContain(
      "1:8 The project has more than 100 files.",
    );
  });

  test("an entry that is not there", async () => {
    expect(brief(refusalsOf(await sourceOf({})))).toEqual(["1:1 model.ts cannot be read."]);
  });
});

test("readModel places what is wrong with a model at the literal", async () => {
  const text = readFileSync(join(fixtures, "read/constants.ts"), "utf8").replace("1512.50", "15125.0");
  const answer = await readModel(await sourceOf({ "model.ts": text }));
  expect("refusals" in answer && brief(answer.refusals)).toEqual([
    expect.stringMatching(/^3:31 surfaces\.flap\.servo\.bench\.level: Expected pulse/),
  ]);
});

test("readData never throws, whatever the text", async () => {
  const piece = fc.constantFrom(
    ..."const a = us ( 1500 ) ; export default { } [ ] , : ... ` \" ' - + * / => ? . import from async class get".split(
      " ",
    ),
    "$",
    "\n",
    "model",
    "@hingeline/dsl",
    "./x",
  );
  await fc.assert(
    fc.asyncProperty(fc.array(piece, { maxLength: 40 }), async (pieces) => {
      const text = `import { us, model } from "@hingeline/dsl";\n${pieces.join(" ")}`;
      const answer = readData(await sourceOf({ "model.ts": text }));
      expect("data" in answer || answer.refusals.length > 0).toBe(true);
    }),
    { numRuns: 300 },
  );
});

function refusalsOf(source: Parameters<typeof readData>[0]) {
  const answer = readData(source);
  return "refusals" in answer ? answer.refusals : [];
}
