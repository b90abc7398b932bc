import { type Argument, type Command, Option } from "commander";
import type { DiffArgs } from "./diff-command.ts";
import type { Io } from "./io.ts";
import { parsePositive, parseUpTo } from "./parse-number.ts";
import { addPlainReading, addReading } from "./parse-reading.ts";
import type { PortArgs } from "./port-command.ts";
import type { RadioArgs } from "./radio-command.ts";
import type { SwapArgs } from "./swap-command.ts";

/** What the program makes its commands with. */
export interface CommandMaker {
  readonly command: (name: string, description: string) => Command;
  readonly formatOption: () => Option;
  readonly modelArgument: () => Argument;
  readonly done: (exitCode: number) => void;
}

/** The commands for what changes: another plan, another radio, another servo. */
export function addChangeCommands(
  { command, formatOption, modelArgument, done }: CommandMaker,
  io: Io,
): void {
  const readsOnly = () => new Option("--static", "read a code file without running it");

  command("diff", "Print what differs between two models or plans, and what to verify again.")
    .argument("<before>", "a model file, or a plan as JSON, or - for standard input")
    .argument("<after>", "the same")
    .addOption(formatOption())
    .option("--procedure", "add the order in which to enter the changes")
    .option("--exit-code", "exit with 1 where something differs (default: 0 whenever it is done)")
    .addOption(readsOnly())
    .action(async (before: string, after: string, options: Omit<DiffArgs, "before" | "after">) => {
      const { diffCommand } = await import("./diff-command.ts");
      done(await diffCommand({ before, after, ...options }, io));
    });
  command("port", "Print a model's plan on another radio, beside the plan on its own.")
    .addArgument(modelArgument())
    .argument("<radio>", "a radio as JSON (what radio prints), or a model file whose radio counts")
    .addOption(formatOption())
    .addOption(readsOnly())
    .action(async (model: string, radio: string, options: Omit<PortArgs, "model" | "radio">) => {
      const { portCommand } = await import("./port-command.ts");
      done(await portCommand({ model, radio, ...options }, io));
    });
  command("swap", "Turn the bench of a servo into that of another in its place, from three readings.")
    .addArgument(modelArgument())
    .requiredOption("--servo <name>", "the servo, as the plan names it")
    .option(
      "--reading <us=deg...>",
      "the new servo's pulses, each with the deflection or throw (29mm): 1850=0 1500=26.5 1190=43",
      addReading,
    )
    .addOption(formatOption())
    .addOption(readsOnly())
    .action(async (model: string, options: Omit<SwapArgs, "model">) => {
      const { swapCommand } = await import("./swap-command.ts");
      done(await swapCommand({ model, ...options }, io));
    });
  command("radio", "Turn readings at the receiver into the radio of a model.")
    .option(
      "--reading <percent=us...>",
      "what the radio shows, and the pulse read; three or more: -100=988 0=1500 100=2012",
      addPlainReading,
    )
    .option("--csv <file>", "readings from a file, percent and pulse on each line")
    .option("--doubt <us>", "half-width of the doubt of one reading", parsePositive, 1)
    .option("--name <name>", "what to call the radio", "measured set")
    .option("--step <percent>", "smallest step that the radio shows; always to be given", parsePositive)
    .option("--reach <percent>", "largest percent (default: as far as the pulse followed)", parsePositive)
    .addOption(
      new Option(
        "--end-points <kind>",
        "what limits do to the output: cut or stretch it; always to be given",
      ).choices(["clamp", "scale"]),
    )
    .option("--curve-points <number>", "points of an output's curve (default: no curve)", parseUpTo(100))
    .addOption(
      new Option("--format <format>", "for a model file, or as JSON for port")
        .choices(["text", "json"])
        .default("text"),
    )
    .action(async (options: RadioArgs) => {
      const { radioCommand } = await import("./radio-command.ts");
      done(await radioCommand(options, io));
    });
}
