import type { Model } from "../model/model.ts";
import { modelFindings } from "../model/model-findings.ts";
import { parseModel } from "../model/parse-model.ts";
import type { SetupPlan } from "../plan/setup-plan.ts";
import { assemblePlan } from "./assemble-plan.ts";
import { draftPlan } from "./draft-plan.ts";
import { orderOfEntry } from "./order-of-entry.ts";

const nothing = { channels: [], matches: [], gangs: [] } as const;

/**
 * A model's setup plan. Never throws for what a builder can get wrong: everything found is in `findings` of the plan, errors first,
 * and what could not be placed is left out of it. A plan with an error must not be entered and has no procedure; of a model that
 * `parseModel` refuses (a guard below 0, a channel 0) it has no channels either.
 */
export function compile(model: Model): SetupPlan {
  const parsed = parseModel(model);
  if ("problems" in parsed)
    return { ...assemblePlan(model, nothing, modelFindings(parsed.problems)), procedure: [] };
  const plan = draftPlan(parsed.model);
  return { ...plan, procedure: orderOfEntry(plan) };
}
