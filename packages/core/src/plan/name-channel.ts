import type { PlanChannel } from "./setup-plan.ts";

/** "channel 5 (flapLeft)", "channel 2 (upper and lower)". */
export function nameChannel({ channel, servos }: Pick<PlanChannel, "channel" | "servos">): string {
  return `channel ${channel} (${listWords(servos)})`;
}

/** "a", "a and b", "a, b and c". */
export function listWords(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}
