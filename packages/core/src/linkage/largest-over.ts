import { goldenSection } from "../numeric/golden-section.ts";

/** Places at which a function is looked at before its best stretch is narrowed down. */
const LOOKS = 24;
/** Golden cuts: all together they leave about 1e-8 of the stretch. */
const CUTS = 38;
/** So far inside an end, as a part of the whole, a hump beside it shows. */
const HAIR = 1e-7;

/**
 * The largest value of a function between two places, both included, if it has no more than one hump between neighbouring
 * looks; good to some 1e-12 of its size where it is smooth.
 */
export function largestOver(f: (x: number) => number, low: number, high: number): number {
  const places = Array.from({ length: LOOKS + 1 }, (_, i) => low + (i / LOOKS) * (high - low));
  const values = places.map(f);
  const largest = Math.max(...values);
  const at = values.indexOf(largest);
  const inward = at === 0 ? 1 : at === LOOKS ? -1 : 0;
  if (inward !== 0 && f((places[at] ?? low) + inward * HAIR * (high - low)) <= largest) return largest;
  return Math.max(largest, goldenSection(f, places[at - 1] ?? low, places[at + 1] ?? high, CUTS).value);
}
