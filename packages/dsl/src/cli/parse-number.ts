import { InvalidArgumentError } from "commander";
import { findPlainNumber } from "../measure/plain-number.ts";

/** The number that a text is, up to 100 000 to either side; undefined for anything but a plain number. */
export function findNumber(text: string): number | undefined {
  const value = findPlainNumber(text);
  return value !== undefined && Math.abs(value) <= 1e5 ? value : undefined;
}

/** The number that an option states. Throws InvalidArgumentError for anything but a plain number up to 100 000. */
export function parseNumber(text: string): number {
  const value = findNumber(text);
  if (value === undefined) throw new InvalidArgumentError("It should be a plain number, such as 72.7.");
  return value;
}

/** As parseNumber, above 0 alone. */
export function parsePositive(text: string): number {
  const value = parseNumber(text);
  if (value <= 0) throw new InvalidArgumentError("It should be above 0.");
  return value;
}

/** As parseNumber, whole numbers from 1 up alone. */
export function parseCount(text: string): number {
  const value = parsePositive(text);
  if (!Number.isInteger(value)) throw new InvalidArgumentError("It should be a whole number.");
  return value;
}

/** A whole number between two; its size is not held to that of parseNumber. Throws InvalidArgumentError for anything else. */
export function parseWhole(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = /^\d{1,16}$/.test(text) ? Number(text) : Number.NaN;
    if (!(value >= least && value <= most))
      throw new InvalidArgumentError(`It should be a whole number from ${least} to ${most}.`);
    return value;
  };
}

/** As parseNumber, 0 to `most` alone. */
export function parseUpTo(most: number): (text: string) => number {
  return (text) => {
    const value = parseNumber(text);
    if (value < 0 || value > most) throw new InvalidArgumentError(`It should be from 0 to ${most}.`);
    return value;
  };
}

/** An end of a stick. */
export function parseEnd(text: string): -1 | 1 {
  const value = findNumber(text);
  if (value !== -1 && value !== 1) throw new InvalidArgumentError("It should be -1 or +1.");
  return value;
}

/** Numbers with commas between them: "8,10,12". */
export function parseList(parseOne: (text: string) => number): (text: string) => readonly number[] {
  return (text) => text.split(",").map((one) => parseOne(one.trim()));
}
