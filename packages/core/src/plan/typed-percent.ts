import type { PlanRadio, Position } from "./setup-plan.ts";

/** What is typed for a position on this radio: the percent where limits clamp, the share between them where they scale. */
export function typedPercent(
  { percent, sharePercent }: Omit<Position, "pulseUs">,
  { endPoints }: Pick<PlanRadio, "endPoints">,
): number {
  return endPoints === "scale" ? sharePercent : percent;
}
