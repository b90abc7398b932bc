import { listWords } from "../plan/name-channel.ts";
import type { ChannelEntries, PlaceEntry } from "./order-entries.ts";

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
