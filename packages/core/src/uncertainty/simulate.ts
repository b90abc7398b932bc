import { type Random, seededRandom } from "./random.ts";
import { type Summary, summarise } from "./summarise.ts";

/**
 * One run of the measurement by chance: draws every input and gives the result, or undefined where those inputs have
 * none. An input that two others share is drawn once and used in both.
 */
export type Trial = (random: Random) => number | undefined;

/** What many trials gave. */
export interface Simulation extends Summary {
  /** Trials without a finite result; the summary speaks of the others only. */
  readonly failed: number;
}

/**
 * Monte Carlo with a fixed number of trials, 100 / (1 - coverage) or more. Same seed, same bytes. Undefined where too
 * few trials have a result to summarise. Source: JCGM 101:2008 7.2 to 7.7.
 */
export function simulate(
  trial: Trial,
  { seed, trials, coverage = 0.95 }: { seed: number; trials: number; coverage?: number },
): Simulation | undefined {
  const values = runTrials(trial, seededRandom(seed), trials);
  const summary = summarise(values, coverage);
  return summary && { ...summary, failed: trials - values.length };
}

/** The finite results of so many trials, in order. */
export function runTrials(trial: Trial, random: Random, trials: number): Float64Array {
  const values = new Float64Array(trials);
  let count = 0;
  for (let run = 0; run < trials; run += 1) {
    const value = trial(random);
    if (value === undefined || !Number.isFinite(value)) continue;
    values[count] = value;
    count += 1;
  }
  return values.subarray(0, count);
}
