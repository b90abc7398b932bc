import { canonicalJson, type DrawOptions, listDoubts, type SetupPlan } from "@hingeline/core";
import { doubtToText } from "../render/doubt-to-text.ts";
import { exitDone } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { loadSoundPlan } from "./load-sound-plan.ts";
import { tellUnusable, wantsColour } from "./tell.ts";

export interface DoubtArgs {
  readonly model: string;
  /** Only this surface, only what this control does. */
  readonly surface?: string;
  readonly control?: string;
  /** Only this detent, only this end of sticks: one short answer. */
  readonly detent?: string;
  readonly stick?: -1 | 1;
  /** Draws until the result stands still. */
  readonly simulate?: boolean;
  /** Draws so often instead, 2000 or more. */
  readonly draws?: number;
  /** Of the draws; left out, 1. */
  readonly seed?: number;
  readonly format: "text" | "json";
  /** Reads a code file without running it. */
  readonly static?: boolean;
}

/** Prints how sure each position of a model's plan is, and why. A plan with errors is not looked at: it must not be entered. */
export async function doubtCommand(args: DoubtArgs, io: Io): Promise<number> {
  const { model, draws, seed, simulate = false } = args;
  if (seed !== undefined && draws === undefined && !simulate)
    return tellUnusable("--seed is for --simulate or --draws.", io);
  const loaded = await loadSoundPlan(
    model,
    { runs: args.static !== true, without: "nothing is said of its doubt" },
    io,
  );
  if ("exitCode" in loaded) return loaded.exitCode;
  const { plan } = loaded;
  const unknown = unknownName(args, plan);
  if (unknown !== undefined) return tellUnusable(unknown, io);
  const drawing: DrawOptions = { seed: seed ?? 1, ...(draws === undefined ? {} : { draws }) };
  const settings = listDoubts(loaded.model, plan, {
    ...(args.surface === undefined ? {} : { surface: args.surface }),
    ...(args.control === undefined ? {} : { control: args.control }),
    ...(args.detent === undefined ? {} : { detent: args.detent }),
    ...(args.stick === undefined ? {} : { stick: args.stick }),
    ...(simulate || draws !== undefined ? { draw: drawing } : {}),
  });
  if (settings.length === 0)
    return tellUnusable(
      "No such position is known in degrees: there is none, or its bench has no readings.",
      io,
    );
  io.stdout.write(
    args.format === "json"
      ? `${canonicalJson({ model: plan.model, settings })}\n`
      : doubtToText(plan.model, settings, {
          colour: wantsColour(io.stdout, io),
          short: args.detent !== undefined || args.stick !== undefined,
        }),
  );
  return exitDone;
}

/** What to say of a surface, a control or a detent that no setting has. */
function unknownName({ surface, control, detent }: DoubtArgs, { channels }: SetupPlan): string | undefined {
  const settings = channels.flatMap((channel) => channel.settings);
  for (const [kind, name, known] of [
    ["surface", surface, new Set(settings.map((one) => one.surface))],
    ["control", control, new Set(settings.map((one) => one.control))],
    ["detent", detent, new Set(settings.flatMap((one) => one.detent ?? []))],
  ] as const)
    if (name !== undefined && !known.has(name))
      return `"${name}" is no ${kind} of this plan; there is ${[...known].join(", ")}.`;
  return undefined;
}
