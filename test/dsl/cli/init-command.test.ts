import { fileURLToPath } from "node:url";
import { compile, type Model } from "@hingeline/core";
import ts from "typescript";
import { expect, test } from "vitest";
import { starterModel } from "../../../packages/dsl/src/cli/starter-model.ts";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";

const root = fileURLToPath(new URL("../../../", import.meta.url));

test("init prints the starter model", async () => {
  expect(await run(["init"])).toEqual({ exitCode: 0, stdout: starterModel, stderr: "" });
});

test("init FILE begins a new file", async () => {
  const io = fakeIo();
  expect(await run(["init", "mine.ts"], io)).toEqual({
    exitCode: 0,
    stdout: "",
    stderr: "Wrote mine.ts. Put your own readings into it, then: hingeline check mine.ts\n",
  });
  expect([...io.disk]).toEqual([[`${fixtures}mine.ts`, starterModel]]);
});

test("init --from - takes readings from standard input, and names neither the model nor them -", async () => {
  const made = await run(["init", "--from", "-"], fakeIo({ stdin: "1500,0\n1600,9\n1700,18\n" }));
  expect(made.exitCode).toBe(0);
  expect(made.stdout).toContain('model("my model", {');
  expect((await run(["init", "--from", "-"], fakeIo({ stdin: "1500,x\n" }))).stderr).toContain(
    "hingeline: Standard input: line 1: ",
  );
});

test("init never writes over a file", async () => {
  const io = fakeIo({ disk: new Map([[`${fixtures}mine.ts`, "mine"]]) });
  expect(await run(["init", "mine.ts"], io)).toEqual({
    exitCode: 2,
    stdout: "",
    stderr: "hingeline: mine.ts exists already, and is left as it is.\n",
  });
  expect([...io.disk]).toEqual([[`${fixtures}mine.ts`, "mine"]]);
});

test("init refuses a name that is not TypeScript's", async () => {
  expect((await run(["init", "mine.json"])).exitCode).toBe(2);
});

test("the starter model type-checks", () => {
  const { options } = ts.parseJsonConfigFileContent(
    ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile).config,
    ts.sys,
    root,
  );
  const name = `${root}test/dsl/cli/starter.ts`;
  const host = ts.createCompilerHost(options);
  const read = host.getSourceFile;
  host.getSourceFile = (file, version, ...rest) =>
    file === name ? ts.createSourceFile(file, starterModel, version) : read(file, version, ...rest);
  host.fileExists = (file) => file === name || ts.sys.fileExists(file);
  const program = ts.createProgram([name], options, host);
  const source = program.getSourceFile(name);
  expect([...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)]).toEqual([]);
});

test("the starter model compiles without an error or a warning, for two surfaces on two channels", async () => {
  // Run as the command would run it, but for its import: the declarations are the library's own.
  const source = ts.transpileModule(starterModel, {
    compilerOptions: { module: ts.ModuleKind.ESNext },
  }).outputText;
  const declarations = await import("@hingeline/dsl");
  const body = source
    .replace(/^import \{([^}]*)\} from "@hingeline\/dsl";/, "const {$1} = dsl;")
    .replace("export default", "return");
  const model = new Function("dsl", body)(declarations) as Model;
  const plan = compile(model);
  expect(plan.findings.filter(({ severity }) => severity !== "note")).toEqual([]);
  expect(plan.channels.map(({ servos }) => servos)).toEqual([["flapLeft"], ["flapRight"]]);
  expect(plan.channels.map(({ settings }) => settings.length)).toEqual([3, 3]);
});
