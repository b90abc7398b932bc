import type { AsBuilt, AsBuiltChannel } from "../as-built.ts";
import type { PlanChannel, SetupPlan } from "../setup-plan.ts";
import { namePlace, settingKey } from "./place-words.ts";

type Labels = NonNullable<AsBuiltChannel["labels"]>;

/** What an as-built file states that the plan does not have, or states twice, one sentence each: such readings are held against nothing. */
export function findStrays(plan: SetupPlan, { model, channels }: AsBuilt): readonly string[] {
  const seen = new Set<number>();
  const wrongModel =
    model === plan.model ? [] : [`The file is of the model ${model}, the plan of ${plan.model}.`];
  const strays = channels.flatMap(({ channel, labels = {}, settings = [] }) => {
    const planned = plan.channels.find((one) => one.channel === channel);
    if (planned === undefined) return [`Channel ${channel} is not in the plan.`];
    if (seen.has(channel)) return [`Channel ${channel} stands twice in the file; only the first was used.`];
    seen.add(channel);
    const known = new Set(planned.settings.map(settingKey));
    const met = new Set<string>();
    const settingStrays = settings.flatMap((setting) => {
      const key = settingKey(setting);
      const name = `Channel ${channel}, ${setting.surface}: ${namePlace({ kind: "setting", ...setting })}`;
      if (!known.has(key)) return [`${name} is not in the plan.`];
      if (met.has(key)) return [`${name} stands twice in the file; only the first was used.`];
      met.add(key);
      return [];
    });
    return [...otherServos(planned, labels), ...settingStrays];
  });
  return [...wrongModel, ...strays];
}

/** Servos whose label is another than the plan's: what was measured on one says nothing about another. */
function otherServos(
  { channel, servos, labels: planned = {} }: PlanChannel,
  fitted: Labels,
): readonly string[] {
  return Object.entries(fitted).flatMap(([servo, label]) => {
    if (!servos.includes(servo)) return [`Channel ${channel}: the plan has no servo ${servo} there.`];
    const wanted = planned[servo];
    return label === "" || wanted === undefined || label === wanted
      ? []
      : [
          `Channel ${channel}: the servo of ${servo} is labelled ${label}, the plan was made with ${wanted}. Its pulses hold for that servo only; swap takes the three readings that carry them over.`,
        ];
  });
}
