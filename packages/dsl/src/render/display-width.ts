// Blocks that terminals draw two columns wide: the ranges marked W and F in Unicode's EastAsianWidth.txt, joined where what
// lies between them is unassigned or also wide.
const wide =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\u9fff\ua000-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u;
const marks = /\p{M}/u;

/** Columns that a line of visible text takes in a terminal: none for an accent set apart, two for a wide character. */
export function displayWidth(text: string): number {
  let columns = 0;
  for (const character of text) columns += marks.test(character) ? 0 : wide.test(character) ? 2 : 1;
  return columns;
}

/** The text with spaces behind it up to this many columns; unchanged where it is wider. */
export function padEnd(text: string, columns: number): string {
  return text + " ".repeat(Math.max(0, columns - displayWidth(text)));
}

/** The text with spaces before it up to this many columns; unchanged where it is wider. */
export function padStart(text: string, columns: number): string {
  return " ".repeat(Math.max(0, columns - displayWidth(text))) + text;
}
