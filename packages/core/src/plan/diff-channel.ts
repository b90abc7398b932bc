import { longestTransits } from "./longest-transits.ts";
import { differs, pairUp } from "./pair-up.ts";
import {
  type AddedPlace,
  type PlanChange,
  placeOf,
  type SettingValue,
  sidesOf,
  type ValueName,
} from "./plan-change.ts";
import type { PercentPulse, PlanChannel, Setting } from "./setup-plan.ts";

/** How one channel differs: changes for a person to act on, and the parts in which only computed numbers differ. */
export interface ChannelDifference {
  readonly changes: readonly PlanChange[];
  readonly computed: readonly (keyof PlanChannel)[];
}

/**
 * How a channel that both plans have differs.
 * @param byShare whether positions of one of them are entered as shares between the limits
 */
export function diffChannel(before: PlanChannel, after: PlanChannel, byShare: boolean): ChannelDifference {
  const { channel } = after;
  if (differs(before.servos, after.servos))
    return {
      changes: [{ kind: "channel", channel, before: before.servos, after: after.servos }],
      computed: [],
    };
  const told: Partial<Record<keyof PlanChannel, readonly PlanChange[]>> = {
    labels: diffLabels(before, after),
    direction: diffPart("direction", (part) => ({
      kind: "direction",
      channel,
      ...part,
    })),
    safeUs: diffPart("safeUs", (part) => ({ kind: "safe", channel, ...part })),
    limits: [
      ...diffValue(channel, "lowLimit", before.limits.low, after.limits.low),
      ...diffValue(channel, "highLimit", before.limits.high, after.limits.high),
    ],
    neutral: diffValue(channel, "neutral", before.neutral, after.neutral, byShare),
    settings: diffSettings(before, after, byShare),
    curve: diffPart("curve", (part) => ({ kind: "curve", channel, ...part })),
    transits: diffTransits(before, after),
    failsafe: diffValue(channel, "failsafe", before.failsafe, after.failsafe, byShare),
  };
  const parts = [...new Set([...Object.keys(before), ...Object.keys(after)])] as (keyof PlanChannel)[];
  return {
    changes: Object.values(told).flat(),
    computed: parts.filter((part) => differs(before[part], after[part]) && (told[part] ?? []).length === 0),
  };

  function diffPart<K extends keyof PlanChannel>(
    part: K,
    change: (sides: {
      before?: NonNullable<PlanChannel[K]>;
      after?: NonNullable<PlanChannel[K]>;
    }) => PlanChange,
  ): readonly PlanChange[] {
    if (!differs(before[part], after[part])) return [];
    return [change(sidesOf(before[part] ?? undefined, after[part] ?? undefined))];
  }
}

function diffLabels({ channel, labels: old = {} }: PlanChannel, { labels = {} }: PlanChannel): PlanChange[] {
  return pairUp(Object.entries(old), Object.entries(labels), ([servo]) => servo).flatMap((pair) => {
    const servo = pair.after?.[0] ?? pair.before?.[0] ?? "";
    const [before, after] = [pair.before?.[1], pair.after?.[1]];
    return before === after ? [] : [{ kind: "label" as const, channel, servo, ...sidesOf(before, after) }];
  });
}

function diffValue<V extends PercentPulse>(
  channel: number,
  value: ValueName,
  before: V,
  after: V,
  byShare = false,
): readonly PlanChange[] {
  return isMoved(before, after, byShare) ? [{ kind: "value", channel, value, before, after }] : [];
}

function diffSettings(before: PlanChannel, after: PlanChannel, byShare: boolean): readonly PlanChange[] {
  const { channel } = after;
  const changes: PlanChange[] = [];
  const places: AddedPlace[] = [];
  for (const pair of pairUp(before.settings, after.settings, (setting) => placeOf(channel, setting))) {
    const setting = pair.after ?? pair.before;
    if (setting === undefined) continue;
    const place = placeOf(channel, setting);
    const [old, now] = [pair.before && settingValue(pair.before), pair.after && settingValue(pair.after)];
    if (old === undefined || now === undefined || isMoved(old, now, byShare))
      changes.push({ kind: "setting", place, ...sidesOf(old, now) });
    else if (!byShare && old.addPercent !== now.addPercent)
      places.push({ place, before: old.addPercent, after: now.addPercent });
  }
  return places.length === 0 ? changes : [...changes, { kind: "adds", channel, places }];
}

function settingValue({ wanted, enter, gives }: Setting): SettingValue {
  return {
    ...(wanted === undefined ? {} : { wantedDeg: wanted.deflectionDeg }),
    ...(wanted?.throwMm === undefined ? {} : { throwMm: wanted.throwMm }),
    ...(wanted?.extensionMm === undefined ? {} : { extensionMm: wanted.extensionMm }),
    percent: enter.percent,
    pulseUs: enter.pulseUs,
    addPercent: enter.addPercent,
    sharePercent: enter.sharePercent,
    ...(gives === undefined ? {} : { givesDeg: gives.deflectionDeg }),
  };
}

/**
 * Whether another place is wanted, another value typed, or the same value gives another place. A limit has no share, and a share is
 * typed only where limits scale.
 */
function isMoved<V extends PercentPulse & Partial<SettingValue>>(
  before: V,
  after: V,
  byShare: boolean,
): boolean {
  const { addPercent: _, sharePercent: oldShare, ...old } = before;
  const { addPercent: __, sharePercent: share, ...now } = after;
  return differs(old, now) || (byShare && oldShare !== share);
}

function diffTransits({ channel, transits: old }: PlanChannel, { transits }: PlanChannel): PlanChange[] {
  const pairs = pairUp(longestTransits(old), longestTransits(transits), ({ control }) => control);
  return pairs.flatMap(({ before, after }) => {
    if (before?.seconds === after?.seconds) return [];
    const control = after?.control ?? before?.control ?? "";
    return [{ kind: "transit" as const, channel, control, ...sidesOf(before?.seconds, after?.seconds) }];
  });
}
