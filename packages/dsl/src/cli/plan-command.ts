import { compile, hasErrors } from "@hingeline/core";
import { loadModel } from "../load/load-model.ts";
import { countFindings } from "../render/findings-to-text.ts";
import { planToJson } from "../render/plan-to-json.ts";
import { planToText } from "../render/plan-to-text.ts";
import { sheetToMarkdown } from "../render/sheet/sheet-to-markdown.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import { frameFindings } from "./frame-findings.ts";
import type { Io } from "./io.ts";
import { refuseOut } from "./refuse-out.ts";
import { tellFindings, tellProblem, tellUnusable, wantsColour } from "./tell.ts";
import { refuseTypeFaults } from "./type-faults.ts";
import { writeOut } from "./write-out.ts";

export interface PlanArgs {
  readonly model: string;
  /** Reads a code file without running it. */
  readonly static?: boolean;
  readonly format: "text" | "json" | "markdown";
  /** JSON in lines instead of its canonical form. */
  readonly pretty?: boolean;
  /** File to write instead of standard output. */
  readonly out?: string;
}

/** Prints a model's setup plan or writes it to a file. A plan with an error is printed, but never written to a file; nor is one of a model that does not compile. */
export async function planCommand(
  { model, format, pretty = false, out, static: isStatic = false }: PlanArgs,
  io: Io,
): Promise<number> {
  const over = await refuseOut(out, [model], io);
  if (over !== undefined) return over;
  const unfit = out === undefined ? undefined : await refuseTypeFaults(model, out, io);
  if (unfit !== undefined) return unfit;
  const loaded = await loadModel(model, io, { runs: !isStatic });
  if ("problem" in loaded) return tellProblem(loaded.problem, io);
  if ("findings" in loaded) return tellFindings(model, loaded.findings, io);
  const plan = compile(loaded.model);
  const refused = hasErrors(plan);
  if (refused && out !== undefined) {
    await tellFindings(model, plan.findings, io);
    io.stderr.write(`\nNothing was written to ${out}.\n`);
    return exitFindings;
  }
  const colour = out === undefined && wantsColour(io.stdout, io);
  const frames = format === "text" ? await frameFindings(model, plan.findings, io) : undefined;
  const text = {
    text: () => planToText(plan, { colour, frames }),
    json: () => planToJson(plan, { pretty }),
    markdown: () => sheetToMarkdown(loaded.model, plan),
  }[format]();
  if (out === undefined) {
    io.stdout.write(text);
    return refused ? exitFindings : exitDone;
  }
  const problem = await writeOut(out, text, io);
  if (problem !== undefined) return tellUnusable(problem, io);
  io.stderr.write(`Wrote ${out}: ${countFindings(plan.findings)}.\n`);
  return exitDone;
}
