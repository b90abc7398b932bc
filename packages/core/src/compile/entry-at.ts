import type { EnteredWish } from "./enter-wishes.ts";
import type { Entry } from "./entry-grid.ts";
import type { Output } from "./output.ts";

/**
 * What is entered for a place: for one that is asked for anyway the value chosen there, which may have been rounded with its twin; else the
 * nearest. Undefined where the place is out of reach.
 */
export function entryAt(output: Output, place: number, wishes: readonly EnteredWish[]): Entry | undefined {
  const asked = wishes.find(({ wish }) => wish.place === place);
  if (asked !== undefined) return asked.entry;
  const pulseUs = output.travel.pulseAt(place);
  return pulseUs === undefined ? undefined : output.grid.nearest(pulseUs, output.openUs);
}
