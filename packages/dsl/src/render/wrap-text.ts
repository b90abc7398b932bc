import { displayWidth } from "./display-width.ts";

// A number keeps its unit: a line never begins with "us", nor with the "m" of "N m".
const breakable = /(?<!\d|\d N) | (?!(?:us|deg|mm|m|%|share|ms|s|N|A|V|K|C|g)(?!\w))/;

/**
 * Visible text broken at its spaces, but for one before a unit, into lines of at most this many columns; a word that is longer is broken where it
 * reaches the edge. At least one line, columns 2 or more.
 */
export function wrapText(text: string, columns: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(breakable).flatMap((one) => cut(one, columns))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (displayWidth(longer) <= columns) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line];
}

/** Lines under a heading: the first behind `head`, the others indented by as much. Columns count the whole line. */
export function hang(head: string, text: string, columns: number): string[] {
  const indent = displayWidth(head);
  return wrapText(text, columns - indent).map(
    (line, index) => (index === 0 ? head : " ".repeat(indent)) + line,
  );
}

function cut(word: string, columns: number): string[] {
  const pieces: string[] = [];
  let piece = "";
  for (const character of word) {
    if (displayWidth(piece + character) > columns) {
      pieces.push(piece);
      piece = "";
    }
    piece += character;
  }
  return [...pieces, piece];
}
