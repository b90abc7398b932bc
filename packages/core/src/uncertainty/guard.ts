import { hypotOf } from "../numeric/hypotenuse.ts";
import { expand } from "./expand.ts";

/** What decides how far inside a stop to stay. Microseconds. */
export interface GuardCauses {
  /** Standard doubt of a pulse, from `pulseDoubt`. */
  readonly pulseUs: number;
  /** Standard doubt of the pulse of first contact. Left out, 0. */
  readonly contactUs?: number;
  /** What shifts the stop one way, such as temperature and overshoot. They add up, whatever their sign. */
  readonly systematicUs?: readonly number[];
  /** Smallest change of pulse that the radio can set; the guard is never less. Left out, 0. */
  readonly stepUs?: number;
}

/**
 * Pulse span to keep inside a stop: k times the combined standard doubt of setting the pulse and finding the contact,
 * plus everything systematic. Common practice, no source; the combination after JCGM 100:2008 5.1.2.
 */
export function guardSpanUs(causes: GuardCauses, k?: number): number {
  const { pulseUs, contactUs = 0, systematicUs = [], stepUs = 0 } = causes;
  const systematic = systematicUs.reduce((sum, shift) => sum + Math.abs(shift), 0);
  return Math.max(expand(hypotOf(pulseUs, contactUs), k) + systematic, stepUs);
}
