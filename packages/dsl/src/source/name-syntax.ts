import { ts } from "ts-morph";

/** What a node is, in words, with its article: "a tagged template", "a call of Math.round". */
export function nameSyntax(node: ts.Node): string {
  if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
    const callee = node.expression.getText().replaceAll(/\s+/g, " ");
    const verb = ts.isNewExpression(node) ? "new" : "a call of";
    return callee.length > 40 || callee.includes("=>") ? `${verb} a function` : `${verb} ${callee}`;
  }
  if (ts.isBinaryExpression(node)) return `the operator ${node.operatorToken.getText()}`;
  if (ts.isPrefixUnaryExpression(node) || ts.isPostfixUnaryExpression(node))
    return `the operator ${ts.tokenToString(node.operator) ?? ""}`;
  return named.get(node.kind) ?? humanise(ts.SyntaxKind[node.kind] ?? "syntax");
}

/** The text with a capital in front, to open a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

const named = new Map<ts.SyntaxKind, string>([
  [ts.SyntaxKind.ArrowFunction, "a function"],
  [ts.SyntaxKind.FunctionExpression, "a function"],
  [ts.SyntaxKind.FunctionDeclaration, "a function"],
  [ts.SyntaxKind.ClassDeclaration, "a class"],
  [ts.SyntaxKind.ClassExpression, "a class"],
  [ts.SyntaxKind.EnumDeclaration, "an enum"],
  [ts.SyntaxKind.ModuleDeclaration, "a namespace"],
  [ts.SyntaxKind.GetAccessor, "a getter"],
  [ts.SyntaxKind.SetAccessor, "a setter"],
  [ts.SyntaxKind.MethodDeclaration, "a method"],
  [ts.SyntaxKind.TaggedTemplateExpression, "a tagged template"],
  [ts.SyntaxKind.RegularExpressionLiteral, "a regular expression"],
  [ts.SyntaxKind.BigIntLiteral, "a big integer"],
  [ts.SyntaxKind.MetaProperty, "import.meta"],
  [ts.SyntaxKind.ThisKeyword, "this"],
  [ts.SyntaxKind.SuperKeyword, "super"],
  [ts.SyntaxKind.OmittedExpression, "a gap in a list"],
  [ts.SyntaxKind.TypeOfExpression, "typeof"],
  [ts.SyntaxKind.ImportEqualsDeclaration, "import ="],
  [ts.SyntaxKind.ExportAssignment, "export ="],
]);

/** "ConditionalExpression" as "a conditional expression". */
function humanise(kind: string): string {
  const words = kind.replaceAll(/(?<=[a-z])(?=[A-Z])/g, " ").toLowerCase();
  return `${/^[aeiou]/.test(words) ? "an" : "a"} ${words}`;
}
