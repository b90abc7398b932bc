/** One line of bench readings from a table: pulse in microseconds, deflection in degrees. */
export interface TableReading {
  /** Empty where the table has no column for it. */
  readonly servo: string;
  readonly pulseUs: number;
  readonly deflectionDeg: number;
  readonly way?: "out" | "back";
}

export type ReadTable =
  | { readonly readings: readonly [TableReading, ...TableReading[]] }
  /** A sentence without the file's name, with the line where there is one. */
  | { readonly problem: string };

type Column = "servo" | "pulse" | "deflection" | "way";

const columns: readonly Column[] = ["servo", "pulse", "deflection", "way"];
const plainNumber = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)$/;
/** Ten times a careful bench; the leave-one-out check grows with a high power of it. */
const mostReadings = 200;

/**
 * Readings from a table in text, with commas, semicolons or tabs between; with the last two a number may have a decimal comma.
 * With a first line of names the columns may stand in any order: servo, pulse, deflection, way; without one they are pulse,
 * deflection and perhaps way. Empty lines and lines that begin with # are left out.
 */
export function readCsv(text: string): ReadTable {
  const lines = text
    .replace(/^\uFEFF/, "")
    .split(/\r\n|\n|\r/)
    .map((line, index) => ({ line, number: index + 1 }))
    .filter(({ line }) => line.trim() !== "" && !line.startsWith("#"));
  const [first] = lines;
  if (first === undefined) return { problem: "it holds no readings" };
  const separator = [";", "\t"].find((one) => first.line.includes(one)) ?? ",";
  const cellsOf = (line: string) =>
    line.split(separator).map((cell) => {
      const text = cell.trim().replace(/^"(.*)"$/, "$1");
      return separator === "," ? text : text.replace(/^([+-]?\d+),(\d+)$/, "$1.$2");
    });
  const names = namesOf(cellsOf(first.line));
  if (typeof names === "string") return { problem: `line ${first.number}: ${names}` };
  const rows = names === undefined ? lines : lines.slice(1);
  const order = names ?? ["pulse", "deflection", "way"];
  const readings: TableReading[] = [];
  for (const { line, number } of rows) {
    const cells = cellsOf(line);
    const reading =
      cells.length > order.length
        ? `there are ${cells.length} values for ${order.length} columns`
        : readRow(Object.fromEntries(order.map((name, index) => [name, cells[index] ?? ""])));
    if (typeof reading === "string") return { problem: `line ${number}: ${reading}` };
    readings.push(reading);
  }
  return checked(readings);
}

/**
 * Readings from JSON data: `[{"servo": "flap", "pulse": 1500, "deflection": 0, "way": "out"}, ...]`, or by servo
 * `{"flap": [[1500, 0], [1600, 9.5, "back"]]}`.
 */
export function readJsonReadings(data: unknown): ReadTable {
  const rows: { readonly where: string; readonly row: Readonly<Record<string, unknown>> }[] = [];
  const add = (where: string, item: unknown, servo?: string) => {
    const row = Array.isArray(item)
      ? { pulse: item[0], deflection: item[1], way: item[2] }
      : typeof item === "object" && item !== null
        ? { ...item }
        : {};
    rows.push({ where, row: servo === undefined ? row : { ...row, servo } });
  };
  if (Array.isArray(data)) for (const [index, item] of data.entries()) add(`reading ${index + 1}`, item);
  else if (typeof data === "object" && data !== null)
    for (const [servo, list] of Object.entries(data)) {
      if (!Array.isArray(list)) return { problem: `"${servo}" is no list of readings` };
      for (const [index, item] of list.entries()) add(`"${servo}", reading ${index + 1}`, item, servo);
    }
  else return { problem: "it is neither a list of readings nor an object of such lists" };
  const readings: TableReading[] = [];
  for (const { where, row } of rows) {
    const wrong = Object.keys(row).find((key) => !columns.some((name) => name === key));
    const reading = wrong === undefined ? readRow(row) : `"${wrong}" is none of ${columns.join(", ")}`;
    if (typeof reading === "string") return { problem: `${where}: ${reading}` };
    readings.push(reading);
  }
  return checked(readings);
}

function checked(readings: readonly TableReading[]): ReadTable {
  const [first, ...others] = readings;
  if (first === undefined) return { problem: "it holds no readings" };
  const counts = new Map<string, number>();
  for (const { servo } of readings) counts.set(servo, (counts.get(servo) ?? 0) + 1);
  const most = Math.max(...counts.values());
  if (most > mostReadings)
    return {
      problem: `it holds ${most} readings of one servo, and ${mostReadings} are the most that are taken`,
    };
  return { readings: [first, ...others] };
}

/** The columns that a first line names; undefined where it is a reading already; a sentence where its names are not known. */
function namesOf(cells: readonly string[]): readonly Column[] | string | undefined {
  if (plainNumber.test(cells[0] ?? "")) return undefined;
  const names: Column[] = [];
  for (const cell of cells) {
    // "pulse (us)", "deflection_deg"
    const word = cell.toLowerCase().replace(/[\s_([].*$/, "");
    const name = columns.find((one) => one === word);
    if (name === undefined) return `the column "${cell}" is none of ${columns.join(", ")}`;
    if (names.includes(name)) return `there are two columns "${name}"`;
    names.push(name);
  }
  const missing = (["pulse", "deflection"] as const).find((name) => !names.includes(name));
  return missing === undefined ? names : `there is no column "${missing}"`;
}

function readRow(row: Readonly<Record<string, unknown>>): TableReading | string {
  const pulseUs = numberOf(row.pulse);
  const deflectionDeg = numberOf(row.deflection);
  const way = row.way ?? "";
  const servo = row.servo ?? "";
  if (pulseUs === undefined || pulseUs < 100 || pulseUs > 5000)
    return `${shown(row.pulse)} is no pulse from 100 to 5000 us`;
  if (deflectionDeg === undefined || Math.abs(deflectionDeg) > 120)
    return `${shown(row.deflection)} is no deflection from -120 to 120 deg`;
  if (way !== "" && way !== "out" && way !== "back") return `${shown(way)} is no way; there is out and back`;
  if (typeof servo !== "string") return `${shown(servo)} is no name of a servo`;
  return { servo, pulseUs, deflectionDeg, ...(way === "" ? {} : { way }) };
}

function numberOf(value: unknown): number | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? value : undefined;
  return typeof value === "string" && plainNumber.test(value) ? Number(value) : undefined;
}

function shown(value: unknown): string {
  return value === undefined ? '""' : (JSON.stringify(value) ?? "this");
}
