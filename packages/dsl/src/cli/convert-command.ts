import { pct, type SignalScale, us } from "@hingeline/core";
import { loadModel } from "../load/load-model.ts";
import { convertPercent, convertPulse } from "./convert-lines.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { tellFindings, tellUnusable } from "./tell.ts";

export interface ConvertArgs {
  /** The model whose radio counts; without it, the scale is stated by the numbers below. */
  readonly model?: string;
  /** What to convert: a pulse in microseconds or a percent, one of the two. */
  readonly pulseUs?: number;
  readonly percent?: number;
  readonly centreUs?: number;
  readonly per100Us?: number;
  readonly stepPercent?: number;
  /** The largest percent; without it, there is none. */
  readonly reachPercent?: number;
}

/** Prints one conversion between pulse and percent line by line, to be checked by hand. */
export async function convertCommand(args: ConvertArgs, io: Io): Promise<number> {
  const { pulseUs, percent } = args;
  if ((pulseUs === undefined) === (percent === undefined))
    return tellUnusable("Give either --pulse or --percent.", io);
  const found = await findScale(args, io);
  if (typeof found === "number") return found;
  const { lines, reached } =
    pulseUs === undefined ? convertPercent(found, percent ?? 0) : convertPulse(found, pulseUs);
  io.stdout.write(`${lines.join("\n")}\n`);
  return reached ? exitDone : exitFindings;
}

/** The signal scale that the arguments mean, or the exit code where they mean none. */
async function findScale(args: ConvertArgs, io: Io): Promise<SignalScale | number> {
  const { model, centreUs, per100Us, stepPercent, reachPercent } = args;
  const stated = [centreUs, per100Us, stepPercent, reachPercent].some((value) => value !== undefined);
  if (model !== undefined) {
    if (stated)
      return tellUnusable("Give either a model or --centre, --per100, --step and --reach, not both.", io);
    const loaded = await loadModel(model, io);
    if ("problem" in loaded) return tellUnusable(loaded.problem.message, io);
    return "findings" in loaded ? tellFindings(loaded.findings, io) : loaded.model.radio;
  }
  if (centreUs === undefined || per100Us === undefined || stepPercent === undefined)
    return tellUnusable("Give a model, or --centre, --per100 and --step.", io);
  const reach = reachPercent ?? mostPercent;
  if (stepPercent > reach) return tellUnusable("The step is larger than the reach.", io);
  return {
    name: "stated",
    centre: us(centreUs),
    per100: us(per100Us),
    step: pct(stepPercent),
    reach: pct(reach),
  };
}

/** More than any radio reaches, for a scale whose reach is not stated. */
const mostPercent = 1000;
