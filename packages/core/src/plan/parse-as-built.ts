import type { AsBuilt } from "./as-built.ts";
import { asBuiltSchema } from "./as-built-schema.ts";
import { documentProblem } from "./document-problem.ts";

const kind = { name: "as-built file", either: 'a number or "not measured"' };

/** `data` as an as-built document, or the first reason why it is none, in one sentence. Never throws. */
export function parseAsBuilt(data: unknown): { readonly asBuilt: AsBuilt } | { readonly problem: string } {
  const parsed = asBuiltSchema.safeParse(data);
  if (parsed.success) return { asBuilt: parsed.data };
  return { problem: documentProblem(parsed.error.issues[0], data, kind) };
}
