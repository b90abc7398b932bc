import type { AsBuilt } from "../as-built.ts";
import type { SetupPlan } from "../setup-plan.ts";
import { namePlace, settingKey } from "./place-words.ts";

/** What an as-built file states that the plan does not have, or states twice, one sentence each: such readings are held against nothing. */
export function findStrays(plan: SetupPlan, { model, channels }: AsBuilt): readonly string[] {
  const seen = new Set<number>();
  const wrongModel =
    model === plan.model ? [] : [`The file is of the model ${model}, the plan of ${plan.model}.`];
  const strays = channels.flatMap(({ channel, settings = [] }) => {
    const planned = plan.channels.find((one) => one.channel === channel);
    if (planned === undefined) return [`Channel ${channel} is not in the plan.`];
    if (seen.has(channel)) return [`Channel ${channel} stands twice in the file; only the first was used.`];
    seen.add(channel);
    const known = new Set(planned.settings.map(settingKey));
    const met = new Set<string>();
    return settings.flatMap((setting) => {
      const key = settingKey(setting);
      const name = `Channel ${channel}, ${setting.surface}: ${namePlace({ kind: "setting", ...setting })}`;
      if (!known.has(key)) return [`${name} is not in the plan.`];
      if (met.has(key)) return [`${name} stands twice in the file; only the first was used.`];
      met.add(key);
      return [];
    });
  });
  return [...wrongModel, ...strays];
}
