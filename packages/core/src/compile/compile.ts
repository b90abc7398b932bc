import type { Model } from "../model/model.ts";
import type { SetupPlan } from "../plan/setup-plan.ts";
import { draftPlan } from "./draft-plan.ts";
import { orderOfEntry } from "./order-of-entry.ts";

/**
 * A model's setup plan. Never throws for what a builder can get wrong: everything found is in `findings` of the plan, errors first,
 * and what could not be placed is left out of it. A plan with an error must not be entered and has no procedure.
 */
export function compile(model: Model): SetupPlan {
  const plan = draftPlan(model);
  return { ...plan, procedure: orderOfEntry(plan) };
}
