import { findPlainNumber } from "./plain-number.ts";

/** The columns that a table may have. */
export interface TableColumns<Name extends string> {
  /** Those that it has, the first ones where no line names them. */
  readonly needed: readonly Name[];
  /** Those that may follow. */
  readonly optional?: readonly Name[];
  /** Those that it has only where its first line names them. */
  readonly named?: readonly Name[];
}

/** One line of a table: its number, from 1, and its values by their column; "" where it has none. */
export interface TableRow<Name extends string> {
  readonly number: number;
  readonly values: Readonly<Partial<Record<Name, string>>>;
}

export type Table<Name extends string> =
  | { readonly rows: readonly TableRow<Name>[] }
  /** A sentence without the file's name and full stop, with the line where there is one. */
  | { readonly problem: string };

/**
 * A table of numbers in text, with commas, semicolons or tabs between; with the last two a number may have a decimal comma. With a
 * first line of names the columns may stand in any order; it is one where its first value is no number. Empty lines and lines that
 * begin with # are left out.
 */
export function readTable<Name extends string>(text: string, columns: TableColumns<Name>): Table<Name> {
  const lines = text
    .replace(/^\uFEFF/, "")
    .split(/\r\n|\n|\r/)
    .map((line, index) => ({ line, number: index + 1 }))
    .filter(({ line }) => line.trim() !== "" && !line.startsWith("#"));
  const [first] = lines;
  if (first === undefined) return { problem: "it holds no readings" };
  const separator = [";", "\t"].find((one) => first.line.includes(one)) ?? ",";
  const names = namesOf(cellsOf(first.line, separator), columns);
  if (typeof names === "string") return { problem: `line ${first.number}: ${names}` };
  const order = names ?? [...columns.needed, ...(columns.optional ?? [])];
  const rows: TableRow<Name>[] = [];
  for (const { line, number } of names === undefined ? lines : lines.slice(1)) {
    const cells = cellsOf(line, separator);
    if (cells.length > order.length)
      return { problem: `line ${number}: there are ${cells.length} values for ${order.length} columns` };
    const values: Partial<Record<Name, string>> = {};
    for (const [index, name] of order.entries()) values[name] = cells[index] ?? "";
    rows.push({ number, values });
  }
  return { rows };
}

function cellsOf(line: string, separator: string): readonly string[] {
  return line.split(separator).map((cell) => {
    const text = cell.trim().replace(/^"(.*)"$/, "$1");
    return separator === "," ? text : text.replace(/^([+-]?\d+),(\d+)$/, "$1.$2");
  });
}

/** The columns that a first line names; undefined where it is a reading already; a sentence where its names are not known. */
function namesOf<Name extends string>(
  cells: readonly string[],
  { needed, optional = [], named = [] }: TableColumns<Name>,
): readonly Name[] | string | undefined {
  if (findPlainNumber(cells[0] ?? "") !== undefined) return undefined;
  const known = [...named, ...needed, ...optional];
  const names: Name[] = [];
  for (const cell of cells) {
    // "pulse (us)", "deflection_deg"
    const word = cell.toLowerCase().replace(/[\s_([].*$/, "");
    const name = known.find((one) => one === word);
    if (name === undefined) return `the column "${cell}" is none of ${known.join(", ")}`;
    if (names.includes(name)) return `there are two columns "${name}"`;
    names.push(name);
  }
  const missing = needed.find((name) => !names.includes(name));
  return missing === undefined ? names : `there is no column "${missing}"`;
}
