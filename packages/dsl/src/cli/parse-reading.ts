import { InvalidArgumentError } from "commander";
import { findNumber } from "./parse-number.ts";

/** Two numbers of one reading, "1221=42" or "1221=29mm". */
export interface ReadPair {
  readonly first: number;
  readonly second: number;
  readonly unit?: "mm";
}

/** The readings of an option that may be given several times, one more each time. */
export function addReading(text: string, before: readonly ReadPair[] = []): readonly ReadPair[] {
  const pair = findReading(text);
  if (pair === undefined) throw new InvalidArgumentError("It should be two plain numbers, such as 1221=42.");
  return [...before, pair];
}

/** As addReading, where a second number in millimetres has no meaning. */
export function addPlainReading(text: string, before: readonly ReadPair[] = []): readonly ReadPair[] {
  if (text.endsWith("mm"))
    throw new InvalidArgumentError("It should be two plain numbers, such as -100=988.");
  return addReading(text, before);
}

function findReading(text: string): ReadPair | undefined {
  const [left = "", right = "", ...others] = text.split("=");
  const [first, second] = [findNumber(left), findNumber(right.replace(/mm$/, ""))];
  if (others.length > 0 || first === undefined || second === undefined) return undefined;
  return { first, second, ...(right.endsWith("mm") ? { unit: "mm" } : {}) };
}
