import { displayWidth } from "./display-width.ts";
import { visibleText } from "./visible-text.ts";
import { hang } from "./wrap-text.ts";

/** A stretch of a file to show; lines and columns count from 1, columns in UTF-16 units. */
export interface FramedPlace {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  /** The column behind the last character. */
  readonly endColumn: number;
  /** The whole of the first line. */
  readonly sourceLine: string;
}

const tabColumns = 4;

/**
 * A place as lines for a terminal, at most `columns` wide (40 or more): file, line and column, the source line, and carets
 * below the stretch as far as it goes on that line. A long line is cut on both sides of the carets; tabs are widened, and
 * what cannot be seen is spelt out.
 * @param remark words behind the place
 */
export function codeFrame(
  place: FramedPlace,
  { columns = 80, remark = "" }: { readonly columns?: number; readonly remark?: string } = {},
): string[] {
  const { file, line, column, endLine, endColumn, sourceLine } = place;
  const head = `  ${line} | `;
  const cells = cellsOf(sourceLine);
  const end = endLine === line ? endColumn - 1 : sourceLine.trimEnd().length;
  const from = columnAt(cells, column - 1);
  const to = Math.max(from + 1, columnAt(cells, end));
  const shown = cut(cells, from, to, columns - head.length);
  const carets = " ".repeat(shown.from) + "^".repeat(shown.to - shown.from);
  return [
    ...hang("  ", `${visibleText(file)}:${line}:${column}${remark === "" ? "" : ` ${remark}`}`, columns),
    (head + shown.text).trimEnd(),
    `${" ".repeat(head.length - 2)}| ${carets}`,
  ];
}

/** One character as it is shown, where it begins in the line and in which column of the terminal. */
interface Cell {
  readonly text: string;
  readonly offset: number;
  readonly column: number;
  readonly width: number;
}

function cellsOf(line: string): Cell[] {
  const cells: Cell[] = [];
  let [offset, column] = [0, 0];
  for (const character of line) {
    const text = character === "\t" ? " ".repeat(tabColumns - (column % tabColumns)) : visibleText(character);
    const width = displayWidth(text);
    cells.push({ text, offset, column, width });
    offset += character.length;
    column += width;
  }
  return cells;
}

function columnAt(cells: readonly Cell[], offset: number): number {
  const last = cells.at(-1);
  return cells.find((cell) => cell.offset >= offset)?.column ?? (last ? last.column + last.width : 0);
}

/** The line from column `from` to `to` with as much around it as there is room for. */
function cut(
  cells: readonly Cell[],
  from: number,
  to: number,
  room: number,
): { readonly text: string; readonly from: number; readonly to: number } {
  const last = cells.at(-1);
  const whole = last === undefined ? 0 : last.column + last.width;
  if (whole <= room && to <= room) return { text: textOf(cells), from, to };
  // A third of the room for what stands before, and more where less stands behind.
  const start = from <= room / 2 ? 0 : Math.min(from - Math.floor(room / 3), whole - room + 1);
  const dots = start > 0 ? 1 : 0;
  const kept = cells.filter((cell) => cell.column >= start);
  const first = kept[0]?.column ?? start;
  const rest = whole - first + dots > room ? 1 : 0;
  const inside = kept.filter((cell) => cell.column + cell.width - first + dots + rest <= room);
  const shift = (column: number) => Math.min(room - 1, Math.max(0, column - first + dots));
  const text = (dots === 1 ? "…" : "") + textOf(inside) + (rest === 1 ? "…" : "");
  return { text, from: shift(from), to: Math.max(shift(from) + 1, Math.min(room - rest, to - first + dots)) };
}

function textOf(cells: readonly Cell[]): string {
  return cells.map(({ text }) => text).join("");
}
