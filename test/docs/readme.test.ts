import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { compile, type Model } from "@hingeline/core";
import { planToText } from "@hingeline/dsl/render";
import bramblehook from "@hingeline/examples/bramblehook";
import ts from "typescript";
import { describe, expect, test } from "vitest";

const root = resolve(import.meta.dirname, "../..");
const readme = readFileSync(join(root, "README.md"), "utf8");
const snippets = [...readme.matchAll(/```ts\n([\s\S]*?)```/g)].map(([, code = ""]) => code);

test("the README opens with one paragraph that states the job", () => {
  const [title, job] = readme.split("\n\n");
  expect(title).toBe("# hingeline");
  expect(job).toMatch(/setup plan|setup\nplan/);
  expect(job).toContain("never");
});

describe("what the README shows as output", () => {
  const text = planToText(compile(bramblehook));
  const excerpts = [...readme.matchAll(/<!-- excerpt: (.*?) -->\n```text\n([\s\S]*?)```/g)];

  test.each(excerpts.map(([, command = "", excerpt = ""]) => [command, excerpt]))(
    "%s prints it",
    (command, excerpt) => {
      expect(command).toBe("npx hingeline plan packages/examples/src/bramblehook.ts");
      expect(text).toContain(excerpt);
    },
  );

  test("is there at all", () => {
    expect(excerpts.length).toBeGreaterThanOrEqual(2);
  });
});

describe("the README's TypeScript", () => {
  test("type-checks", () => {
    expect(problemsOf(snippets)).toEqual([]);
  }, 60_000);

  test("is found wrong by the same check where it is wrong", () => {
    const spoilt = snippets.map((code) =>
      code.replace("takeoff: { flaps: deg(15) }", "takeoff: { flapz: deg(15) }"),
    );
    expect(problemsOf(spoilt).join()).toContain("flapz");
  }, 60_000);

  test("declares a model whose plan has no error", async () => {
    const code = snippets.find((one) => one.includes("export default model(")) ?? "";
    const plan = compile(await run(code));
    expect(plan.findings.filter(({ severity }) => severity !== "note")).toEqual([]);
    expect(plan.channels.map(({ channel }) => channel)).toEqual([5, 6]);
  });
});

/** What the compiler says of snippets as files beside this one. */
function problemsOf(codes: readonly string[]): string[] {
  const files = new Map(codes.map((code, index) => [join(import.meta.dirname, `snippet-${index}.ts`), code]));
  const { config } = ts.readConfigFile(join(root, "tsconfig.json"), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists, readFile } = host;
  host.fileExists = (name) => files.has(name) || fileExists(name);
  host.readFile = (name) => files.get(name) ?? readFile(name);
  host.getSourceFile = (name, ...rest) => {
    const code = files.get(name);
    return code === undefined ? getSourceFile(name, ...rest) : ts.createSourceFile(name, code, rest[0]);
  };
  const program = ts.createProgram([...files.keys()], { ...options, noUnusedLocals: false }, host);
  return ts
    .getPreEmitDiagnostics(program)
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"));
}

/** The default export of a model file's text. */
async function run(code: string): Promise<Model> {
  const { outputText } = ts.transpileModule(code, {
    compilerOptions: { module: ts.ModuleKind.CommonJS, target: ts.ScriptTarget.ES2022 },
  });
  const dsl = await import("@hingeline/dsl");
  const exports: { default?: Model } = {};
  new Function("require", "exports", outputText)(() => dsl, exports);
  if (exports.default === undefined) throw new Error("the snippet exports no model");
  return exports.default;
}
