import type { ts } from "ts-morph";
import type { Place } from "./source.ts";

const byteOrderMark = "\ufeff";

/** The place of a node, without the comments and white space before it. */
export function placeOf(node: ts.Node): Place {
  const file = node.getSourceFile();
  return placeAt(file, node.getStart(file), node.end);
}

/** The place of a stretch of a file, from offset `start` up to but not including `end`. */
export function placeAt(file: ts.SourceFile, start: number, end: number): Place {
  const { text } = file;
  const from = positionOf(file, start);
  const to = positionOf(file, end);
  const lineStart = file.getPositionOfLineAndCharacter(from.line - 1, 0);
  const [sourceLine = ""] = text
    .slice(lineStart === 0 && text.startsWith(byteOrderMark) ? 1 : lineStart, lineStart + longestLine)
    .split(/[\r\n\u2028\u2029]/, 1);
  return {
    file: file.fileName,
    line: from.line,
    column: from.column,
    endLine: to.line,
    endColumn: to.column,
    text: text.slice(start, end),
    sourceLine,
  };
}

/** A line longer than this is no line of a person's. */
const longestLine = 20_000;

function positionOf(file: ts.SourceFile, offset: number): { readonly line: number; readonly column: number } {
  const { line, character } = file.getLineAndCharacterOfPosition(offset);
  const mark = line === 0 && file.text.startsWith(byteOrderMark) ? 1 : 0;
  return { line: line + 1, column: Math.max(1, character + 1 - mark) };
}
