import { documentProblem } from "./document-problem.ts";
import { findContradiction } from "./find-contradiction.ts";
import { planSchema } from "./plan-schema.ts";
import type { SetupPlan } from "./setup-plan.ts";

const kind = { name: "setup plan", either: "a text or a number" };

/**
 * `data` as a setup plan, or the first reason why it is none, in one sentence. Never throws. A plan without an error is held
 * against itself too: its values lie where its limits and safe pulses let them, and each percent gives the pulse beside it.
 */
export function parsePlan(data: unknown): { readonly plan: SetupPlan } | { readonly problem: string } {
  const parsed = planSchema.safeParse(data);
  if (!parsed.success) return { problem: documentProblem(parsed.error.issues[0], data, kind) };
  const problem = findContradiction(parsed.data);
  return problem === undefined ? { plan: parsed.data } : { problem };
}
