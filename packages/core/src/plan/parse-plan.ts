import { formatAddress } from "../address/address.ts";
import { planSchema } from "./plan-schema.ts";
import type { SetupPlan } from "./setup-plan.ts";

/** `data` as a setup plan, or the first reason why it is none, in one sentence. Never throws. */
export function parsePlan(data: unknown): { readonly plan: SetupPlan } | { readonly problem: string } {
  const parsed = planSchema.safeParse(data);
  if (parsed.success) return { plan: parsed.data };
  const [issue] = parsed.error.issues;
  const at = formatAddress(
    (issue?.path ?? []).map((step) => (typeof step === "number" ? step : String(step))),
  );
  return {
    problem: `${at === "" ? "The document" : at} is not as a setup plan has it: ${issue?.message ?? "invalid"}.`,
  };
}
