import type { Finding } from "@hingeline/core";
import { findingsToText } from "../render/findings-to-text.ts";
import { visibleText } from "../render/visible-text.ts";
import { exitFindings, exitUnusable } from "./exit-code.ts";
import type { Io, Output } from "./io.ts";

/** Tells why a command could not do anything, in one sentence; returns its exit code. */
export function tellUnusable(message: string, io: Io): number {
  io.stderr.write(`hingeline: ${visibleText(message)}\n`);
  return exitUnusable;
}

/** Tells what is wrong with a model where there is no plan to print; returns its exit code. */
export function tellFindings(findings: readonly Finding[], io: Io): number {
  io.stderr.write(findingsToText(findings, { colour: wantsColour(io.stderr, io) }));
  return exitFindings;
}

/** Colour only on a terminal that can show it, and not where NO_COLOR (no-color.org) is set to anything. */
export function wantsColour(output: Output, { env }: Io): boolean {
  return output.isTerminal && (env.NO_COLOR ?? "") === "" && env.TERM !== "dumb";
}
