import { formatAddress } from "../address/address.ts";
import type { AsBuilt } from "./as-built.ts";
import { asBuiltSchema } from "./as-built-schema.ts";

/** `data` as an as-built document, or the first reason why it is none, in one sentence. Never throws. */
export function parseAsBuilt(data: unknown): { readonly asBuilt: AsBuilt } | { readonly problem: string } {
  const parsed = asBuiltSchema.safeParse(data);
  if (parsed.success) return { asBuilt: parsed.data };
  const [issue] = parsed.error.issues;
  const at = formatAddress(
    (issue?.path ?? []).map((step) => (typeof step === "number" ? step : String(step))),
  );
  return {
    problem: `${at === "" ? "The document" : at} is not as an as-built file has it: ${issue?.message ?? "invalid"}.`,
  };
}
