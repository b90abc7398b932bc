import { diffChannel } from "./diff-channel.ts";
import { differs, pairUp } from "./pair-up.ts";
import { type ComputedPart, type PlanChange, sidesOf } from "./plan-change.ts";
import type { SetupPlan } from "./setup-plan.ts";

/**
 * What differs between two plans, as few changes as it takes: the model, the radio, the channels with what is entered on them, the
 * findings, and last in one change whatever else is computed from those. Empty where the plans are the same bytes, and only there.
 * The other way round the same changes come back with their sides exchanged.
 */
export function diffPlans(before: SetupPlan, after: SetupPlan): readonly PlanChange[] {
  const channels = diffChannels(before, after);
  const told: Partial<Record<keyof SetupPlan, readonly PlanChange[]>> = {
    model: differs(before.model, after.model)
      ? [{ kind: "model", before: before.model, after: after.model }]
      : [],
    radio: differs(before.radio, after.radio)
      ? [{ kind: "radio", before: before.radio, after: after.radio }]
      : [],
    channels: channels.changes,
    findings: diffFindings(before, after),
  };
  const isTold = (part: keyof SetupPlan) =>
    (told[part] ?? []).length > 0 || (part === "channels" && channels.computed.length > 0);
  const others = (Object.keys(after) as (keyof SetupPlan)[])
    .filter((part) => differs(before[part], after[part]) && !isTold(part))
    .map((part): ComputedPart => ({ part }));
  const parts = [...channels.computed, ...others];
  return [
    ...Object.values(told).flat(),
    ...(parts.length === 0 ? [] : [{ kind: "computed" as const, parts }]),
  ];
}

function diffChannels(
  before: SetupPlan,
  after: SetupPlan,
): { readonly changes: readonly PlanChange[]; readonly computed: readonly ComputedPart[] } {
  const byShare = [before, after].some(({ radio }) => radio.endPoints === "scale");
  const changes: PlanChange[] = [];
  const computed: ComputedPart[] = [];
  const pairs = pairUp(before.channels, after.channels, ({ channel }) => channel);
  for (const { before: old, after: now } of pairs) {
    const channel = now?.channel ?? old?.channel ?? 0;
    if (old === undefined || now === undefined) {
      changes.push({ kind: "channel", channel, ...sidesOf(old?.servos, now?.servos) });
      continue;
    }
    const difference = diffChannel(old, now, byShare);
    changes.push(...difference.changes);
    computed.push(...difference.computed.map((part) => ({ channel, part })));
  }
  return { changes, computed };
}

function diffFindings(before: SetupPlan, after: SetupPlan): readonly PlanChange[] {
  const pairs = pairUp(before.findings, after.findings, ({ code, at }) => [code, at]);
  return pairs.flatMap(({ before: old, after: now }) => {
    const finding = now ?? old;
    if (finding === undefined || !differs(old, now)) return [];
    return [{ kind: "finding" as const, code: finding.code, at: finding.at, ...sidesOf(old, now) }];
  });
}
