import type { Finding } from "@hingeline/core";
import type { LoadProblem } from "../load/load-problem.ts";
import { codeFrame } from "../render/code-frame.ts";
import { type Frames, findingsToText } from "../render/findings-to-text.ts";
import { visibleText } from "../render/visible-text.ts";
import { hang } from "../render/wrap-text.ts";
import { exitFindings, exitUnusable } from "./exit-code.ts";
import { frameFindings } from "./frame-findings.ts";
import type { Io, Output } from "./io.ts";
import { toldText } from "./told-text.ts";

/** Tells why a command could not do anything; returns its exit code. */
export function tellUnusable(message: string, io: Io): number {
  io.stderr.write(toldText(message));
  return exitUnusable;
}

/** Refuses two arguments of which both are standard input, which can be read only once: the exit code; undefined where they are not. */
export function refuseStdinTwice(a: string | undefined, b: string | undefined, io: Io): number | undefined {
  return a === "-" && b === "-"
    ? tellUnusable("Only one of the two can come from standard input.", io)
    : undefined;
}

/** Tells why a file gives no model, and shows what in it is not read; returns its exit code. */
export function tellProblem({ message, refusals = [] }: LoadProblem, io: Io): number {
  const exitCode = tellUnusable(message, io);
  for (const { place, what, remedy } of refusals) {
    const lines = ["", ...hang("  ", visibleText(what), 80), ...hang("  -> ", visibleText(remedy), 80)];
    io.stderr.write(`${[...lines, ...codeFrame(place)].join("\n")}\n`);
  }
  return exitCode;
}

/** Tells what is wrong with the model in a file, beside the lines of it, where there is no plan to print; returns its exit code. */
export async function tellFindings(path: string, findings: readonly Finding[], io: Io): Promise<number> {
  return tellFramed(findings, await frameFindings(path, findings, io), io);
}

/** As tellFindings, with lines that are known already. */
export function tellFramed(findings: readonly Finding[], frames: Frames, io: Io): number {
  io.stderr.write(findingsToText(findings, { colour: wantsColour(io.stderr, io), frames }));
  return exitFindings;
}

/** Colour only on a terminal that can show it, and not where NO_COLOR (no-color.org) is set to anything. */
export function wantsColour(output: Output, { env }: Io): boolean {
  return output.isTerminal && (env.NO_COLOR ?? "") === "" && env.TERM !== "dumb";
}
