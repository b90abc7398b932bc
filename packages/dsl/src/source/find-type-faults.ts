import { builtinModules, isBuiltin } from "node:module";
import { posix } from "node:path";
import { Project, ts } from "ts-morph";
import { explainTypeFault } from "./explain-type-fault.ts";
import { listImports } from "./list-imports.ts";
import { placeAt } from "./place-of.ts";
import type { Refusal, Source, SourceFile } from "./source.ts";

/** Where the types lie that a model is checked against; full paths with "/". */
export interface TypePlaces {
  /** By what a model imports, such as "@hingeline/dsl": the file that declares it. */
  readonly modules: Readonly<Record<string, string>>;
  /** The folder `@types` that holds Node's own; undefined where the project has none. */
  readonly node: string | undefined;
}

/**
 * What the compiler says of a model's TypeScript files, in their order: where, which slip it is and what to do. Of a file that is
 * no valid code only that. Nothing of the files is run; what they import from elsewhere is read from disk as text.
 * @param folder full path of the project, with "/"
 */
export function findTypeFaults(source: Source, folder: string, types: TypePlaces): Refusal[] {
  const files = [...source.files.values()];
  const texts = new Map(files.map((file) => [nameOf(file, folder), file.text]));
  const usesNode = files.some(needsNode);
  if (usesNode && types.node === undefined) texts.set(posix.join(folder, "node-names.d.ts"), nodeNames);
  const project = openCompiler(usesNode ? types : { modules: types.modules, node: undefined });
  try {
    for (const [path, text] of texts) project.createSourceFile(path, text, { overwrite: true });
    const program = project.getProgram().compilerObject;
    return files.filter(isTypeScript).flatMap((file) => faultsOf(file, folder, program));
  } catch (error) {
    // The compiler calls itself for each level of brackets.
    if (!(error instanceof RangeError)) throw error;
    const place = placeAt(ts.createSourceFile(source.entry, "", ts.ScriptTarget.Latest), 0, 0);
    return [
      { place, what: "The file is nested too deeply to be checked.", remedy: "Split it into smaller parts." },
    ];
  } finally {
    for (const path of texts.keys()) project.getSourceFile(path)?.forget();
  }
}

/** What compilers have parsed of their libraries and of hingeline's types, kept for the next model. */
const compilers = new Map<string, Project>();

function openCompiler(types: TypePlaces): Project {
  const key = JSON.stringify(types);
  const known = compilers.get(key);
  if (known !== undefined) return known;
  const paths = Object.fromEntries(Object.entries(types.modules).map(([name, file]) => [name, [file]]));
  const node = types.node === undefined ? { types: [] } : { types: ["node"], typeRoots: [types.node] };
  const project = new Project({
    compilerOptions: { ...options, ...node, paths },
    skipAddingFilesFromTsConfig: true,
    skipFileDependencyResolution: true,
  });
  // Without its types everything of hingeline's would be right; this throws where one is not there.
  for (const file of Object.values(types.modules)) project.getFileSystem().readFileSync(file);
  compilers.set(key, project);
  return project;
}

const options: ts.CompilerOptions = {
  strict: true,
  noEmit: true,
  skipLibCheck: true,
  target: ts.ScriptTarget.ES2022,
  lib: ["lib.es2023.d.ts"],
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  moduleDetection: ts.ModuleDetectionKind.Force,
  allowImportingTsExtensions: true,
  allowJs: true,
  resolveJsonModule: true,
};

function faultsOf(file: SourceFile, folder: string, program: ts.Program): Refusal[] {
  const tree = program.getSourceFile(nameOf(file, folder));
  if (tree === undefined) return [];
  const refusal = (start: number, end: number, chain: readonly string[]): Refusal => ({
    place: { ...placeAt(tree, start, end), file: file.path },
    ...explainTypeFault(chain),
  });
  const syntax = program.getSyntacticDiagnostics(tree);
  if (syntax.length > 0)
    return syntax.map(({ start, length, messageText }) =>
      refusal(start, start + length, [
        `The file is no valid code: ${ts.flattenDiagnosticMessageText(messageText, " ")}`,
      ]),
    );
  return program
    .getSemanticDiagnostics(tree)
    .map(({ start = 0, length = 0, messageText }) => refusal(start, start + length, chainOf(messageText)));
}

/** A message and the reasons below it, down to the last. */
function chainOf(message: string | ts.DiagnosticMessageChain): string[] {
  if (typeof message === "string") return [message];
  return [message.messageText, ...(message.next?.[0] === undefined ? [] : chainOf(message.next[0]))];
}

/** The compiler tells kinds of files apart by suffixes in small letters only. */
function nameOf({ path }: SourceFile, folder: string): string {
  return posix.join(folder, path).replace(/\.[^./]+$/, (suffix) => suffix.toLowerCase());
}

function isTypeScript({ path }: SourceFile): boolean {
  return /\.[mc]?tsx?$/i.test(path);
}

/** What Node has and the language has not. Its types are large, and few models need them. */
const nodeValues = [
  ...builtinModules.filter((name) => name in globalThis),
  ...["Buffer", "URL", "URLSearchParams", "TextDecoder", "TextEncoder", "clearInterval", "clearTimeout"],
  ...["fetch", "performance", "require", "setInterval", "setTimeout", "structuredClone"],
];
const nodeWords = new RegExp(`\\b(?:NodeJS|import\\.meta|${nodeValues.join("|")})\\b`);

function needsNode({ tree, text }: SourceFile): boolean {
  return nodeWords.test(text) || listImports(tree).some(({ specifier }) => isBuiltin(specifier));
}

/** Stands in for Node's types where the project has none: its names are there, of no known type. */
const nodeNames = [
  "interface ImportMeta { readonly url: string; readonly dirname: string; readonly filename: string }",
  ...nodeValues.map((name) => `declare const ${name}: any;`),
  ...builtinModules.flatMap((name) => [`declare module "${name}";`, `declare module "node:${name}";`]),
].join("\n");
