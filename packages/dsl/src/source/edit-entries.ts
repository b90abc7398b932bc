import type { ts } from "ts-morph";
import {
  type Bracketed,
  endOfLine,
  entriesOf,
  indentAt,
  layoutOf,
  mayHoldComment,
  nextLine,
  startOfLine,
} from "./layout.ts";
import type { TextEdit } from "./text-edit.ts";

/** Edits that add entries before the one at `index`, or behind the last, in the list's own layout. */
export function insertEntries(node: Bracketed, index: number, entries: readonly string[]): TextEdit[] {
  const present = entriesOf(node);
  const next = present[index];
  if (present.length === 0) return insertFirst(node, entries);
  return next === undefined ? append(node, entries) : insertBefore(node, index, next, entries);
}

/**
 * Edits that take out the entries from `start` up to but not including `end`, with their lines where they have lines of
 * their own; comments behind an entry stay. Undefined where a comment would have to go.
 */
export function removeEntries(node: Bracketed, start: number, end: number): TextEdit[] | undefined {
  const present = entriesOf(node);
  const { text } = node.getSourceFile();
  const [first, last] = [present[start], present[end - 1]];
  if (first === undefined || last === undefined) return [];
  const entries = present.slice(start, end);
  const before = present[start - 1];
  const { lines, trailingComma } = layoutOf(node);
  if (lines && entries.every((entry) => indentAt(text, entry.getStart()) !== undefined)) {
    const removed = entries.map((entry) => removeLine(text, entry, afterComma(text, entry.end)));
    if (end < present.length || trailingComma || before === undefined) return removed;
    // What is now the last has no comma behind it, as the last had none.
    const comma = afterComma(text, before.end);
    return [{ start: comma - 1, end: comma, text: "" }, ...removed];
  }
  const after = present[end];
  const range =
    before !== undefined
      ? { start: before.end, end: last.end }
      : { start: first.getStart(), end: after?.getStart() ?? afterComma(text, last.end) };
  return mayHoldComment(text.slice(range.start, range.end)) ? undefined : [{ ...range, text: "" }];
}

function insertFirst(node: Bracketed, entries: readonly string[]): TextEdit[] {
  const { text } = node.getSourceFile();
  const { lines, indent, lineEnd } = layoutOf(node);
  if (lines) {
    const end = endOfLineBefore(text, node.end - 1);
    return [insertion(end, entries.map((entry) => `${lineEnd}${indent}${entry},`).join(""))];
  }
  const space = "properties" in node ? " " : "";
  const start = node.getStart() + 1;
  if (text.slice(start, node.end - 1).trim() !== "")
    return [insertion(node.end - 1, `${entries.join(", ")}${space}`)];
  return [{ start, end: node.end - 1, text: `${space}${entries.join(", ")}${space}` }];
}

function append(node: Bracketed, entries: readonly string[]): TextEdit[] {
  const present = entriesOf(node);
  const { text } = node.getSourceFile();
  const { lines, indent, lineEnd, trailingComma } = layoutOf(node);
  const lastEnd = present.at(-1)?.end ?? node.end - 1;
  if (!lines)
    return trailingComma
      ? [insertion(afterComma(text, lastEnd), entries.map((entry) => ` ${entry},`).join(""))]
      : [insertion(lastEnd, entries.map((entry) => `, ${entry}`).join(""))];
  const added = entries.map((entry) => `${lineEnd}${indent}${entry}`).join(",");
  const end = endOfLineBefore(text, node.end - 1);
  if (trailingComma) return [insertion(end, `${added},`)];
  return end === lastEnd ? [insertion(end, `,${added}`)] : [insertion(lastEnd, ","), insertion(end, added)];
}

function insertBefore(node: Bracketed, index: number, next: ts.Node, entries: readonly string[]): TextEdit[] {
  const { text } = node.getSourceFile();
  const { lines, indent, lineEnd } = layoutOf(node);
  const start = next.getStart();
  const inline = [insertion(start, entries.map((entry) => `${entry}, `).join(""))];
  if (!lines) return inline;
  // Behind the line of the entry before, so that a comment above the next one stays with it.
  const before = entriesOf(node)[index - 1];
  const from = before === undefined ? node.getStart() + 1 : afterComma(text, before.end);
  const end = endOfLine(text, from);
  if (end > start || text.slice(from, end).includes("/*")) return inline;
  return [insertion(end, entries.map((entry) => `${lineEnd}${indent}${entry},`).join(""))];
}

function removeLine(text: string, entry: ts.Node, end: number): TextEdit {
  const start = entry.getStart();
  const rest = text.slice(end, endOfLine(text, end));
  return rest.trim() === ""
    ? { start: startOfLine(text, start), end: nextLine(text, end), text: "" }
    : { start, end: end + (/^[ \t]*/.exec(rest)?.[0].length ?? 0), text: "" };
}

/** The offset behind the comma that follows `offset`, or `offset` itself where none does before the next entry. */
function afterComma(text: string, offset: number): number {
  const trivia = /(?:\s|\/\/[^\r\n]*|\/\*[\s\S]*?\*\/)*,/y;
  trivia.lastIndex = offset;
  return trivia.test(text) ? trivia.lastIndex : offset;
}

/** The end of the line before the one at `offset`. */
function endOfLineBefore(text: string, offset: number): number {
  const start = startOfLine(text, offset);
  return start - (text.startsWith("\r\n", start - 2) ? 2 : 1);
}

function insertion(at: number, text: string): TextEdit {
  return { start: at, end: at, text };
}
