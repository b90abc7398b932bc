import type { Propagated } from "../uncertainty/propagate.ts";
import { propagateDifference } from "../uncertainty/propagate-difference.ts";
import { causesAt } from "./position-doubt.ts";
import type { Rig } from "./rig-servos.ts";

/**
 * Causes that two servos have in common. One meter read both, so that what it is off by drops out of their difference; it was zeroed and laid
 * on for each anew. One tester set both: on servos of opposite sense its error adds up instead. A rule's doubt is in the reading of it, anew each time,
 * and so it is in the dimensions of two linkages; two servos err in their rotation each for itself.
 * On a Y lead the pulse is one and the same, with its rounding and its jitter.
 */
const inCommon = {
  channels: new Set(["meter", "tester"]),
  yLead: new Set(["meter", "tester", "step", "jitter"]),
} as const;

/** A servo and the pulse it is sent. */
type Sent = readonly [rig: Rig, pulseUs: number];

/** Doubt of how far two surfaces stand apart, degrees; undefined where a bench knows no degrees there. */
export function doubtBetween(first: Sent, second: Sent, by: keyof typeof inCommon): Propagated | undefined {
  const [own, other] = [causesAt(...first), causesAt(...second)];
  return own && other && propagateDifference(own, other, inCommon[by]);
}
