import type { Transit } from "./setup-plan.ts";

/** The longest way of each control among a channel's transits: its time is the one that is typed. */
export function longestTransits(transits: readonly Transit[] = []): readonly Transit[] {
  const longest = new Map<string, Transit>();
  for (const transit of transits)
    if (transit.seconds > (longest.get(transit.control)?.seconds ?? -1))
      longest.set(transit.control, transit);
  return [...longest.values()];
}
