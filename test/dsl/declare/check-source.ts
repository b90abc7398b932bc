import { fileURLToPath } from "node:url";
import ts from "typescript";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const { options } = ts.parseJsonConfigFileContent(
  ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile).config,
  ts.sys,
  root,
);
const name = `${root}test/dsl/declare/generated.ts`;
const host = ts.createCompilerHost(options);
const read = host.getSourceFile;
const parsed = new Map<string, ts.SourceFile | undefined>();

/** What the compiler says of a file that holds `source`, its imports included. */
export interface Checked {
  /** Type instantiations, what checking the imports costs included. */
  readonly instantiations: number;
  /** Each error with its line and column, from 1, as the compiler prints it; what is declared and not used is none. */
  readonly errors: readonly string[];
}

/** Type-checks `source` as if it stood in a file beside this one. */
export function checkSource(source: string): Checked {
  host.getSourceFile = (file, version, ...rest) => {
    if (file === name) return ts.createSourceFile(file, source, version);
    if (!parsed.has(file)) parsed.set(file, read(file, version, ...rest));
    return parsed.get(file);
  };
  host.fileExists = (file) => file === name || ts.sys.fileExists(file);
  const program = ts.createProgram([name], { ...options, noUnusedLocals: false }, host);
  const diagnostics = program.getSemanticDiagnostics(program.getSourceFile(name));
  return { errors: diagnostics.map(print), instantiations: program.getInstantiationCount() };
}

function print({ file, start = 0, messageText }: ts.Diagnostic): string {
  const { line, character } = file?.getLineAndCharacterOfPosition(start) ?? { line: 0, character: 0 };
  return `(${line + 1},${character + 1}) ${ts.flattenDiagnosticMessageText(messageText, "\n")}`;
}
