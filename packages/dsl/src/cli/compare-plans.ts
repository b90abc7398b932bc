import { canonicalJson, type SetupPlan } from "@hingeline/core";

/** In which places two plans differ. */
export interface PlanDifference {
  /** Numbers of the channels that differ or stand in one plan only, rising. */
  readonly channels: readonly number[];
  /** Other parts of the document that differ, by their key. */
  readonly parts: readonly string[];
}

/** Where two plans differ, byte by byte in their canonical JSON; undefined where they are the same. */
export function comparePlans(a: SetupPlan, b: SetupPlan): PlanDifference | undefined {
  const numbers = [...a.channels, ...b.channels].map(({ channel }) => channel);
  const channels = [...new Set(numbers)]
    .filter((number) => !same(channelsOf(a, number), channelsOf(b, number)))
    .sort((first, second) => first - second);
  const keys = Object.keys(a) as (keyof SetupPlan)[];
  const parts = keys.filter((key) => (key === "channels" ? false : !same(a[key], b[key])));
  if (channels.length > 0 || parts.length > 0) return { channels, parts };
  // Channels that only changed places.
  return same(a, b) ? undefined : { channels: [], parts: ["channels"] };
}

function channelsOf({ channels }: SetupPlan, number: number) {
  return channels.filter(({ channel }) => channel === number);
}

function same(a: unknown, b: unknown): boolean {
  return canonicalJson(a) === canonicalJson(b);
}
