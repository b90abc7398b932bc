import { asBuiltTemplate, canonicalJson, verify } from "@hingeline/core";
import { loadAsBuilt } from "../load/load-as-built.ts";
import { measuredDeflection } from "../render/measured-deflection.ts";
import { verifyToText } from "../render/verify-to-text.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { loadSoundPlan } from "./load-sound-plan.ts";
import { refuseStdinTwice, tellUnusable, wantsColour } from "./tell.ts";

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
  const twice = refuseStdinTwice(model, path, io);
  if (twice !== undefined) return twice;
  const loaded = await loadSoundPlan(model, { runs: !isStatic, without: "there is nothing to verify" }, io);
  if ("exitCode" in loaded) return loaded.exitCode;
  const { plan } = loaded;
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
