import { describe, expect, test } from "vitest";
import { fakeIo } from "./fake-io.ts";
import { run } from "./run.ts";

/** Every command that the help names. */
async function commandsOf(): Promise<readonly string[]> {
  const { stdout } = await run(["--help"]);
  const [, list = ""] = stdout.split("\nCommands:\n");
  return [...list.matchAll(/^ {2}(\w+)/gm)].map(([, name = ""]) => name);
}

describe("help", () => {
  test("of hingeline names every command", async () => {
    const { exitCode, stdout, stderr } = await run(["--help"]);
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout).toMatchInlineSnapshot(`
      "Usage: hingeline COMMAND [options]

      Setup plans for the moving surfaces of radio-controlled models, from bench
      readings.

      Options:
        -v, --version                        show the version
        -h, --help                           show this help

      Commands:
        plan [options] <model>               Print the setup plan of a model.
        check [options] <model>              Print the findings of a model, without
                                             the plan.
        doubt [options] <model>              Print how sure each position is, and what
                                             makes it unsure.
        sheet [options] <model>              Print the bench sheet of a model, with
                                             pictures.
        convert [options] [model]            Turn one pulse into what is entered for
                                             it or back, with the arithmetic.
        size [options] [model]               Find the arm and horn holes that give the
                                             wanted throw with the most grip.
        verify [options] <model> [as-built]  Hold as-built readings against the plan
                                             of a model.
        diff [options] <before> <after>      Print what differs between two models or
                                             plans, and what to verify again.
        port [options] <model> <radio>       Print a model's plan on another radio,
                                             beside the plan on its own.
        swap [options] <model>               Turn the bench of a servo into that of
                                             another in its place, from three
                                             readings.
        radio [options]                      Turn readings at the receiver into the
                                             radio of a model.
        measure [options] <model>            Lead through the bench readings and write
                                             them into the model file.
        schema <document>                    Print the JSON Schema of a document.
        init [options] [file]                Print a model to begin with, or begin a
                                             file with it.
      "
    `);
  });

  test("of each command names its arguments and options", async () => {
    const helps: string[] = [];
    const commands = await commandsOf();
    expect(commands).toHaveLength(14);
    for (const command of commands) {
      const { exitCode, stdout, stderr } = await run([command, "--help"]);
      expect([exitCode, stderr]).toEqual([0, ""]);
      helps.push(stdout);
    }
    expect(helps.join("\n")).toMatchInlineSnapshot(`
      "Usage: hingeline plan [options] <model>

      Print the setup plan of a model.

      Arguments:
        model              a model file (.ts, .mts, .js, .mjs, .json), or - for JSON
                           on standard input

      Options:
        --format <format>  how to print it (choices: "text", "json", "markdown",
                           default: "text")
        --static           read a code file without running it
        --pretty           JSON in lines, instead of its canonical form
        --out <file>       write to this file instead; a plan with errors is not
                           written
        -h, --help         show this help

      Usage: hingeline check [options] <model>

      Print the findings of a model, without the plan.

      Arguments:
        model              a model file (.ts, .mts, .js, .mjs, .json), or - for JSON
                           on standard input

      Options:
        --format <format>  how to print it (choices: "text", "json", "sarif", default:
                           "text")
        --static           read a code file without running it
        --no-types         do not type-check a .ts file first
        --notes            show the notes too where there are errors
        --against <plan>   fail too where this plan (JSON) is no longer the model's
        -h, --help         show this help

      Usage: hingeline doubt [options] <model>

      Print how sure each position is, and what makes it unsure.

      Arguments:
        model              a model file (.ts, .mts, .js, .mjs, .json), or - for JSON
                           on standard input

      Options:
        --surface <name>   only this surface
        --control <name>   only what this control does
        --detent <name>    only this detent, as one short answer
        --stick <end>      only this end of sticks, -1 or +1, as one short answer
        --simulate         check it with draws by chance, until their result stands
                           still
        --draws <number>   so many draws instead, 2000 or more
        --seed <number>    where the draws begin; the same number gives the same draws
                           (default: 1)
        --format <format>  how to print it (choices: "text", "json", default: "text")
        --static           read a code file without running it
        -h, --help         show this help

      Usage: hingeline sheet [options] <model>

      Print the bench sheet of a model, with pictures.

      Arguments:
        model                 a model file (.ts, .mts, .js, .mjs, .json), or - for
                              JSON on standard input

      Options:
        --format <format>     how to print it (choices: "html", "markdown", default:
                              "html")
        --surface <names...>  only the pages that show these surfaces
        --pair <name>         only this page, or the pages of this group
        --picture <name>      one picture alone, as SVG
        --as-built <file>     show these readings (JSON) and their verdicts in place
                              of the blanks
        --static              read a code file without running it
        --out <file>          write to this file instead; a sheet with errors is not
                              written
        --watch               serve it on this computer and make it anew on every save
        -h, --help            show this help

      Usage: hingeline convert [options] [model]

      Turn one pulse into what is entered for it or back, with the arithmetic.

      Arguments:
        model                a model whose radio counts (.ts, .json, or - for JSON on
                             standard input)

      Options:
        --pulse <us>         the pulse to convert, microseconds
        --percent <percent>  the percent to convert; the share, where that is entered
        --channel <number>   with a model: the channel on which this is a position
        --centre <us>        without a model: the pulse at 0 percent
        --per100 <us>        without a model: the pulse span of 100 percent
        --step <percent>     without a model: the smallest step of a percent
        --reach <percent>    without a model: the largest percent
        -h, --help           show this help

      Usage: hingeline size [options] [model]

      Find the arm and horn holes that give the wanted throw with the most grip.

      Arguments:
        model                  a model that has the servo (.ts, .json, or - for JSON
                               on standard input)

      Options:
        --servo <name>         with a model: the servo from which to take what is not
                               given here
        --base <mm>            from the servo's shaft aft to the hinge
        --rise <mm>            from the shaft up to the hinge, negative if it lies
                               below
        --up <deg>             deflection to reach, trailing edge up
        --down <deg>           deflection to reach, trailing edge down
        --arm-holes <mm,...>   holes of the servo's arm, from its shaft
        --horn-holes <mm,...>  holes of the horn, from the hinge
        --teeth <number>       teeth of the shaft: the arm can stand at any
        --arm-at <deg,...>     angles of the arm with the servo at its middle, from
                               aft (0) through up (90); with --teeth, one of them
                               (default with --teeth: 90)
        --horn-at <deg,...>    angles of the horn with the surface level (default:
                               90,-90)
        --level <deg,...>      what the servo may be turned from its middle at level
                               (default: 0)
        --rotation <deg>       what the servo turns a microsecond
        --travel <deg>         what the servo turns to either side of its middle
        --least-angle <deg>    least between the rod and arm or horn (default: 20)
        --even <weight>        how much as much servo travel up as down counts, 0 to
                               10 (default: 0.5)
        --most <number>        how many to print (default: 10)
        --format <format>      how to print it (choices: "text", "json", default:
                               "text")
        -h, --help             show this help

      Usage: hingeline verify [options] <model> [as-built]

      Hold as-built readings against the plan of a model.

      Arguments:
        model              a model file (.ts, .mts, .js, .mjs, .json), or - for JSON
                           on standard input
        as-built           the readings (JSON), or - for standard input

      Options:
        --format <format>  how to print it (choices: "text", "json", default: "text")
        --template         print a file of readings to fill in
        --static           read a code file without running it
        -h, --help         show this help

      Usage: hingeline diff [options] <before> <after>

      Print what differs between two models or plans, and what to verify again.

      Arguments:
        before             a model file, or a plan as JSON, or - for standard input
        after              the same

      Options:
        --format <format>  how to print it (choices: "text", "json", default: "text")
        --procedure        add the order in which to enter the changes
        --exit-code        exit with 1 where something differs (default: 0 whenever it
                           is done)
        --static           read a code file without running it
        -h, --help         show this help

      Usage: hingeline port [options] <model> <radio>

      Print a model's plan on another radio, beside the plan on its own.

      Arguments:
        model              a model file (.ts, .mts, .js, .mjs, .json), or - for JSON
                           on standard input
        radio              a radio as JSON (what radio prints), or a model file whose
                           radio counts

      Options:
        --format <format>  how to print it (choices: "text", "json", default: "text")
        --static           read a code file without running it
        -h, --help         show this help

      Usage: hingeline swap [options] <model>

      Turn the bench of a servo into that of another in its place, from three
      readings.

      Arguments:
        model                  a model file (.ts, .mts, .js, .mjs, .json), or - for
                               JSON on standard input

      Options:
        --servo <name>         the servo, as the plan names it
        --reading <us=deg...>  the new servo's pulses, each with the deflection or
                               throw (29mm): 1850=0 1500=26.5 1190=43
        --format <format>      how to print it (choices: "text", "json", default:
                               "text")
        --static               read a code file without running it
        -h, --help             show this help

      Usage: hingeline radio [options]

      Turn readings at the receiver into the radio of a model.

      Options:
        --reading <percent=us...>  what the radio shows, and the pulse read; three or
                                   more: -100=988 0=1500 100=2012
        --csv <file>               readings from a file, percent and pulse on each
                                   line
        --doubt <us>               half-width of the doubt of one reading (default: 1)
        --name <name>              what to call the radio (default: "measured set")
        --step <percent>           smallest step that the radio shows; always to be
                                   given
        --reach <percent>          largest percent (default: as far as the pulse
                                   followed)
        --end-points <kind>        what limits do to the output: cut or stretch it;
                                   always to be given (choices: "clamp", "scale")
        --curve-points <number>    points of an output's curve (default: no curve)
        --format <format>          for a model file, or as JSON for port (choices:
                                   "text", "json", default: "text")
        -h, --help                 show this help

      Usage: hingeline measure [options] <model>

      Lead through the bench readings and write them into the model file.

      Arguments:
        model               a model file in code (.ts, .mts, .js, .mjs); it is read,
                            not run

      Options:
        --servo <names...>  only these servos, in this order
        --script <file>     take the answers from this file, one a line
        --csv <file>        take the readings from this table: pulse, deflection, way
        --dry-run           write nothing, only show what would change
        -h, --help          show this help

      Usage: hingeline schema [options] <document>

      Print the JSON Schema of a document.

      Arguments:
        document    which document (choices: "model", "plan", "as-built")

      Options:
        -h, --help  show this help

      Usage: hingeline init [options] [file]

      Print a model to begin with, or begin a file with it.

      Arguments:
        file               a .ts file that does not exist yet

      Options:
        --from <readings>  make it of bench readings: a table (.csv) or .json
        -h, --help         show this help
      "
    `);
  });

  test("fits into 80 columns", async () => {
    for (const command of [[], ...(await commandsOf()).map((name) => [name])]) {
      const { stdout } = await run([...command, "--help"]);
      expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
    }
  });
});

