import { canonicalJson, hasErrors, portModel } from "@hingeline/core";
import { loadModel } from "../load/load-model.ts";
import { loadRadio } from "../load/load-radio.ts";
import { portToText } from "../render/port-to-text.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { refuseStdinTwice, tellFindings, tellProblem, wantsColour } from "./tell.ts";

export interface PortArgs {
  readonly model: string;
  /** A radio as JSON, or another model, whose radio counts. */
  readonly radio: string;
  readonly format: "text" | "json";
  /** Reads code files without running them. */
  readonly static?: boolean;
}

/** Prints a model's plan on another radio beside the plan on its own, and what is no longer reachable. */
export async function portCommand(
  { model, radio, format, static: isStatic = false }: PortArgs,
  io: Io,
): Promise<number> {
  const twice = refuseStdinTwice(model, radio, io);
  if (twice !== undefined) return twice;
  const loaded = await loadModel(model, io, { runs: !isStatic });
  if ("problem" in loaded) return tellProblem(loaded.problem, io);
  if ("findings" in loaded) return tellFindings(model, loaded.findings, io);
  const other = await loadRadio(radio, loaded.model, io, { runs: !isStatic });
  if ("problem" in other) return tellProblem(other.problem, io);
  if ("findings" in other) return tellFindings(radio, other.findings, io);
  const port = portModel(loaded.model, other.radio);
  const { plan, values, unreachable, remedies } = port;
  io.stdout.write(
    format === "json"
      ? `${canonicalJson({ plan, values, unreachable, remedies })}\n`
      : portToText(port, { colour: wantsColour(io.stdout, io) }),
  );
  return hasErrors(plan) ? exitFindings : exitDone;
}
