import type { Radio } from "../model/model.ts";
import type { Setting } from "../plan/setup-plan.ts";
import { describeWish } from "./list-wishes.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";

/** The largest value that a channel's settings add to its rest, where a radio that clamps cannot take it. */
export function remarkAdds(
  { members }: Output,
  settings: readonly Setting[],
  radio: Radio,
  report: Report,
): void {
  if (radio.endPoints === "scale") return;
  let largest: Setting | undefined;
  for (const setting of settings)
    if (Math.abs(setting.enter.addPercent) > Math.abs(largest?.enter.addPercent ?? radio.reach))
      largest = setting;
  if (largest === undefined) return;
  const { id, address } = members[0].rig.named;
  report("adds-past-reach", address, {
    what: `${id}: ${describeWish(largest)}`,
    addPercent: largest.enter.addPercent,
    reachPercent: radio.reach,
  });
}
