import { pct, us } from "@hingeline/core";
import { loadModel } from "../load/load-model.ts";
import { positionDial, radioDial, statedDial } from "./convert-dial.ts";
import { convertPercent, convertPulse, type Dial } from "./convert-lines.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { loadSoundPlan } from "./load-sound-plan.ts";
import { tellFindings, tellUnusable } from "./tell.ts";

export interface ConvertArgs {
  /** The model whose radio counts; without it, the scale is stated by the numbers below. */
  readonly model?: string;
  /** With a model: the channel on which the value is a position. */
  readonly channel?: number;
  /** What to convert: a pulse in microseconds or a percent, one of the two. */
  readonly pulseUs?: number;
  readonly percent?: number;
  readonly centreUs?: number;
  readonly per100Us?: number;
  readonly stepPercent?: number;
  /** The largest percent; without it, there is none. */
  readonly reachPercent?: number;
}

/**
 * Prints one conversion between a pulse and what is entered for it, line by line, to be checked by hand. Where limits scale, what is
 * entered for a position depends on its channel: without one only the percent of a limit is told.
 */
export async function convertCommand(args: ConvertArgs, io: Io): Promise<number> {
  const { pulseUs, percent } = args;
  if ((pulseUs === undefined) === (percent === undefined))
    return tellUnusable("Give either --pulse or --percent.", io);
  const dial = await findDial(args, io);
  if (typeof dial === "number") return dial;
  const { lines, reached } =
    pulseUs === undefined ? convertPercent(dial, percent ?? 0) : convertPulse(dial, pulseUs);
  io.stdout.write(`${lines.join("\n")}\n`);
  return reached ? exitDone : exitFindings;
}

/** The dial that the arguments mean, or the exit code where they mean none. */
async function findDial(args: ConvertArgs, io: Io): Promise<Dial | number> {
  const { model, channel, centreUs, per100Us, stepPercent, reachPercent } = args;
  const stated = [centreUs, per100Us, stepPercent, reachPercent].some((value) => value !== undefined);
  if (model !== undefined) {
    if (stated)
      return tellUnusable("Give either a model or --centre, --per100, --step and --reach, not both.", io);
    return channel === undefined ? modelDial(model, io) : channelDial(model, channel, io);
  }
  if (channel !== undefined) return tellUnusable("Give a model with --channel.", io);
  if (centreUs === undefined || per100Us === undefined || stepPercent === undefined)
    return tellUnusable("Give a model, or --centre, --per100 and --step.", io);
  const reach = reachPercent ?? mostPercent;
  if (stepPercent > reach) return tellUnusable("The step is larger than the reach.", io);
  return statedDial({
    name: "stated",
    centre: us(centreUs),
    per100: us(per100Us),
    step: pct(stepPercent),
    reach: pct(reach),
  });
}

async function modelDial(path: string, io: Io): Promise<Dial | number> {
  const loaded = await loadModel(path, io);
  if ("problem" in loaded) return tellUnusable(loaded.problem.message, io);
  return "findings" in loaded ? tellFindings(path, loaded.findings, io) : radioDial(loaded.model.radio);
}

/** By the limits of the plan, so there is none where the plan has errors. */
async function channelDial(path: string, channel: number, io: Io): Promise<Dial | number> {
  const without = "nothing is converted by its limits";
  const loaded = await loadSoundPlan(path, { runs: true, without }, io);
  if ("exitCode" in loaded) return loaded.exitCode;
  const dial = positionDial(loaded.plan, loaded.model.radio, channel);
  return typeof dial === "string" ? tellUnusable(dial, io) : dial;
}

/** More than any radio reaches, for a scale whose reach is not stated. */
const mostPercent = 1000;
