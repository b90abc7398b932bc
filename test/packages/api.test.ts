import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { expect, test } from "vitest";
import { root } from "./pack.ts";

// `npm test` builds first; this needs the build. What differs from the committed text is a change of the public API:
// `npx vitest run test/packages/api.test.ts -u` writes it again.

const entries = ["core", "dsl"].flatMap((name) => {
  const folder = join(root, "packages", name);
  const { exports } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as {
    readonly exports: Readonly<Record<string, { readonly types: string }>>;
  };
  return Object.entries(exports).map(([path, { types }]) => ({
    entry: join(`@hingeline/${name}`, path),
    golden: `${join(name, path).replaceAll("/", "-")}.txt`,
    types: join(folder, types),
  }));
});

const program = ts.createProgram(
  entries.map(({ types }) => types),
  { module: ts.ModuleKind.NodeNext, target: ts.ScriptTarget.ES2022, lib: ["lib.es2023.d.ts"], types: [] },
);
const checker = program.getTypeChecker();
const printer = ts.createPrinter({ removeComments: true });

test.each(entries)("$entry exports what is committed, each with its signature", async ({ types, golden }) => {
  const source = program.getSourceFile(types);
  const symbol = source && checker.getSymbolAtLocation(source);
  const exported = symbol === undefined ? [] : checker.getExportsOfModule(symbol);
  expect(exported.length).toBeGreaterThan(2);
  const lines = exported.map((one) => declarationsOf(one, types)).sort();
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(`../golden/api/${golden}`);
});

test("no declaration of the packages has an error of its own, those of their dependencies apart", () => {
  const own = program.getSourceFiles().filter(({ fileName }) => fileName.includes("/packages/"));
  expect(own.length).toBeGreaterThanOrEqual(entries.length);
  expect(
    own.flatMap((file) => program.getSemanticDiagnostics(file)).map(({ messageText }) => messageText),
  ).toEqual([]);
});

/** How an export is declared, without comments; of one handed on from another package only whence it is. */
function declarationsOf(exported: ts.Symbol, types: string): string {
  const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
  const name = exported.name === symbol.name ? exported.name : `${exported.name} (${symbol.name})`;
  const declared = symbol.declarations ?? [];
  const elsewhere = declared.find((one) => packageOf(one.getSourceFile().fileName) !== packageOf(types));
  if (elsewhere !== undefined)
    return `${name}: from @hingeline/${packageOf(elsewhere.getSourceFile().fileName)}`;
  return `${name}: ${declared.map(printed).join("\n")}`;
}

const packageOf = (file: string): string | undefined => /\/packages\/([^/]+)\//.exec(file)?.[1];

function printed(declaration: ts.Declaration): string {
  // A constant's type stands beside its name; the statement around it says that it is one.
  const node = ts.isVariableDeclaration(declaration) ? declaration.parent.parent : declaration;
  return printer.printNode(ts.EmitHint.Unspecified, node, node.getSourceFile());
}
