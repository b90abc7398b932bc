import { powerOf } from "../numeric/power.ts";
import { seededRandom } from "./random.ts";
import { runTrials, type Simulation, type Trial } from "./simulate.ts";
import { type Summary, summarise } from "./summarise.ts";

/** A simulation that stopped by itself. */
export interface SettledSimulation extends Simulation {
  /** True where every figure is good to the digits asked for; false where `mostTrials` came first. */
  readonly settled: boolean;
}

/** How exact a simulation must become. */
export interface SettleOptions {
  readonly seed: number;
  /** Left out, 0.95. */
  readonly coverage?: number;
  /** Digits of the standard doubt that are meant to be right. Left out, 1. */
  readonly digits?: 1 | 2;
  /** Left out, a million. At least two blocks are run all the same. */
  readonly mostTrials?: number;
}

/**
 * Adaptive Monte Carlo: blocks of trials until mean, standard doubt and both ends of the symmetric interval keep their
 * digits from block to block. Undefined where a block has too few results to summarise.
 * Source: JCGM 101:2008 7.9.4.
 */
export function simulateUntilSettled(trial: Trial, options: SettleOptions): SettledSimulation | undefined {
  const { seed, coverage = 0.95, digits = 1, mostTrials = 1_000_000 } = options;
  const random = seededRandom(seed);
  const perBlock = Math.max(10_000, Math.ceil(100 / (1 - coverage)));
  const blocks: Float64Array[] = [];
  const figures: (readonly number[])[] = [];
  for (;;) {
    const block = runTrials(trial, random, perBlock);
    const summary = summarise(block, coverage);
    if (summary === undefined) return undefined;
    blocks.push(block);
    figures.push(figuresOf(summary));
    const trials = blocks.length * perBlock;
    const isLast = trials + perBlock > mostTrials;
    if (blocks.length < 2) continue;
    const settled = isSettled(figures, pooledStandard(blocks), digits);
    if (!settled && !isLast) continue;
    const all = joined(blocks);
    const whole = summarise(all, coverage);
    return whole && { ...whole, failed: trials - all.length, settled };
  }
}

/**
 * Half a unit of the last of so many digits of a standard doubt: 0.05 for one digit of 0.35. 0 for no doubt.
 * Source: JCGM 101:2008 7.9.2.
 */
export function numericalTolerance(standard: number, digits: 1 | 2): number {
  if (standard === 0) return 0;
  const exponent = Number(standard.toExponential(digits - 1).split("e")[1]);
  return 0.5 * powerOf(10, exponent - digits + 1);
}

function figuresOf(summary: Summary): readonly number[] {
  return [summary.mean, summary.standard, ...summary.symmetric];
}

function isSettled(figures: readonly (readonly number[])[], standard: number, digits: 1 | 2): boolean {
  const tolerance = numericalTolerance(standard, digits);
  const [first = []] = figures;
  return first.every((_, index) => 2 * deviationOfMean(figures.map((row) => row[index] ?? NaN)) <= tolerance);
}

function deviationOfMean(values: readonly number[]): number {
  const count = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (count * (count - 1)));
}

function pooledStandard(blocks: readonly Float64Array[]): number {
  const count = blocks.reduce((sum, block) => sum + block.length, 0);
  const mean = sumOver(blocks, (value) => value) / count;
  return Math.sqrt(sumOver(blocks, (value) => (value - mean) ** 2) / (count - 1));
}

function sumOver(blocks: readonly Float64Array[], of: (value: number) => number): number {
  return blocks.reduce((sum, block) => sum + block.reduce((part, value) => part + of(value), 0), 0);
}

function joined(blocks: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(blocks.reduce((sum, block) => sum + block.length, 0));
  let offset = 0;
  for (const block of blocks) {
    all.set(block, offset);
    offset += block.length;
  }
  return all;
}
