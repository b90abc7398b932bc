import { canonicalJson, deg, mm, type Reading, swapServo, us } from "@hingeline/core";
import { loadModel } from "../load/load-model.ts";
import { swapProblemText, swapToText } from "../render/swap-to-text.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import type { ReadPair } from "./parse-reading.ts";
import { tellFindings, tellProblem, tellUnusable } from "./tell.ts";

export interface SwapArgs {
  readonly model: string;
  /** The servo's name in the plan. */
  readonly servo: string;
  /** Pulse of the new servo, and the deflection or throw read at it. */
  readonly reading?: readonly ReadPair[];
  readonly format: "text" | "json";
  /** Reads a code file without running it. */
  readonly static?: boolean;
}

/** Prints what the bench of a servo becomes with another servo in its place, or why that cannot be told from these readings. */
export async function swapCommand(
  { model, servo, reading = [], format, static: isStatic = false }: SwapArgs,
  io: Io,
): Promise<number> {
  const loaded = await loadModel(model, io, { runs: !isStatic });
  if ("problem" in loaded) return tellProblem(loaded.problem, io);
  if ("findings" in loaded) return tellFindings(model, loaded.findings, io);
  const read = reading.map(
    ({ first, second, unit }): Reading => [
      us(first),
      unit === "mm" ? { kind: "throw", mm: mm(second) } : deg(second),
    ],
  );
  const swap = swapServo(loaded.model, servo, read);
  if (swap.kind !== "mapped") return tellUnusable(swapProblemText(swap), io);
  io.stdout.write(format === "json" ? `${canonicalJson(swap)}\n` : swapToText(swap, read));
  return swap.map.accepted ? exitDone : exitFindings;
}
