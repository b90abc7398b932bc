import type { PlanDoubt } from "../plan/setup-plan.ts";
import { expand } from "../uncertainty/expand.ts";
import type { Propagated } from "../uncertainty/propagate.ts";
import { us } from "../units/quantity.ts";
import { positionDoubt } from "./doubts.ts";
import type { EnteredWish } from "./enter-wishes.ts";
import type { Output } from "./output.ts";
import type { Rig } from "./rig-servos.ts";

/** The doubt of where a servo puts its surface at a pulse; undefined where the bench knows no degrees. */
export function doubtAt(
  { response, readingDoubt, settingDoubt }: Rig,
  pulseUs: number,
): Propagated | undefined {
  const slope = response?.slopeAt(us(pulseUs));
  return slope === undefined ? undefined : positionDoubt(readingDoubt, settingDoubt, slope);
}

/** The setting of a channel that is least sure, and what makes it so, the largest cause first. */
export function planDoubt(
  { members: [{ rig }] }: Output,
  wishes: readonly EnteredWish[],
): PlanDoubt | undefined {
  let worst: PlanDoubt | undefined;
  for (const { wish, entry } of wishes) {
    const doubt = doubtAt(rig, entry.pulseUs);
    if (doubt === undefined || expand(doubt.standard) <= (worst?.uncertaintyDeg ?? 0)) continue;
    const { control, detent, stick } = wish;
    worst = {
      control,
      ...(detent === undefined ? {} : { detent }),
      ...(stick === undefined ? {} : { stick }),
      uncertaintyDeg: expand(doubt.standard),
      budget: doubt.budget.map(({ name, standard, share }) => ({
        cause: name,
        standardDeg: standard,
        share,
      })),
    };
  }
  return worst;
}
