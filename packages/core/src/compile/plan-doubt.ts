import type { DoubtCause, PlanDoubt } from "../plan/setup-plan.ts";
import { expand } from "../uncertainty/expand.ts";
import type { Propagated } from "../uncertainty/propagate.ts";
import type { EnteredWish } from "./enter-wishes.ts";
import type { Output } from "./output.ts";
import { doubtAt, standardAt } from "./position-doubt.ts";
import type { Rig } from "./rig-servos.ts";

/** The causes of a position's doubt, each with what was assumed of it. */
export function causesOf({ assumed }: Rig, { budget }: Propagated): DoubtCause[] {
  return budget.map(({ name, standard, share }) => {
    const taken = assumed.get(name);
    return { cause: name, standardDeg: standard, share, ...(taken === undefined ? {} : { assumed: taken }) };
  });
}

/** The setting of a channel that is least sure, and what makes it so, the largest cause first. */
export function planDoubt({ members }: Output, wishes: readonly EnteredWish[]): PlanDoubt | undefined {
  let worst: { readonly rig: Rig; readonly entered: EnteredWish; readonly standard: number } | undefined;
  for (const { rig } of members)
    for (const entered of wishes) {
      const standard = standardAt(rig, entered.entry.pulseUs) ?? 0;
      if (standard > (worst?.standard ?? 0)) worst = { rig, entered, standard };
    }
  const doubt = worst && doubtAt(worst.rig, worst.entered.entry.pulseUs);
  if (worst === undefined || doubt === undefined) return undefined;
  const { rig, entered } = worst;
  const { control, detent, stick } = entered.wish;
  return {
    control,
    ...(detent === undefined ? {} : { detent }),
    ...(stick === undefined ? {} : { stick }),
    uncertaintyDeg: expand(worst.standard),
    budget: causesOf(rig, doubt),
  };
}