test("--version prints the version alone", async () => {
  expect(await run(["--version"])).toEqual({ exitCode: 0, stdout: "1.2.3\n", stderr: "" });
});

test("no command prints the help to standard error and is wrong usage", async () => {
  const { exitCode, stdout, stderr } = await run([]);
  expect([exitCode, stdout]).toEqual([2, ""]);
  expect(stderr).toBe((await run(["--help"])).stdout);
});

test.each([
  [["pln", "a.ts"], "hingeline: unknown command 'pln' (Did you mean plan?) See hingeline --help.\n"],
  [["plan"], "hingeline: missing required argument 'model'. See hingeline plan --help.\n"],
  [
    ["plan", "a.ts", "--fromat", "json"],
    "hingeline: unknown option '--fromat' (Did you mean --format?) See hingeline plan --help.\n",
  ],
  [
    ["plan", "a.ts", "--format", "yaml"],
    "hingeline: option '--format <format>' argument 'yaml' is invalid. Allowed choices are text, json, markdown. See hingeline plan --help.\n",
  ],
  [
    ["plan", "a.ts", "--out"],
    "hingeline: option '--out <file>' argument missing. See hingeline plan --help.\n",
  ],
  [
    ["plan", "a.ts", "b.ts"],
    "hingeline: too many arguments for 'plan'. Expected 1 argument but got 2. See hingeline plan --help.\n",
  ],
  [
    ["schema", "radio"],
    "hingeline: command-argument value 'radio' is invalid for argument 'document'. Allowed choices are model, plan, as-built. See hingeline schema --help.\n",
  ],
  [
    ["convert", "--pulse", "fast"],
    "hingeline: option '--pulse <us>' argument 'fast' is invalid. It should be a plain number, such as 72.7. See hingeline convert --help.\n",
  ],
  [
    ["pl\u001b[31man\u202e"],
    "hingeline: unknown command 'pl\\u{001B}[31man\\u{202E}'. See hingeline --help.\n",
  ],
])("%j is wrong usage, told in one sentence, at 80 columns", async (args, stderr) => {
  const io = fakeIo();
  expect(await run(args, io)).toEqual({ exitCode: 2, stdout: "", stderr });
  expect(io.printed.stderr.split("\n").filter((line) => line.length > 80)).toEqual([]);
});
