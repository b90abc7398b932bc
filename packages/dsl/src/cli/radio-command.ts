import { canonicalJson, measureRadio, pct, us } from "@hingeline/core";
import { inputName } from "../load/input-name.ts";
import { readText } from "../load/read-text.ts";
import { readTable } from "../measure/read-table.ts";
import { radioProblemText, radioToText, radioWarnings } from "../render/radio-to-text.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { findNumber } from "./parse-number.ts";
import type { ReadPair } from "./parse-reading.ts";
import { tellUnusable } from "./tell.ts";
import { toldText } from "./told-text.ts";

export interface RadioArgs {
  /** Percent as the radio shows it, and the pulse at the receiver, microseconds. */
  readonly reading?: readonly ReadPair[];
  /** A file of readings, percent and pulse on each line. */
  readonly csv?: string;
  /** Half-width of the doubt of one pulse reading, microseconds. */
  readonly doubt: number;
  readonly name: string;
  /** What no reading shows and nobody may guess; without one of them there is no radio. */
  readonly step?: number;
  readonly endPoints?: "clamp" | "scale";
  readonly reach?: number;
  readonly curvePoints?: number;
  readonly format: "text" | "json";
}

/** Prints the radio that readings at the receiver show, for a model file or, as JSON, for `port`. */
export async function radioCommand(args: RadioArgs, io: Io): Promise<number> {
  const { name, step, reach, endPoints, curvePoints = 0, doubt } = args;
  if (step === undefined) return tellUnusable(askForStep, io);
  if (endPoints === undefined) return tellUnusable(askForEndPoints, io);
  const pairs = [...(args.reading ?? [])];
  if (args.csv !== undefined) {
    const read = await readText(args.csv, io);
    if ("problem" in read) return tellUnusable(read.problem.message, io);
    const table = readTable(read.text, { needed: ["percent", "pulse"] });
    if ("problem" in table) return tellUnusable(`${inputName(args.csv)}: ${table.problem}.`, io);
    for (const { number, values } of table.rows) {
      const [first, second] = [findNumber(values.percent ?? ""), findNumber(values.pulse ?? "")];
      if (first === undefined || second === undefined)
        return tellUnusable(`${inputName(args.csv)}: line ${number} is not a percent and a pulse.`, io);
      pairs.push({ first, second });
    }
  }
  const readings = pairs.map(({ first, second }) => ({ percent: pct(first), pulse: us(second) }));
  const measured = measureRadio(readings, us(doubt), {
    name,
    step: pct(step),
    endPoints,
    curvePoints,
    ...(reach === undefined ? {} : { reach: pct(reach) }),
  });
  if (measured.kind !== "measured") return tellUnusable(radioProblemText(measured), io);
  if (args.format === "json") {
    for (const warning of radioWarnings(measured)) io.stderr.write(toldText(`WARNING: ${warning}`));
    io.stdout.write(`${canonicalJson(measured.radio)}\n`);
  } else io.stdout.write(radioToText(measured, readings));
  const { fits, kinks } = measured.calibration;
  return fits && kinks.every(({ where }) => where !== "inside") ? exitDone : exitFindings;
}

const askForStep =
  "Give --step, the smallest change that the radio makes to a percent: turn a limit on by one and see.";

const askForEndPoints =
  "Give --end-points clamp or scale: read a pulse with the stick at half, bring the limit on that side in from 100 to 80 %, and read again. Where the pulse stays it is clamp, where it comes nearer to the centre scale.";
