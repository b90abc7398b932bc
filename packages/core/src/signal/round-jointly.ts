import type { Percent } from "../units/quantity.ts";

/** One value that could be entered for one servo, and the deflection it gives. */
export interface RoundingCandidate<Name extends string = string> {
  readonly percent: Percent<Name>;
  readonly deflectionDeg: number;
}

/** The chosen value of each servo, in the order asked, and how well they do together. */
export interface JointRounding<Candidate extends RoundingCandidate> {
  readonly chosen: readonly Candidate[];
  /** Largest deflection less the smallest, degrees. */
  readonly differenceDeg: number;
  /** Mean deflection less the wanted one, degrees. */
  readonly meanErrorDeg: number;
}

/**
 * Rounds the servos of a matched group together: of all combinations of one candidate a servo, the one with the least
 * difference between deflections, then the least mean error to either side of the wanted deflection, then the lowest
 * percents, compared servo by servo. Differences within 0.02 degrees of the least are equal, since nobody can measure
 * them; the order of the candidates decides nothing. Candidates are what gridNeighbours leaves of each servo, at most
 * two. Beyond 12 servos there are too many combinations: then each takes its candidate nearest to the wanted deflection.
 * Undefined where there is no servo, or one without a candidate.
 */
export function roundJointly<Candidate extends RoundingCandidate>(
  candidatesPerServo: readonly (readonly Candidate[])[],
  wantedDeg: number,
): JointRounding<Candidate> | undefined {
  if (candidatesPerServo.length === 0) return undefined;
  const lists =
    candidatesPerServo.length <= MOST_SERVOS
      ? candidatesPerServo
      : candidatesPerServo.map((list) => nearestTo(list, wantedDeg));
  const all = combinations(lists).map((chosen) => judge(chosen, wantedDeg));
  const closest = least(all, (one) => one.differenceDeg, INDISTINCT_DEG);
  const truest = least(closest, (one) => Math.abs(one.meanErrorDeg), SAME_DEG);
  return truest.toSorted((a, b) => byPercents(a.chosen, b.chosen))[0];
}

/** What no angle meter can tell apart. From experience, no source. */
export const INDISTINCT_DEG = 0.02;
/** So that the last digit of a double decides nothing. */
const SAME_DEG = 1e-9;
const MOST_SERVOS = 12;

function nearestTo<Candidate extends RoundingCandidate>(
  list: readonly Candidate[],
  wantedDeg: number,
): readonly Candidate[] {
  const nearest = least(list, (one) => Math.abs(one.deflectionDeg - wantedDeg), SAME_DEG);
  return nearest.toSorted((a, b) => a.percent - b.percent).slice(0, 1);
}

function combinations<Item>(lists: readonly (readonly Item[])[]): readonly (readonly Item[])[] {
  return lists.reduce<readonly (readonly Item[])[]>(
    (begun, list) => begun.flatMap((items) => list.map((item) => [...items, item])),
    [[]],
  );
}

function judge<Candidate extends RoundingCandidate>(
  chosen: readonly Candidate[],
  wantedDeg: number,
): JointRounding<Candidate> {
  const deflectionsDeg = chosen.map((one) => one.deflectionDeg);
  const sumDeg = deflectionsDeg.reduce((sum, one) => sum + one, 0);
  return {
    chosen,
    differenceDeg: Math.max(...deflectionsDeg) - Math.min(...deflectionsDeg),
    meanErrorDeg: sumDeg / chosen.length - wantedDeg,
  };
}

function least<Item>(
  items: readonly Item[],
  measureDeg: (item: Item) => number,
  toleranceDeg: number,
): readonly Item[] {
  const leastDeg = Math.min(...items.map(measureDeg));
  return items.filter((item) => measureDeg(item) <= leastDeg + toleranceDeg);
}

function byPercents(a: readonly RoundingCandidate[], b: readonly RoundingCandidate[]): number {
  for (const [index, one] of a.entries()) {
    const order = one.percent - (b[index]?.percent ?? one.percent);
    if (order !== 0) return order;
  }
  return 0;
}
