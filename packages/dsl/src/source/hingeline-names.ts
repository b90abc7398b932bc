import { ts } from "ts-morph";
import { insertEntries } from "./edit-entries.ts";
import { hingeline, scopeOf } from "./scope.ts";
import type { TextEdit } from "./text-edit.ts";

/** The functions of hingeline as one file calls them. */
export interface HingelineNames {
  /** Whether the file imports any; if not, quantities are plain numbers in it. */
  readonly used: boolean;
  /** How to call a function; it is imported if need be. Undefined where its name means something else in the file. */
  readonly call: (name: string) => string | undefined;
  /** The edits that import what was asked for and was not imported yet. */
  readonly imports: () => readonly TextEdit[];
}

export function hingelineNames(tree: ts.SourceFile): HingelineNames {
  const { names } = scopeOf(tree);
  const named = namedImports(tree);
  const missing = new Set<string>();
  const bindings = [...names].filter(([, one]) => "specifier" in one && one.specifier === hingeline);
  return {
    used: bindings.length > 0,
    call: (name) => {
      for (const [local, binding] of bindings) {
        if (binding.kind === "import" && binding.name === name) return local;
        if (binding.kind === "all") return `${local}.${name}`;
      }
      if (named === undefined || names.has(name)) return undefined;
      missing.add(name);
      return name;
    },
    imports: () => (named === undefined ? [] : importEdits(named, [...missing])),
  };
}

function namedImports(tree: ts.SourceFile): ts.NamedImports | undefined {
  for (const statement of tree.statements) {
    if (!ts.isImportDeclaration(statement) || !ts.isStringLiteral(statement.moduleSpecifier)) continue;
    if (statement.moduleSpecifier.text !== hingeline || statement.importClause?.isTypeOnly === true) continue;
    const bindings = statement.importClause?.namedBindings;
    if (bindings !== undefined && ts.isNamedImports(bindings)) return bindings;
  }
  return undefined;
}

/** Each name at its place in the alphabet where the names stand in that order, else at the end. */
function importEdits(node: ts.NamedImports, names: readonly string[]): TextEdit[] {
  const present = node.elements.map((element) => (element.propertyName ?? element.name).text);
  const sorted = present.every((name, index) => index === 0 || !isBefore(name, present[index - 1] ?? ""));
  const placed = new Map<number, string[]>();
  for (const name of names.toSorted((a, b) => (isBefore(a, b) ? -1 : 1))) {
    const found = sorted ? present.findIndex((other) => isBefore(name, other)) : -1;
    const index = found < 0 ? present.length : found;
    placed.set(index, [...(placed.get(index) ?? []), name]);
  }
  return [...placed].flatMap(([index, added]) => insertEntries(node, index, added));
}

function isBefore(a: string, b: string): boolean {
  return a.toLowerCase() < b.toLowerCase();
}
