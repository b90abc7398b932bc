import type { ChannelEntries, PlaceEntry } from "./order-entries.ts";

/** "a", "a and b", "a, b and c". */
export function listWords(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}

/** "channel 5 (flapLeft)". */
export function nameChannel({ channel, servos }: ChannelEntries): string {
  return `channel ${channel} (${listWords(servos)})`;
}

/** "channel 5" or "channels 5 and 6". */
export function nameChannels(entries: readonly ChannelEntries[]): string {
  const numbers = entries.map(({ channel }) => String(channel));
  return `${numbers.length === 1 ? "channel" : "channels"} ${listWords(numbers)}`;
}

/** "flap to landing", "roll to its end -1 with phase at thermal". */
export function namePlace({ control, position, when }: PlaceEntry): string {
  const place =
    typeof position === "string"
      ? `${control} to ${position}`
      : `${control} to its end ${position === 1 ? "+1" : "-1"}`;
  const conditions = Object.entries(when).map(([selector, detent]) => `${selector} at ${detent}`);
  return conditions.length === 0 ? place : `${place} with ${listWords(conditions)}`;
}
