import type { ts } from "ts-morph";

/** Braces or brackets with entries between them, separated by commas. */
export type Bracketed = ts.ObjectLiteralExpression | ts.ArrayLiteralExpression | ts.NamedImports;

/** How a bracketed list is laid out in its file. */
export interface Layout {
  /** Entries have lines of their own, and so has the closing bracket. */
  readonly lines: boolean;
  /** White space before an entry that opens a line. */
  readonly indent: string;
  /** One level of it. */
  readonly unit: string;
  readonly lineEnd: string;
  readonly trailingComma: boolean;
}

/** The layout of a bracketed list, as the builder or a formatter left it. */
export function layoutOf(node: Bracketed): Layout {
  const { text } = node.getSourceFile();
  const entries = entriesOf(node);
  const closing = indentAt(text, node.end - 1);
  const last = entries.at(-1);
  const lines = closing !== undefined;
  const own = last === undefined ? undefined : indentAt(text, last.getStart());
  const outer = closing ?? leadingSpace(text, node.getStart());
  const unit =
    own !== undefined && own.length > outer.length && own.startsWith(outer)
      ? own.slice(outer.length)
      : outer.includes("\t") || /^\t/m.test(text)
        ? "\t"
        : "  ";
  return {
    lines,
    indent: own ?? outer + unit,
    unit,
    lineEnd: lineEndOf(text, node.getStart()),
    trailingComma: entries.hasTrailingComma === true,
  };
}

export function entriesOf(node: Bracketed): ts.NodeArray<ts.Node> {
  return "properties" in node ? node.properties : node.elements;
}

/** The offset of the line feed or carriage return that ends the line at `offset`. */
export function endOfLine(text: string, offset: number): number {
  const found = /[\r\n]/g;
  found.lastIndex = offset;
  return found.exec(text)?.index ?? text.length;
}

/** The offset behind the end of the line at `offset`, its line feed included. */
export function nextLine(text: string, offset: number): number {
  const end = endOfLine(text, offset);
  return end + (text.startsWith("\r\n", end) ? 2 : end < text.length ? 1 : 0);
}

export function startOfLine(text: string, offset: number): number {
  return Math.max(text.lastIndexOf("\n", offset - 1), text.lastIndexOf("\r", offset - 1)) + 1;
}

/** The white space before `offset` where nothing else stands before it on its line. */
export function indentAt(text: string, offset: number): string | undefined {
  const before = text.slice(startOfLine(text, offset), offset);
  return /^[ \t]*$/.test(before) ? before : undefined;
}

/** Whether a stretch may hold a comment; "//" in a text counts, which is on the safe side. */
export function mayHoldComment(text: string): boolean {
  return /\/[/*]/.test(text);
}

function leadingSpace(text: string, offset: number): string {
  return /^\ufeff?([ \t]*)/.exec(text.slice(startOfLine(text, offset)))?.[1] ?? "";
}

/** How the line at `offset` ends; where it is the last one, how the first one does. */
function lineEndOf(text: string, offset: number): string {
  const at = (index: number) => (text.startsWith("\r\n", index) ? "\r\n" : text[index]);
  return at(endOfLine(text, offset)) ?? at(endOfLine(text, 0)) ?? "\n";
}
