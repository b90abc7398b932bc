import { ts } from "ts-morph";
import type { Reader } from "./reader.ts";
import { computed, type Traced, written } from "./traced.ts";

/** Longer than any text of a model, and short enough that doubling it again and again comes to nothing. */
const mostCharacters = 100_000;

/** A number, text, true, false or null as written, or a sign before a number; undefined for other expressions. */
export function readLiteral(node: ts.Expression): Traced | undefined {
  if (ts.isNumericLiteral(node)) return written(Number(node.text), node);
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return written(node.text, node);
  switch (node.kind) {
    case ts.SyntaxKind.TrueKeyword:
      return written(true, node);
    case ts.SyntaxKind.FalseKeyword:
      return written(false, node);
    case ts.SyntaxKind.NullKeyword:
      return written(null, node);
  }
  if (!ts.isPrefixUnaryExpression(node) || !ts.isNumericLiteral(node.operand)) return undefined;
  const value = Number(node.operand.text);
  if (node.operator === ts.SyntaxKind.MinusToken) return written(-value, node);
  if (node.operator === ts.SyntaxKind.PlusToken) return written(value, node);
  return undefined;
}

/** A template string, what stands in its braces being text, numbers or truth values. */
export function readTemplate(node: ts.TemplateExpression, reader: Reader): Traced {
  let text = node.head.text;
  for (const span of node.templateSpans) {
    const part = reader.read(span.expression);
    if (part.kind === "unknown") return { kind: "unknown", node };
    if (part.kind !== "value" || part.value === undefined)
      return reader.refuse(span.expression, "Only text and numbers are put into a template string.");
    text += String(part.value) + span.literal.text;
    if (text.length > mostCharacters) return reader.refuse(node, "This text is too long.");
  }
  return computed(text, node);
}

/** Plus, minus, times, divided by, remainder and power of numbers, and texts joined with +. */
export function readOperator(
  node: ts.BinaryExpression | ts.PrefixUnaryExpression,
  reader: Reader,
): Traced | undefined {
  if (ts.isPrefixUnaryExpression(node)) {
    const operand = reader.read(node.operand);
    if (operand.kind === "unknown") return { kind: "unknown", node };
    if (operand.kind !== "value" || typeof operand.value !== "number") return undefined;
    if (node.operator === ts.SyntaxKind.MinusToken) return computed(-operand.value, node);
    return node.operator === ts.SyntaxKind.PlusToken ? computed(operand.value, node) : undefined;
  }
  const left = reader.read(node.left);
  const right = reader.read(node.right);
  if (left.kind === "unknown" || right.kind === "unknown") return { kind: "unknown", node };
  if (left.kind !== "value" || right.kind !== "value") return undefined;
  const operator = node.operatorToken.kind;
  const [a, b] = [left.value, right.value];
  if (typeof a === "number" && typeof b === "number") {
    const result = arithmetic.get(operator)?.(a, b);
    return result === undefined ? undefined : computed(result, node);
  }
  if (operator !== ts.SyntaxKind.PlusToken || !isTextOrNumber(a) || !isTextOrNumber(b)) return undefined;
  const text = `${a}${b}`;
  return text.length > mostCharacters ? reader.refuse(node, "This text is too long.") : computed(text, node);
}

const arithmetic = new Map<ts.SyntaxKind, (a: number, b: number) => number>([
  [ts.SyntaxKind.PlusToken, (a, b) => a + b],
  [ts.SyntaxKind.MinusToken, (a, b) => a - b],
  [ts.SyntaxKind.AsteriskToken, (a, b) => a * b],
  [ts.SyntaxKind.SlashToken, (a, b) => a / b],
  [ts.SyntaxKind.PercentToken, (a, b) => a % b],
  [ts.SyntaxKind.AsteriskAsteriskToken, (a, b) => a ** b],
]);

function isTextOrNumber(value: unknown): value is string | number {
  return typeof value === "string" || typeof value === "number";
}
