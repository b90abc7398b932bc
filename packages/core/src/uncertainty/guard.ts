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

/** A guard that the builder should think about again. */
export type GuardProblem =
  /** Less than the doubt of the pulse, or than anyone can keep to. */
  | { readonly kind: "guardTooSmall"; readonly guardUs: number; readonly leastUs: number }
  /** So much travel is given away only for a reason. */
  | { readonly kind: "guardWithoutReason"; readonly guardUs: number; readonly mostUs: number };

/**
 * Pulse span to keep inside a stop: k times the combined standard doubt of setting the pulse and finding the contact,
 * plus everything systematic. Common practice, no source; the combination after JCGM 100:2008 5.1.2.
 */
export function guardSpanUs(causes: GuardCauses, k?: number): number {
  const { pulseUs, contactUs = 0, systematicUs = [], stepUs = 0 } = causes;
  const systematic = systematicUs.reduce((sum, shift) => sum + Math.abs(shift), 0);
  return Math.max(expand(Math.hypot(pulseUs, contactUs), k) + systematic, stepUs);
}

/** Guards outside these ask for a second look. From experience, no source. */
export const USUAL_GUARD_US = { least: 5, most: 30 } as const;

/**
 * What is wrong with a guard that was stated: less than `resolvableUs`, the random part of the computed one, or than 5
 * us; or more than 30 us. Undefined for a sound one. A guard of 0, which means none, is for the caller to let pass.
 */
export function findGuardProblem(guardUs: number, resolvableUs: number): GuardProblem | undefined {
  const leastUs = Math.max(USUAL_GUARD_US.least, resolvableUs);
  if (guardUs < leastUs) return { kind: "guardTooSmall", guardUs, leastUs };
  const mostUs = Math.max(USUAL_GUARD_US.most, resolvableUs);
  return guardUs > mostUs ? { kind: "guardWithoutReason", guardUs, mostUs } : undefined;
}
