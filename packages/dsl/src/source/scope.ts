import { ts } from "ts-morph";
import { capital, nameSyntax } from "./name-syntax.ts";

/** What the names of a file stand for, what it exports, and which of its statements are not read. */
export interface Scope {
  readonly names: ReadonlyMap<string, Binding>;
  readonly exports: ReadonlyMap<string, Exported>;
  /** Specifiers of `export * from`. */
  readonly stars: readonly string[];
  readonly constants: readonly Constant[];
  readonly unread: readonly { readonly node: ts.Node; readonly what: string; readonly remedy?: string }[];
}

export type Binding =
  | Constant
  | { readonly kind: "import"; readonly specifier: string; readonly name: string; readonly node: ts.Node }
  | { readonly kind: "all"; readonly specifier: string; readonly node: ts.Node }
  | { readonly kind: "other"; readonly node: ts.Node };

export interface Constant {
  readonly kind: "constant";
  readonly declaration: ts.VariableDeclaration;
  readonly initializer: ts.Expression;
}

export type Exported =
  | { readonly kind: "local"; readonly name: string }
  | { readonly kind: "from"; readonly specifier: string; readonly name: string }
  | { readonly kind: "all"; readonly specifier: string; readonly node: ts.Node }
  | { readonly kind: "expression"; readonly expression: ts.Expression };

/** The package whose functions are known. */
export const hingeline = "@hingeline/dsl";

/** Reads the statements of a file, no expression of them. */
export function scopeOf(tree: ts.SourceFile): Scope {
  const scope = {
    names: new Map<string, Binding>(),
    exports: new Map<string, Exported>(),
    stars: [] as string[],
    constants: [] as Constant[],
    unread: [] as { node: ts.Node; what: string; remedy?: string }[],
  };
  for (const statement of tree.statements) {
    if (ts.isImportDeclaration(statement)) addImport(statement, scope);
    else if (ts.isVariableStatement(statement)) addVariables(statement, scope);
    else if (ts.isExportDeclaration(statement)) addExports(statement, scope);
    else if (ts.isExportAssignment(statement) && statement.isExportEquals !== true)
      scope.exports.set("default", { kind: "expression", expression: statement.expression });
    else if (ts.isFunctionDeclaration(statement)) {
      // Declared is not called: only who uses it is refused.
      if (statement.name !== undefined)
        scope.names.set(statement.name.text, { kind: "other", node: statement });
      if (isExported(statement) && statement.name !== undefined)
        scope.exports.set(statement.name.text, { kind: "local", name: statement.name.text });
    } else if (!isHarmless(statement)) {
      const named = ts.isExpressionStatement(statement) ? statement.expression : statement;
      scope.unread.push({
        node: statement,
        what: `${capital(nameSyntax(named))} is not read without running the model.`,
        remedy: "A model file that is only read has imports, const, types and exports, nothing else.",
      });
    }
  }
  return scope;
}

type Building = {
  readonly names: Map<string, Binding>;
  readonly exports: Map<string, Exported>;
  readonly stars: string[];
  readonly constants: Constant[];
  readonly unread: { node: ts.Node; what: string; remedy?: string }[];
};

function addImport(
  { importClause, moduleSpecifier }: ts.ImportDeclaration,
  { names, unread }: Building,
): void {
  if (!ts.isStringLiteral(moduleSpecifier) || importClause?.isTypeOnly === true) return;
  const specifier = moduleSpecifier.text;
  const known = specifier.startsWith(".") || specifier.startsWith("@hingeline/");
  if (!known)
    unread.push({
      node: moduleSpecifier,
      what: `An import of "${specifier}" is not read without running the model.`,
      remedy: `Import only files of the project and "${hingeline}".`,
    });
  if (importClause === undefined) return;
  const { name, namedBindings } = importClause;
  if (name !== undefined) names.set(name.text, { kind: "import", specifier, name: "default", node: name });
  if (namedBindings === undefined) return;
  if (ts.isNamespaceImport(namedBindings)) {
    names.set(namedBindings.name.text, { kind: "all", specifier, node: namedBindings });
    return;
  }
  for (const element of namedBindings.elements) {
    if (element.isTypeOnly) continue;
    const imported = (element.propertyName ?? element.name).text;
    names.set(element.name.text, { kind: "import", specifier, name: imported, node: element });
  }
}

function addVariables(
  statement: ts.VariableStatement,
  { names, exports, constants, unread }: Building,
): void {
  const { declarationList } = statement;
  const ambient = hasModifier(statement, ts.SyntaxKind.DeclareKeyword);
  const isConst = (declarationList.flags & ts.NodeFlags.BlockScoped) === ts.NodeFlags.Const;
  for (const declaration of declarationList.declarations) {
    const { name, initializer } = declaration;
    if (ts.isIdentifier(name) && isConst && initializer !== undefined && !ambient) {
      const constant: Constant = { kind: "constant", declaration, initializer };
      names.set(name.text, constant);
      constants.push(constant);
    } else {
      if (ts.isIdentifier(name)) names.set(name.text, { kind: "other", node: declaration });
      if (!ambient)
        unread.push(
          isConst
            ? {
                node: name,
                what: "Taking a value apart is not read without running the model.",
                remedy: "Give the const one name, and use its parts.",
              }
            : {
                node: declaration,
                what: "A variable that may change is not read without running the model.",
                remedy: "Declare it with const.",
              },
        );
    }
    if (isExported(statement) && ts.isIdentifier(name))
      exports.set(name.text, { kind: "local", name: name.text });
  }
}

function addExports(statement: ts.ExportDeclaration, { exports, stars, unread }: Building): void {
  if (statement.isTypeOnly) return;
  const { exportClause, moduleSpecifier } = statement;
  const specifier =
    moduleSpecifier !== undefined && ts.isStringLiteral(moduleSpecifier) ? moduleSpecifier.text : undefined;
  if (specifier !== undefined && !specifier.startsWith(".") && specifier !== hingeline)
    unread.push({
      node: statement,
      what: `An export from "${specifier}" is not read without running the model.`,
    });
  if (exportClause === undefined) {
    if (specifier !== undefined) stars.push(specifier);
  } else if (ts.isNamespaceExport(exportClause)) {
    if (specifier !== undefined)
      exports.set(exportClause.name.text, { kind: "all", specifier, node: exportClause });
  } else
    for (const element of exportClause.elements) {
      if (element.isTypeOnly) continue;
      const name = (element.propertyName ?? element.name).text;
      exports.set(
        element.name.text,
        specifier === undefined ? { kind: "local", name } : { kind: "from", specifier, name },
      );
    }
}

function isHarmless(statement: ts.Statement): boolean {
  return (
    ts.isInterfaceDeclaration(statement) ||
    ts.isTypeAliasDeclaration(statement) ||
    ts.isEmptyStatement(statement) ||
    (ts.isExpressionStatement(statement) && ts.isStringLiteral(statement.expression)) ||
    hasModifier(statement, ts.SyntaxKind.DeclareKeyword)
  );
}

function isExported(statement: ts.Statement): boolean {
  return hasModifier(statement, ts.SyntaxKind.ExportKeyword);
}

function hasModifier(statement: ts.Statement, kind: ts.SyntaxKind): boolean {
  return (
    ts.canHaveModifiers(statement) &&
    (ts.getModifiers(statement)?.some((modifier) => modifier.kind === kind) ?? false)
  );
}
