import { Argument, Command, CommanderError, Option } from "commander";
import { addChangeCommands } from "./change-commands.ts";
import type { CheckArgs } from "./check-command.ts";
import type { DoubtArgs } from "./doubt-command.ts";
import { exitDone, exitUnusable } from "./exit-code.ts";
import type { InitArgs } from "./init-command.ts";
import type { Io } from "./io.ts";
import type { SheetArgs } from "./make-sheet.ts";
import type { MeasureArgs } from "./measure-command.ts";
import { parseCount, parseEnd, parseNumber, parsePositive, parseWhole } from "./parse-number.ts";
import type { PlanArgs } from "./plan-command.ts";
import type { SchemaArgs } from "./schema-command.ts";
import type { SizeArgs } from "./size-command.ts";
import { sizeOptions } from "./size-options.ts";
import { toldText } from "./told-text.ts";
import type { VerifyArgs } from "./verify-command.ts";

/**
 * Runs `hingeline` with the arguments behind its name and returns the exit code. Each command's file is loaded only when it
 * is called.
 */
export async function runProgram(args: readonly string[], io: Io): Promise<number> {
  let exitCode = exitDone;
  const program = describeProgram(io, (code) => {
    exitCode = code;
  });
  try {
    await program.parseAsync(readingsApart(args), { from: "user" });
    return exitCode;
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? exitDone : exitUnusable;
  }
}

/** The arguments with `--reading` before each reading that begins with a minus: after another one it would be taken for an option. */
function readingsApart(args: readonly string[]): string[] {
  return args.flatMap((arg, index) =>
    /^-[\d.]+=/.test(arg) && !/^--[^=]+$/.test(args[index - 1] ?? "") ? ["--reading", arg] : [arg],
  );
}

