import { displayWidth, padEnd, padStart } from "./display-width.ts";
import { wrapText } from "./wrap-text.ts";

/** A column of numbers: its name, its unit, and its cell in each row. */
export interface Column {
  readonly head: string;
  readonly unit: string;
  readonly cells: readonly string[];
  /** Drawn over the padded cell, so that it cannot move anything. */
  readonly paint?: (text: string) => string;
}

const indent = "  ";
const gap = 2;
const leastLabel = 12;
/** A table without columns, its labels as narrow as they get. */
export const leastLabelWidth = indent.length + leastLabel;

/** What a column takes of a line, the gap before it included. */
export function columnWidth({ head, unit, cells }: Column): number {
  return Math.max(...[head, unit, ...cells].map(displayWidth)) + gap;
}

/**
 * A table of two head lines and one line a row: labels to the left, columns of numbers aligned to the right edge of `columns`. A
 * label that has no room in its line stands wrapped above it, so that no name can move a number.
 */
export function alignTable(
  labelHead: string,
  labels: readonly string[],
  numbers: readonly Column[],
  columns: number,
): string[] {
  const widths = numbers.map(columnWidth);
  const room = columns - indent.length - widths.reduce((sum, width) => sum + width, 0);
  const widest = Math.max(...[labelHead, ...labels].map(displayWidth));
  const labelWidth = Math.max(0, Math.min(room, Math.max(widest, leastLabel)));
  const line = (label: string, cellOf: (column: Column) => string, plain = false) =>
    (
      indent +
      padEnd(label, labelWidth) +
      numbers
        .map((column, index) => {
          const cell = padStart(cellOf(column), widths[index] ?? 0);
          return plain || column.paint === undefined ? cell : column.paint(cell);
        })
        .join("")
    ).trimEnd();
  return [
    line(displayWidth(labelHead) <= labelWidth ? labelHead : "", ({ head }) => head),
    line("", ({ unit }) => unit, true),
    ...labels.flatMap((label, row) => {
      const fits = displayWidth(label) <= labelWidth;
      const above = fits ? [] : wrapText(label, columns - indent.length).map((part) => indent + part);
      return [...above, line(fits ? label : "", ({ cells }) => cells[row] ?? "")];
    }),
  ];
}
