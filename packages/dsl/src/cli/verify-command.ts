import { asBuiltTemplate, canonicalJson, compile, verify } from "@hingeline/core";
import { loadAsBuilt } from "../load/load-as-built.ts";
import { loadModel } from "../load/load-model.ts";
import { measuredDeflection } from "../render/measured-deflection.ts";
import { verifyToText } from "../render/verify-to-text.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import { frameFindings } from "./frame-findings.ts";
import type { Io } from "./io.ts";
import { tellFindings, tellProblem, tellUnusable, wantsColour } from "./tell.ts";

export interface VerifyArgs {
  readonly model: string;
  /** The file of readings; left out only with `template`. */
  readonly asBuilt?: string;
  /** Reads a code file without running it. */
  readonly static?: boolean;
  readonly format: "text" | "json";
  /** Prints a file to fill in instead. */
  readonly template?: boolean;
}

/**
 * Holds as-built readings against a model's plan, or prints a file of readings to fill in. A plan with errors is not verified: it must
 * not be entered.
 */
export async function verifyCommand(
  { model, asBuilt: path, format, template = false, static: isStatic = false }: VerifyArgs,
  io: Io,
): Promise<number> {
  if (template === (path !== undefined))
    return tellUnusable(
      template
        ? "--template prints a file to fill in; it takes no as-built file."
        : "verify takes a file of as-built readings; --template prints one to fill in.",
      io,
    );
  if (model === "-" && path === "-") return tellUnusable("Only one of the two can be standard input.", io);
  const loaded = await loadModel(model, io, { runs: !isStatic });
  if ("problem" in loaded) return tellProblem(loaded.problem, io);
  if ("findings" in loaded)
    return tellFindings(loaded.findings, io, await frameFindings(model, loaded.findings, io));
  const plan = compile(loaded.model);
  if (plan.findings.some(({ severity }) => severity === "error")) {
    tellFindings(plan.findings, io, await frameFindings(model, plan.findings, io));
    io.stderr.write("\nA plan with errors must not be entered, so there is nothing to verify.\n");
    return exitFindings;
  }
  if (path === undefined) {
    io.stdout.write(`${JSON.stringify(asBuiltTemplate(plan), undefined, 2)}\n`);
    return exitDone;
  }
  const read = await loadAsBuilt(path, io);
  if ("problem" in read) return tellUnusable(read.problem.message, io);
  const verification = verify(plan, read.asBuilt, { deflectionAt: measuredDeflection(loaded.model) });
  io.stdout.write(
    format === "json"
      ? `${canonicalJson(verification)}\n`
      : verifyToText(verification, plan, read.asBuilt, { colour: wantsColour(io.stdout, io) }),
  );
  return verification.passed ? exitDone : exitFindings;
}
