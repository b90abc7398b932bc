import { ts } from "ts-morph";
import { hingelineFunctions } from "./hingeline-functions.ts";
import { capital, nameSyntax } from "./name-syntax.ts";
import { placeOf } from "./place-of.ts";
import { readCall } from "./read-call.ts";
import { readLiteral, readOperator, readTemplate } from "./read-literal.ts";
import { readAccess, readList, readObject } from "./read-parts.ts";
import type { Reader } from "./reader.ts";
import { type Binding, type Exported, hingeline, type Scope, scopeOf } from "./scope.ts";
import type { Refusal, Source } from "./source.ts";
import { computed, type Traced, type Unknown } from "./traced.ts";

const mostSteps = 400_000;
const deepest = 200;
const mostRefusals = 100;

/** What was read of a source so far. */
export interface Evaluation extends Reader {
  /** What the model file exports as default; undefined where it exports none. */
  readonly readDefault: () => Traced | undefined;
  /** Reads every statement of every file, so that what would change the model unseen is refused. */
  readonly readEverything: () => void;
  readonly refusals: readonly Refusal[];
}

/** A reader of the expressions of a source, which runs none of it but the functions of hingeline. */
export function evaluate(source: Source): Evaluation {
  const refusals: Refusal[] = [];
  const refused = new Set<ts.Node>();
  const scopes = new Map<string, Scope>();
  const known = new Map<ts.Node, Traced>();
  const busy = new Set<unknown>();
  let steps = 0;
  let depth = 0;

  const reader: Evaluation = { read, refuse, spend, resolve, readDefault, readEverything, refusals };
  return reader;

  function refuse(node: ts.Node, what: string, remedy = usualRemedy): Unknown {
    if (refusals.length < mostRefusals && !refused.has(node))
      refusals.push({ place: placeOf(node), what, remedy });
    refused.add(node);
    return { kind: "unknown", node };
  }

  function spend(node: ts.Node): boolean {
    steps += 1;
    if (steps === mostSteps + 1)
      refuse(node, `The model takes more than ${mostSteps} steps to read.`, "Make it smaller.");
    return steps <= mostSteps;
  }

  function read(node: ts.Expression): Traced {
    if (!spend(node)) return { kind: "unknown", node };
    if (depth >= deepest)
      return refuse(node, `This lies more than ${deepest} expressions deep.`, "Name its parts with const.");
    depth += 1;
    try {
      return (
        readExpression(node, reader) ??
        refuse(node, `${capital(nameSyntax(node))} is not read without running the model.`)
      );
    } finally {
      depth -= 1;
    }
  }

  function scopeIn(path: string): Scope | undefined {
    const file = source.files.get(path);
    if (file === undefined) return undefined;
    const scope = scopes.get(path) ?? scopeOf(file.tree);
    scopes.set(path, scope);
    return scope;
  }

  /** The value of an expression that is read once, however often it is used; unknown while it is being read. */
  function readOnce(node: ts.Expression): Traced {
    const before = known.get(node);
    if (before !== undefined) return before;
    if (busy.has(node)) return refuse(node, "This stands in its own definition.");
    busy.add(node);
    const value = read(node);
    busy.delete(node);
    known.set(node, value);
    return value;
  }

  function resolve(node: ts.Identifier): Traced {
    const path = node.getSourceFile().fileName;
    const binding = scopeIn(path)?.names.get(node.text);
    if (binding !== undefined) return resolveBinding(path, binding, node);
    if (node.text === "undefined") return computed(undefined, node);
    return refuse(node, `"${node.text}" is neither declared in this file nor imported.`);
  }

  function resolveBinding(path: string, binding: Binding, use: ts.Node): Traced {
    switch (binding.kind) {
      case "constant":
        return use.getSourceFile() === binding.declaration.getSourceFile() &&
          use.end <= binding.declaration.end
          ? refuse(use, `"${use.getText()}" is used before it has a value.`, "Move its declaration up.")
          : readOnce(binding.initializer);
      case "import":
        return (
          findIn(path, binding.specifier, binding.name, use) ?? missing(binding.name, binding.specifier, use)
        );
      case "all":
        return moduleAt(path, binding.specifier, use);
      case "other":
        return refuse(use, `${capital(nameSyntax(binding.node))} is not read without running the model.`);
    }
  }

  function moduleAt(path: string, specifier: string, node: ts.Node): Traced {
    return { kind: "module", node, find: (name) => findIn(path, specifier, name, node) };
  }

  function missing(name: string, specifier: string, use: ts.Node): Traced {
    return refuse(
      use,
      `"${name}" of "${specifier}" is not read without running the model.`,
      "Import only what declares a model.",
    );
  }

  /** What the file or package that `specifier` means in the file at `path` exports under `name`. */
  function findIn(path: string, specifier: string, name: string, use: ts.Node): Traced | undefined {
    if (specifier === hingeline)
      return hingelineFunctions.has(name) ? { kind: "function", node: use, name } : undefined;
    if (!specifier.startsWith(".")) return undefined;
    const target = source.files.get(path)?.imports.get(specifier);
    // An import that was not found has been refused where it stands.
    return target === undefined ? { kind: "unknown", node: use } : findExport(target, name, use);
  }

  function findExport(path: string, name: string, use: ts.Node): Traced | undefined {
    const key = `${name} ${path}`;
    const scope = scopeIn(path);
    if (scope === undefined || busy.has(key)) return undefined;
    busy.add(key);
    try {
      const exported = scope.exports.get(name);
      if (exported !== undefined) return resolveExport(path, scope, exported, use);
      if (name === "default") return undefined;
      for (const star of scope.stars) {
        const found = findIn(path, star, name, use);
        if (found !== undefined) return found;
      }
      return undefined;
    } finally {
      busy.delete(key);
    }
  }

  function resolveExport(path: string, scope: Scope, exported: Exported, use: ts.Node): Traced | undefined {
    switch (exported.kind) {
      case "expression":
        return readOnce(exported.expression);
      case "from":
        return findIn(path, exported.specifier, exported.name, use);
      case "all":
        return moduleAt(path, exported.specifier, exported.node);
      case "local": {
        const binding = scope.names.get(exported.name);
        if (binding === undefined) return undefined;
        return binding.kind === "constant"
          ? readOnce(binding.initializer)
          : resolveBinding(path, binding, use);
      }
    }
  }

  function readDefault(): Traced | undefined {
    const entry = source.files.get(source.entry);
    return entry === undefined ? undefined : findExport(entry.path, "default", entry.tree);
  }

  function readEverything(): void {
    for (const path of source.files.keys()) {
      const scope = scopeIn(path);
      if (scope === undefined) continue;
      for (const { node, what, remedy } of scope.unread) refuse(node, what, remedy);
      for (const { initializer } of scope.constants) {
        // A function that is only declared changes nothing.
        if (!ts.isArrowFunction(initializer) && !ts.isFunctionExpression(initializer)) readOnce(initializer);
      }
      for (const exported of scope.exports.values())
        if (exported.kind === "expression") readOnce(exported.expression);
    }
  }
}

const usualRemedy = "Write what it comes to as a literal or a const, or run the model instead.";

function readExpression(node: ts.Expression, reader: Reader): Traced | undefined {
  const literal = readLiteral(node);
  if (literal !== undefined) return literal;
  if (ts.isIdentifier(node)) return reader.resolve(node);
  if (ts.isObjectLiteralExpression(node)) return readObject(node, reader);
  if (ts.isArrayLiteralExpression(node)) return readList(node, reader);
  if (ts.isCallExpression(node)) return readCall(node, reader);
  if (ts.isPropertyAccessExpression(node) || ts.isElementAccessExpression(node))
    return readAccess(node, reader);
  if (ts.isBinaryExpression(node) || ts.isPrefixUnaryExpression(node)) return readOperator(node, reader);
  if (ts.isTemplateExpression(node)) return readTemplate(node, reader);
  if (
    ts.isParenthesizedExpression(node) ||
    ts.isAsExpression(node) ||
    ts.isSatisfiesExpression(node) ||
    ts.isTypeAssertionExpression(node) ||
    ts.isNonNullExpression(node)
  )
    return reader.read(node.expression);
  return undefined;
}
