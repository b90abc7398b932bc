import { ts } from "ts-morph";

/** A statement that makes the file depend on another one when it runs. */
export interface ImportLine {
  readonly specifier: string;
  readonly node: ts.Expression;
}

/** What a file imports or exports from elsewhere, in order; imports and exports of types alone are left out. */
export function listImports(tree: ts.SourceFile): ImportLine[] {
  return tree.statements.flatMap((statement): ImportLine[] => {
    const specifier = specifierOf(statement);
    return specifier === undefined ? [] : [{ specifier: specifier.text, node: specifier }];
  });
}

function specifierOf(statement: ts.Statement): ts.StringLiteral | undefined {
  const node =
    ts.isImportDeclaration(statement) && statement.importClause?.isTypeOnly !== true
      ? statement.moduleSpecifier
      : ts.isExportDeclaration(statement) && !statement.isTypeOnly
        ? statement.moduleSpecifier
        : undefined;
  return node !== undefined && ts.isStringLiteral(node) ? node : undefined;
}
