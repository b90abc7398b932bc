import { findPlainNumber } from "./plain-number.ts";
import { readTable } from "./read-table.ts";

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

const keys = ["servo", "pulse", "deflection", "way"];
/** Ten times a careful bench; the leave-one-out check grows with a high power of it. */
const mostReadings = 200;

/**
 * Readings from a table in text (see readTable). With a first line of names the columns are servo, pulse, deflection, way; without
 * one they are pulse, deflection and perhaps way.
 */
export function readCsv(text: string): ReadTable {
  const table = readTable(text, {
    needed: ["pulse", "deflection"],
    optional: ["way"],
    named: ["servo"],
  });
  if ("problem" in table) return table;
  const readings: TableReading[] = [];
  for (const { number, values } of table.rows) {
    const reading = readRow(values);
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
    const wrong = Object.keys(row).find((key) => !keys.includes(key));
    const reading = wrong === undefined ? readRow(row) : `"${wrong}" is none of ${keys.join(", ")}`;
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
  return typeof value === "string" ? findPlainNumber(value) : undefined;
}

function shown(value: unknown): string {
  return value === undefined ? '""' : (JSON.stringify(value) ?? "this");
}
