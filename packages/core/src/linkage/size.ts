import { radians } from "../numeric/angle.ts";
import { sinOf } from "../numeric/sine.ts";
import {
  type Candidate,
  type CandidateFault,
  judgeCandidate,
  listCandidates,
  type SizeVerdict,
} from "./size-candidate.ts";
import type { SizeTask } from "./size-task.ts";

/** What makes one combination better than another. */
export interface SizePreferences {
  /**
   * How much even servo travel counts against torque: servo travel that is a tenth uneven counts as this times a tenth less
   * torque. 0: not at all, as for a flap. 0.5 where left out.
   */
  readonly evenTravel?: number;
  /** Least sine of the angle between rod and arm or horn, above 0; sin 20 degrees where left out. */
  readonly leastSine?: number;
  /** How many proposals to return; 20 where left out. */
  readonly most?: number;
}

/** A linkage that does what is wanted, and the numbers that say how well. */
export interface Proposal extends Candidate, SizeVerdict {
  /** Torque lost to gearing and uneven travel: `worstRatio` (1 + evenTravel `unevenness`); the least comes first. */
  readonly score: number;
}

/** What the search found. */
export interface SizeResult {
  /** Best first; those alike in the order of the task's lists. */
  readonly proposals: readonly Proposal[];
  /** Combinations tried, and of those the ones that would do. */
  readonly tried: number;
  readonly fitting: number;
  /** Combinations by the first thing that is wrong with them. */
  readonly rejected: Readonly<Record<CandidateFault, number>>;
}

/** Why nothing was searched. */
export type SizeProblem =
  /** More combinations than are tried. */
  | { readonly kind: "tooMany"; readonly combinations: number; readonly most: number }
  /** A list that holds nothing, `wanted` that asks for nothing or has its signs crossed, or a servo that does not turn. */
  | { readonly kind: "nothingToTry"; readonly name: string };

/** Some five seconds of work. */
const MOST_COMBINATIONS = 100_000;

/** Common practice, no source. */
const LEAST_SINE = sinOf(radians(20));

/**
 * Every combination of arm hole, arm angle, level, horn hole and horn angle that brings the surface to both wanted
 * deflections within the servo's travel and clear of dead centres, most torque at the surface first. The rod is what fits
 * at level. Torque and fineness are one thing: at the worst used place the surface gets the servo's torque over |ratio|,
 * and one microsecond moves it by |ratio| times what the servo turns.
 */
export function size(task: SizeTask, preferences: SizePreferences = {}): SizeResult | SizeProblem {
  const { evenTravel = 0.5, leastSine = LEAST_SINE, most = 20 } = preferences;
  const problem = findProblem(task);
  if (problem !== undefined) return problem;
  const rejected = { cannotBeMade: 0, notReached: 0, travelTooShort: 0, nearDeadCentre: 0 };
  const fitting: Proposal[] = [];
  let tried = 0;
  for (const candidate of listCandidates(task)) {
    tried++;
    const verdict = judgeCandidate(candidate, task, leastSine);
    if (typeof verdict === "string") rejected[verdict]++;
    else {
      const score = verdict.worstRatio * (1 + evenTravel * verdict.unevenness);
      fitting.push({ ...candidate, ...verdict, score });
    }
  }
  // Sorting is stable: those alike stay in the order of the lists.
  const proposals = fitting.sort((a, b) => a.score - b.score).slice(0, most);
  return { proposals, tried, fitting: fitting.length, rejected };
}

function findProblem(task: SizeTask): SizeProblem | undefined {
  const { armHoles, armAngles, levelRotations = [0], hornHoles, hornAngles, wanted, servo } = task;
  const lists = { armHoles, armAngles, levelRotations, hornHoles, hornAngles };
  const empty = Object.entries(lists).find(([, list]) => list.length === 0);
  if (empty !== undefined) return { kind: "nothingToTry", name: empty[0] };
  if (wanted.up > 0 || wanted.down < 0 || wanted.up === wanted.down) {
    return { kind: "nothingToTry", name: "wanted" };
  }
  if (!(servo.travel > 0 && servo.rotation > 0)) return { kind: "nothingToTry", name: "servo" };
  const combinations = Object.values(lists).reduce((product, list) => product * list.length, 1);
  return combinations > MOST_COMBINATIONS
    ? { kind: "tooMany", combinations, most: MOST_COMBINATIONS }
    : undefined;
}
