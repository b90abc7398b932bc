import type { PlanChannel } from "../setup-plan.ts";

/**
 * The pulse with every control at rest as it is entered. A matched side may have been rounded with its twin: what a selector's first
 * detent says goes before the channel's neutral.
 */
export function restUs({ settings, neutral }: PlanChannel): number {
  const first = settings.find(({ detent, when }) => detent !== undefined && when === undefined);
  return (first?.enter ?? neutral).pulseUs;
}
