import type { LinkageDoubt } from "../response/linkage-doubt.ts";
import type { Response } from "../response/response.ts";
import { type Contribution, type Propagated, propagate } from "../uncertainty/propagate.ts";
import { us } from "../units/quantity.ts";

/** What decides how sure the positions of a servo are. */
export interface PositionDoubt {
  /** Absent on a bench that knows no degrees. */
  readonly response?: Response;
  /**
   * Doubt of a deflection as read, degrees, and of a pulse as obeyed, microseconds. Of a linkage that was never read the first is how
   * well level was set, and free play.
   */
  readonly readingDoubt: Propagated;
  readonly settingDoubt: Propagated;
  /** What a linkage that was never read adds; absent where readings count. */
  readonly linkageDoubt?: LinkageDoubt;
}

/** Standard doubt (k = 1) of where a servo puts its surface at a pulse, degrees; undefined where the bench knows no degrees. */
export function standardAt(sure: PositionDoubt, pulseUs: number): number | undefined {
  const { response, readingDoubt, settingDoubt, linkageDoubt } = sure;
  if (linkageDoubt !== undefined) return doubtAt(sure, pulseUs)?.standard;
  const slope = response?.slopeAt(us(pulseUs));
  return slope === undefined
    ? undefined
    : Math.sqrt(readingDoubt.standard ** 2 + (slope * settingDoubt.standard) ** 2);
}

/** The same with its budget. */
export function doubtAt(sure: PositionDoubt, pulseUs: number): Propagated | undefined {
  const causes = causesAt(sure, pulseUs);
  return causes && propagate(causes);
}

/**
 * Everything that makes a position on this servo uncertain at a pulse, degrees: how it was read, and how the pulse is
 * obeyed. One meter, zeroed and laid on once, read the whole bench, and one tester set its pulses: what they are off by is the
 * same in every reading, so that the response is off by that as a whole and what lies between readings is no surer than they are.
 * A rule errs anew at each reading; it is taken as a whole too, which is never too little. Source: JCGM 100:2008 5.2.2.
 */
export function causesAt(
  { response, readingDoubt, settingDoubt, linkageDoubt }: PositionDoubt,
  pulseUs: number,
): readonly Contribution[] | undefined {
  const slope = response?.slopeAt(us(pulseUs));
  if (slope === undefined) return undefined;
  return [
    ...readingDoubt.budget.map(({ name, standard }) => ({ name, standard, sensitivity: 1 })),
    ...settingDoubt.budget.map(({ name, standard }) => ({ name, standard, sensitivity: slope })),
    ...(linkageDoubt?.causesAt(pulseUs) ?? []),
  ];
}
