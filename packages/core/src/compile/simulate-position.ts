import type { LinkageDoubt } from "../response/linkage-doubt.ts";
import { type Distribution, draw } from "../uncertainty/draw.ts";
import { expandTo } from "../uncertainty/expand.ts";
import type { Propagated } from "../uncertainty/propagate.ts";
import type { Random } from "../uncertainty/random.ts";
import { type Simulation, simulate, type Trial } from "../uncertainty/simulate.ts";
import { simulateUntilSettled } from "../uncertainty/simulate-until-settled.ts";
import { isLinearValid, linearExcess } from "../uncertainty/validate-linear.ts";
import { us } from "../units/quantity.ts";
import { doubtAt } from "./position-doubt.ts";
import type { Rig } from "./rig-servos.ts";

/** How to draw. Same seed, same numbers. */
export interface DrawOptions {
  /** A safe integer. */
  readonly seed: number;
  /**
   * How often, 2000 or more; left out, until the second digit of the doubt stands still, a million at most. Where each draw makes a
   * linkage anew, which takes a hundred times as long, the first digit is enough.
   */
  readonly draws?: number;
}

/** The doubt of a position from draws of everything that makes it uncertain. Degrees. */
export interface DrawnDoubt {
  readonly draws: number;
  /** Absent where their number was asked for; false where a million were not enough. */
  readonly settled?: boolean;
  readonly meanDeg: number;
  readonly standardDeg: number;
  readonly coverage: number;
  /** The least wide interval that holds so much. */
  readonly shortestDeg: readonly [low: number, high: number];
  /** Share of the draws that went past the readings, where the response was taken to go on straight. */
  readonly beyond: number;
  /** Whether the straight-line doubt is right to the first digit. Source: JCGM 101:2008 8.1. */
  readonly straightLineHolds: boolean;
  /** By how much the straight-line interval of the same coverage is too wide at the end where it is further off; negative: too narrow. */
  readonly straightLineExcessDeg: number;
}

const coverage = 0.95;
/** These are stated as standard deviations of a normal distribution, all others as half-widths. */
const normalCauses: ReadonlySet<string> = new Set(["alignment", "jitter", "scatter", "rotation"]);

/**
 * Monte Carlo of where a servo puts its surface at a pulse. What meter and tester are off by is the same in every reading, so that
 * the readings drawn are the readings moved as a whole, and the response through them is the response moved as much. A linkage that was
 * never read is made anew from dimensions drawn. Undefined where the bench knows no degrees there. Source: JCGM 101:2008 7; to settle, 7.9.4.
 */
export function simulatePosition(
  rig: Rig,
  pulseUs: number,
  { seed, draws }: DrawOptions,
): DrawnDoubt | undefined {
  const position = positionAt(rig, pulseUs);
  if (position === undefined) return undefined;
  const { valueDeg, straight, trial, countBeyond } = position;
  const simulated: (Simulation & { readonly settled?: boolean }) | undefined =
    draws === undefined
      ? simulateUntilSettled(trial, { seed, coverage, digits: rig.linkageDoubt === undefined ? 2 : 1 })
      : simulate(trial, { seed, trials: draws, coverage });
  if (simulated === undefined) return undefined;
  const linear = { value: valueDeg, expanded: expandTo(coverage, straight).expanded };
  const [low, high] = linearExcess(linear, simulated);
  return {
    draws: simulated.count,
    ...(simulated.settled === undefined ? {} : { settled: simulated.settled }),
    meanDeg: simulated.mean,
    standardDeg: simulated.standard,
    coverage,
    shortestDeg: simulated.shortest,
    beyond: countBeyond() / simulated.count,
    straightLineHolds: isLinearValid(linear, simulated),
    straightLineExcessDeg: Math.abs(low) > Math.abs(high) ? low : high,
  };
}

function positionAt(rig: Rig, pulseUs: number) {
  const { response, readingDoubt, settingDoubt, linkageDoubt } = rig;
  const valueDeg = response?.deflectionAt(us(pulseUs));
  const straight = doubtAt(rig, pulseUs);
  if (response === undefined || valueDeg === undefined || straight === undefined) return undefined;
  const drawReading = drawer(readingDoubt);
  const drawPulse = drawer(settingDoubt);
  if (linkageDoubt !== undefined) {
    const trial = trialOfLinkage(linkageDoubt, pulseUs, drawReading, drawPulse);
    return { valueDeg, straight, trial, countBeyond: () => 0 };
  }
  const [lowUs, highUs] = response.pulses;
  let beyond = 0;
  const trial: Trial = (random) => {
    const shiftDeg = drawReading(random);
    const drawnUs = pulseUs + drawPulse(random);
    const insideUs = us(Math.min(highUs, Math.max(lowUs, drawnUs)));
    const insideDeg = response.deflectionAt(insideUs);
    if (insideDeg === undefined) return undefined;
    if (insideUs === drawnUs) return insideDeg + shiftDeg;
    beyond += 1;
    return insideDeg + (response.slopeAt(insideUs) ?? 0) * (drawnUs - insideUs) + shiftDeg;
  };
  return { valueDeg, straight, trial, countBeyond: () => beyond };
}

/** The linkage made anew from dimensions drawn, at a pulse drawn; no result where it does not reach. */
function trialOfLinkage(
  { inputs, responseWith }: LinkageDoubt,
  pulseUs: number,
  drawReading: (random: Random) => number,
  drawPulse: (random: Random) => number,
): Trial {
  const values = inputs.map((input) => distributionOf(input, input.value));
  return (random) => {
    const shiftDeg = drawReading(random);
    const drawnUs = pulseUs + drawPulse(random);
    const deflectionDeg = responseWith(values.map((one) => draw(one, random)))(drawnUs);
    return deflectionDeg === undefined ? undefined : deflectionDeg + shiftDeg;
  };
}

/** The sum of all causes of a doubt, drawn. By name, so that the same draws go to the same causes whatever their sizes. */
function drawer({ budget }: Propagated): (random: Random) => number {
  const causes = budget.toSorted((a, b) => (a.name < b.name ? -1 : 1)).map((one) => distributionOf(one, 0));
  return (random) => {
    let sum = 0;
    for (const cause of causes) sum += draw(cause, random);
    return sum;
  };
}

function distributionOf(
  { name, standard }: { readonly name: string; readonly standard: number },
  mean: number,
): Distribution {
  return normalCauses.has(name)
    ? { kind: "normal", mean, standard }
    : { kind: "rectangular", mean, halfWidth: Math.sqrt(3) * standard };
}
