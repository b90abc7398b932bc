import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { editModel, gatherSource } from "@hingeline/dsl/source";
import ts from "typescript";
import { expect, test } from "vitest";
import { examples } from "./fixture-source.ts";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const { options } = ts.parseJsonConfigFileContent(
  ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile).config,
  ts.sys,
  root,
);

const host = ts.createCompilerHost(options);
const parse = host.getSourceFile;
const parsed = new Map<string, ts.SourceFile | undefined>();

/** The errors of a model file that holds `text`. */
function check(text: string): readonly string[] {
  const name = join(examples, "written.ts");
  host.getSourceFile = (file, version, ...rest) => {
    if (file === name) return ts.createSourceFile(file, text, version);
    if (!parsed.has(file)) parsed.set(file, parse(file, version, ...rest));
    return parsed.get(file);
  };
  host.fileExists = (file) => file === name || ts.sys.fileExists(file);
  const program = ts.createProgram([name], options, host);
  const diagnostics = program.getSemanticDiagnostics(program.getSourceFile(name));
  return diagnostics.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"));
}

test("a model with everything that a bench session writes type-checks", async () => {
  const text = readFileSync(join(examples, "slatewing.ts"), "utf8");
  const bench = "surfaces.elevonLeft.servo.bench";
  const source = await gatherSource("slatewing.ts", async (path) =>
    path === "slatewing.ts" ? text : undefined,
  );
  const edited = editModel(source, [
    { address: `${bench}.up`, value: { kind: "stop", pulse: 1860, reason: "contact", current: 0.7 } },
    { address: `${bench}.level`, value: 1541.5 },
    { address: `${bench}.guard`, value: 6 },
    { address: `${bench}.freeCurrent`, value: 0.2 },
    { address: `${bench}.measured`, value: { on: "2026-03-01", supply: 6, temperature: 18 } },
    {
      address: `${bench}.readings`,
      value: [
        [1860, -24, "out"],
        [1541.5, 0, "back"],
        [1300, { kind: "throw", mm: 12.5 }],
        [1200, { kind: "extension", mm: 3 }],
      ],
    },
  ]);
  const after = "files" in edited ? (edited.files[0]?.text ?? "") : "";
  for (const call of ["stopAt(", "amps(", "volts(", "celsius(", "atThrow(", "atExtension("])
    expect(after).toContain(call);
  expect(check(after)).toEqual([]);
  // The check sees what it should.
  expect(check(after.replace("volts(6)", "us(6)"))).not.toEqual([]);
});
