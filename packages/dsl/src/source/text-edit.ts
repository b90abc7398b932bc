/** A stretch of a text, from offset `start` up to but not including `end`, and what shall stand there instead. */
export interface TextEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The text with all edits made, every character outside them as it was; undefined where two of them overlap. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string | undefined {
  let result = text;
  let before = text.length + 1;
  // From right to left, so that no edit moves the offsets of another.
  for (const edit of edits.toSorted((a, b) => b.start - a.start || b.end - a.end)) {
    if (edit.end > before || (edit.start === before && edit.end === before)) return undefined;
    result = result.slice(0, edit.start) + edit.text + result.slice(edit.end);
    before = edit.start;
  }
  return result;
}
