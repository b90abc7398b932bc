import { checkTypes, type TypeFinding } from "../load/check-types.ts";
import { codeFrame } from "../render/code-frame.ts";
import type { Frames } from "../render/findings-to-text.ts";
import type { Io } from "./io.ts";
import { tellFramed } from "./tell.ts";

/** The lines of the faults; their places stand at their heads. */
export function framesOf(faults: readonly TypeFinding[]): Frames {
  return new Map(faults.map(({ finding, place }) => [finding.at, codeFrame(place).slice(-2)]));
}

/**
 * Tells why a model does not compile, and that the file was not written: what is written is acted on, and a figure in a wrong unit would
 * make it untrue. The exit code; undefined where the model compiles.
 */
export async function refuseTypeFaults(model: string, out: string, io: Io): Promise<number | undefined> {
  const faults = await checkTypes(model, io);
  if (faults.length === 0) return undefined;
  const exitCode = tellFramed(
    faults.map(({ finding }) => finding),
    framesOf(faults),
    io,
  );
  io.stderr.write(`\nNothing was written to ${out}.\n`);
  return exitCode;
}
