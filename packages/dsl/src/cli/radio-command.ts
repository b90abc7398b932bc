import { canonicalJson, measureRadio, pct, us } from "@hingeline/core";
import { readText } from "../load/read-text.ts";
import { radioProblemText, radioToText, radioWarnings } from "../render/radio-to-text.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { parseReadingTable, type ReadPair } from "./parse-reading.ts";
import { tellUnusable } from "./tell.ts";

export interface RadioArgs {
  /** Percent as the radio shows it, and the pulse at the receiver, microseconds. */
  readonly reading?: readonly ReadPair[];
  /** A file of readings, percent and pulse on each line. */
  readonly csv?: string;
  /** Half-width of the doubt of one pulse reading, microseconds. */
  readonly doubt: number;
  readonly name: string;
  readonly step: number;
  readonly reach?: number;
  readonly endPoints: "clamp" | "scale";
  readonly curvePoints: number;
  readonly format: "text" | "json";
}

/** Prints the radio that readings at the receiver show, for a model file or, as JSON, for `port`. */
export async function radioCommand(args: RadioArgs, io: Io): Promise<number> {
  const pairs = [...(args.reading ?? [])];
  if (args.csv !== undefined) {
    const read = await readText(args.csv, io);
    if ("problem" in read) return tellUnusable(read.problem.message, io);
    const table = parseReadingTable(read.text);
    if ("badLine" in table)
      return tellUnusable(`${args.csv}: line ${table.badLine} is not a percent and a pulse.`, io);
    pairs.push(...table.readings);
  }
  const readings = pairs.map(({ first, second }) => ({ percent: pct(first), pulse: us(second) }));
  const { name, step, reach, endPoints, curvePoints, doubt } = args;
  const measured = measureRadio(readings, us(doubt), {
    name,
    step: pct(step),
    endPoints,
    curvePoints,
    ...(reach === undefined ? {} : { reach: pct(reach) }),
  });
  if (measured.kind !== "measured") return tellUnusable(radioProblemText(measured), io);
  if (args.format === "json") {
    for (const warning of radioWarnings(measured)) io.stderr.write(`hingeline: WARNING: ${warning}\n`);
    io.stdout.write(`${canonicalJson(measured.radio)}\n`);
  } else io.stdout.write(radioToText(measured, readings));
  const { fits, kinks } = measured.calibration;
  return fits && kinks.every(({ where }) => where !== "inside") ? exitDone : exitFindings;
}
