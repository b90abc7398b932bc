import { join } from "node:path";
import ts from "typescript";
import { type Block, blocksOf, fileOf, type Page, root } from "./pages.ts";

/** The TypeScript of a page that stands for itself; a block that begins with its file's name is a step of a worked example. */
export function snippetsOf(page: Page): readonly Block[] {
  return blocksOf(page).filter((block) => block.language === "ts" && fileOf(block) === undefined);
}

const { options } = ts.parseJsonConfigFileContent(
  ts.readConfigFile(join(root, "tsconfig.json"), ts.sys.readFile).config,
  ts.sys,
  root,
);
/** Every file is parsed once, however often something is checked. */
const parsed = new Map<string, ts.SourceFile | undefined>();

/** What the compiler says of these texts, each as a file beside this one. */
export function problemsOf(codes: readonly string[]): readonly string[] {
  const files = new Map(codes.map((code, index) => [join(import.meta.dirname, `snippet-${index}.ts`), code]));
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists, readFile } = host;
  host.fileExists = (name) => files.has(name) || fileExists(name);
  host.readFile = (name) => files.get(name) ?? readFile(name);
  host.getSourceFile = (name, ...rest) => {
    const code = files.get(name);
    if (code !== undefined) return ts.createSourceFile(name, code, rest[0]);
    if (!parsed.has(name)) parsed.set(name, getSourceFile(name, ...rest));
    return parsed.get(name);
  };
  const program = ts.createProgram([...files.keys()], { ...options, noUnusedLocals: false }, host);
  return [...files.keys()]
    .flatMap((name) => ts.getPreEmitDiagnostics(program, program.getSourceFile(name)))
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"));
}

/** What a text has exported and printed when it has run. */
export interface Ran {
  readonly exported: Readonly<Record<string, unknown>>;
  readonly printed: readonly string[];
}

/** Runs a text with these modules behind its imports, and `fetch` as given. */
export async function run(
  code: string,
  modules: Readonly<Record<string, unknown>>,
  fetch: (name: string) => Promise<{ json(): Promise<unknown> }>,
): Promise<Ran> {
  const { outputText } = ts.transpileModule(code, {
    compilerOptions: {
      module: ts.ModuleKind.CommonJS,
      target: ts.ScriptTarget.ES2022,
      esModuleInterop: true,
    },
  });
  const printed: string[] = [];
  const print = (...values: readonly unknown[]) => printed.push(values.map(String).join(" "));
  const exported: Record<string, unknown> = {};
  const require = (name: string) => {
    if (!(name in modules)) throw new Error(`no such module: ${name}`);
    return modules[name];
  };
  // Text of the project's own pages, which may await at its top.
  const body = new Function(
    "require",
    "exports",
    "console",
    "fetch",
    `return (async () => {${outputText}\n})();`,
  ) as (...args: readonly unknown[]) => Promise<void>;
  await body(require, exported, { log: print, error: print }, fetch);
  return { exported, printed };
}

/** What the remarks behind its `console.log` lines say that a text prints. */
export function saidToPrint(code: string): readonly string[] {
  return [...code.matchAll(/console\.log\(.*\); \/\/ (.*)$/gm)].map(([, said = ""]) => said);
}