function describeProgram(io: Io, done: (exitCode: number) => void): Command {
  const program = new Command("hingeline")
    .description("Setup plans for the moving surfaces of radio-controlled models, from bench readings.")
    .usage("COMMAND [options]")
    .helpOption("-h, --help", "show this help")
    .option("-v, --version", "show the version")
    .helpCommand(false)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => io.stdout.write(text),
      writeErr: (text) => io.stderr.write(text),
      outputError: (text, write) => write(oneSentence(text, "hingeline --help")),
      getOutHelpWidth: () => 80,
      getErrHelpWidth: () => 80,
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    });
  // Read only when it is asked for.
  program.on("option:version", () => {
    io.stdout.write(`${io.version()}\n`);
    throw new CommanderError(exitDone, "commander.version", "");
  });
  const command = (name: string, description: string) =>
    program
      .command(name)
      .description(description)
      .helpOption("-h, --help", "show this help")
      .configureOutput({
        outputError: (text, write) => write(oneSentence(text, `hingeline ${name} --help`)),
      })
      .allowExcessArguments(false);

  command("plan", "Print the setup plan of a model.")
    .addArgument(modelArgument())
    .addOption(formatOption("markdown"))
    .option("--static", "read a code file without running it")
    .option("--pretty", "JSON in lines, instead of its canonical form")
    .option("--out <file>", "write to this file instead; a plan with errors is not written")
    .action(async (model: string, options: Omit<PlanArgs, "model">) => {
      const { planCommand } = await import("./plan-command.ts");
      done(await planCommand({ model, ...options }, io));
    });
  command("check", "Print the findings of a model, without the plan.")
    .addArgument(modelArgument())
    .addOption(formatOption("sarif"))
    .option("--static", "read a code file without running it")
    .option("--no-types", "do not type-check a .ts file first")
    .option("--notes", "show the notes too where there are errors")
    .option("--against <plan>", "fail too where this plan (JSON) is no longer the model's")
    .action(async (model: string, options: Omit<CheckArgs, "model">) => {
      const { checkCommand } = await import("./check-command.ts");
      done(await checkCommand({ model, ...options }, io));
    });
  command("doubt", "Print how sure each position is, and what makes it unsure.")
    .addArgument(modelArgument())
    .option("--surface <name>", "only this surface")
    .option("--control <name>", "only what this control does")
    .option("--detent <name>", "only this detent, as one short answer")
    .option("--stick <end>", "only this end of sticks, -1 or +1, as one short answer", parseEnd)
    .option("--simulate", "check it with draws by chance, until their result stands still")
    .option("--draws <number>", "so many draws instead, 2000 or more", parseWhole(2000, 10_000_000))
    .option(
      "--seed <number>",
      "where the draws begin; the same number gives the same draws (default: 1)",
      parseWhole(0, 1e15),
    )
    .addOption(formatOption())
    .option("--static", "read a code file without running it")
    .action(async (model: string, options: Omit<DoubtArgs, "model">) => {
      const { doubtCommand } = await import("./doubt-command.ts");
      done(await doubtCommand({ model, ...options }, io));
    });
  command("sheet", "Print the bench sheet of a model, with pictures.")
    .addArgument(modelArgument())
    .addOption(
      new Option("--format <format>", "how to print it").choices(["html", "markdown"]).default("html"),
    )
    .option("--surface <names...>", "only the pages that show these surfaces")
    .option("--pair <name>", "only this page, or the pages of this group")
    .option("--picture <name>", "one picture alone, as SVG")
    .option("--as-built <file>", "show these readings (JSON) and their verdicts in place of the blanks")
    .option("--static", "read a code file without running it")
    .option("--out <file>", "write to this file instead; a sheet with errors is not written")
    .option("--watch", "serve it on this computer and make it anew on every save")
    .action(async (model: string, options: Omit<SheetArgs, "model">) => {
      const { sheetCommand } = await import("./sheet-command.ts");
      done(await sheetCommand({ model, ...options }, io));
    });
  command("convert", "Turn one pulse into what is entered for it or back, with the arithmetic.")
    .argument("[model]", "a model whose radio counts (.ts, .json, or - for JSON on standard input)")
    .option("--pulse <us>", "the pulse to convert, microseconds", parseNumber)
    .option("--percent <percent>", "the percent to convert; the share, where that is entered", parseNumber)
    .option("--channel <number>", "with a model: the channel on which this is a position", parseCount)
    .option("--centre <us>", "without a model: the pulse at 0 percent", parsePositive)
    .option("--per100 <us>", "without a model: the pulse span of 100 percent", parsePositive)
    .option("--step <percent>", "without a model: the smallest step of a percent", parsePositive)
    .option("--reach <percent>", "without a model: the largest percent", parsePositive)
    .action(async (model: string | undefined, options: Readonly<Record<string, number>>) => {
      const { convertCommand } = await import("./convert-command.ts");
      done(await convertCommand({ ...(model === undefined ? {} : { model }), ...renamed(options) }, io));
    });
  const sizing = command(
    "size",
    "Find the arm and horn holes that give the wanted throw with the most grip.",
  );
  sizing.argument("[model]", "a model that has the servo (.ts, .json, or - for JSON on standard input)");
  for (const option of sizeOptions()) sizing.addOption(option);
  sizing.addOption(formatOption()).action(async (model: string | undefined, options: SizeArgs) => {
    const { sizeCommand } = await import("./size-command.ts");
    done(await sizeCommand({ ...options, ...(model === undefined ? {} : { model }) }, io));
  });
  command("verify", "Hold as-built readings against the plan of a model.")
    .addArgument(modelArgument())
    .argument("[as-built]", "the readings (JSON), or - for standard input")
    .addOption(formatOption())
    .option("--template", "print a file of readings to fill in")
    .option("--static", "read a code file without running it")
    .action(
      async (model: string, asBuilt: string | undefined, options: Omit<VerifyArgs, "model" | "asBuilt">) => {
        const { verifyCommand } = await import("./verify-command.ts");
        done(await verifyCommand({ model, ...(asBuilt === undefined ? {} : { asBuilt }), ...options }, io));
      },
    );
  addChangeCommands({ command, formatOption, modelArgument, done }, io);
  command("measure", "Lead through the bench readings and write them into the model file.")
    .argument("<model>", "a model file in code (.ts, .mts, .js, .mjs); it is read, not run")
    .option("--servo <names...>", "only these servos, in this order")
    .option("--script <file>", "take the answers from this file, one a line")
    .option("--csv <file>", "take the readings from this table: pulse, deflection, way")
    .option("--dry-run", "write nothing, only show what would change")
    .action(async (model: string, options: Omit<MeasureArgs, "model">) => {
      const { measureCommand } = await import("./measure-command.ts");
      done(await measureCommand({ model, ...options }, io));
    });
  command("schema", "Print the JSON Schema of a document.")
    .addArgument(new Argument("<document>", "which document").choices(["model", "plan", "as-built"]))
    .action(async (document: SchemaArgs["document"]) => {
      const { schemaCommand } = await import("./schema-command.ts");
      done(await schemaCommand({ document }, io));
    });
  command("init", "Print a model to begin with, or begin a file with it.")
    .argument("[file]", "a .ts file that does not exist yet")
    .option("--from <readings>", "make it of bench readings: a table (.csv) or .json")
    .action(async (file: string | undefined, options: Omit<InitArgs, "file">) => {
      const { initCommand } = await import("./init-command.ts");
      done(await initCommand({ ...options, ...(file === undefined ? {} : { file }) }, io));
    });
  return program;
}

function modelArgument(): Argument {
  return new Argument(
    "<model>",
    "a model file (.ts, .mts, .js, .mjs, .json), or - for JSON on standard input",
  );
}

function formatOption(...more: readonly string[]): Option {
  return new Option("--format <format>", "how to print it")
    .choices(["text", "json", ...more])
    .default("text");
}

/** Options under the names with units that the command takes them by. */
function renamed(options: Readonly<Record<string, number>>): Readonly<Record<string, number>> {
  const names: Readonly<Record<string, string>> = {
    pulse: "pulseUs",
    percent: "percent",
    centre: "centreUs",
    per100: "per100Us",
    step: "stepPercent",
    reach: "reachPercent",
  };
  return Object.fromEntries(Object.entries(options).map(([key, value]) => [names[key] ?? key, value]));
}

/** Commander's message as one of ours, with the command that shows what is meant. */
function oneSentence(text: string, help: string): string {
  const sentence = text
    .trim()
    .replace(/^error: /, "")
    .replaceAll(/\s+/g, " ");
  return toldText(`${sentence}${/[.?)]$/.test(sentence) ? "" : "."} See ${help}.`);
}
