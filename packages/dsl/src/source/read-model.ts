import { formatAddress, type Model } from "@hingeline/core";
import type { ts } from "ts-morph";
import { evaluate } from "./evaluate.ts";
import { locateIn } from "./locate.ts";
import { placeOf } from "./place-of.ts";
import type { Refusal, Source } from "./source.ts";
import { toPlain } from "./to-plain.ts";
import type { Traced } from "./traced.ts";

/** What a model file exports, or everything in it that keeps it from being read without running it. */
export type ReadData =
  | { readonly data: unknown; readonly root: Traced }
  | { readonly refusals: readonly [Refusal, ...Refusal[]] };

/**
 * The default export of a model file as plain data, the same that running it would give, to the byte; whether it is a model is
 * another question. Runs nothing but hingeline's own functions; depth, size and steps are bounded.
 */
export function readData(source: Source): ReadData {
  const [fault, ...faults] = source.refusals;
  if (fault !== undefined) return { refusals: [fault, ...faults] };
  const evaluation = evaluate(source);
  evaluation.readEverything();
  const root = evaluation.readDefault();
  const plain = root === undefined ? undefined : toPlain(root, evaluation.spend);
  const [first, ...others] = evaluation.refusals;
  if (first !== undefined) return { refusals: [first, ...others] };
  if (root === undefined || plain === undefined)
    return refuseAt(source, "The file has no default export.", 'Write "export default model(...)".');
  if ("lacking" in plain)
    return refuseAt(
      plain.lacking,
      plain.why ?? "This is not read without running the model.",
      "Write it as data.",
    );
  return { data: plain.value, root };
}

/** The model in a model file, read without running it; or what is not read or no model, each at its place. */
export async function readModel(
  source: Source,
): Promise<{ readonly model: Model } | { readonly refusals: readonly [Refusal, ...Refusal[]] }> {
  const read = readData(source);
  if ("refusals" in read) return read;
  // The schema is large, and a file that is refused has no need of it.
  const { modelFindings, parseModel } = await import("@hingeline/core/schema");
  const parsed = parseModel(read.data);
  if ("model" in parsed) return parsed;
  const [first, ...others] = modelFindings(parsed.problems).map(({ message, do: remedy }, index): Refusal => {
    const address = parsed.problems[index]?.address ?? [];
    const at = formatAddress(address);
    return {
      place: locateIn(read.root, address),
      what: at === "" ? message : `${at}: ${message}`,
      remedy,
    };
  });
  if (first === undefined) throw new Error("data that is no model has no problem");
  return { refusals: [first, ...others] };
}

function refuseAt(at: Source | ts.Node, what: string, remedy: string): ReadData {
  const node = "entry" in at ? at.files.get(at.entry)?.tree.endOfFileToken : at;
  if (node === undefined) throw new Error("a source without its model file has a refusal");
  return { refusals: [{ place: placeOf(node), what, remedy }] };
}
