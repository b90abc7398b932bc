import type { AsBuilt } from "./as-built.ts";
import { asBuiltProblem } from "./as-built-problem.ts";
import { asBuiltSchema } from "./as-built-schema.ts";

/** `data` as an as-built document, or the first reason why it is none, in one sentence. Never throws. */
export function parseAsBuilt(data: unknown): { readonly asBuilt: AsBuilt } | { readonly problem: string } {
  const parsed = asBuiltSchema.safeParse(data);
  if (parsed.success) return { asBuilt: parsed.data };
  const [issue] = parsed.error.issues;
  return { problem: issue === undefined ? "it is not understood." : asBuiltProblem(issue, data) };
}
