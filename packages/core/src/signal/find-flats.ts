import { type PercentPulsePoint, sum } from "./fit-line.ts";
import { meansByPercent } from "./means-by-percent.ts";

/** Neighbouring percents over which the pulse stays put. */
export interface Flat {
  readonly where: "low" | "high" | "inside";
  readonly fromPercent: number;
  readonly toPercent: number;
  /** Mean pulse of its readings. */
  readonly pulseUs: number;
}

/**
 * Every stretch over which the pulse stays put while the percent grows, in rising order: a clamp where it is at the low
 * or the high end of the readings. Between neighbouring percents the pulse stays put if it changes by no more than two
 * readings' doubts, where the readings' mean slope from end to end would change it by more than four.
 */
export function findFlats(points: readonly PercentPulsePoint[], doubtUs: number): readonly Flat[] {
  const [first, ...others] = meansByPercent(points);
  if (first === undefined) return [];
  const last = others.at(-1) ?? first;
  const usPerPercent = Math.abs(last.pulseUs - first.pulseUs) / (last.percent - first.percent);

  let before = first;
  let run: [PercentPulsePoint, ...PercentPulsePoint[]] = [first];
  const runs = [run];
  for (const point of others) {
    if (staysPut(before, point, usPerPercent, doubtUs)) run.push(point);
    else {
      run = [point];
      runs.push(run);
    }
    before = point;
  }
  return runs
    .filter((run) => run.length > 1)
    .map((run) => ({
      where: run[0] === first ? "low" : run.at(-1) === last ? "high" : "inside",
      fromPercent: run[0].percent,
      toPercent: (run.at(-1) ?? run[0]).percent,
      pulseUs: sum(run, (point) => point.pulseUs) / run.length,
    }));
}

function staysPut(
  a: PercentPulsePoint,
  b: PercentPulsePoint,
  usPerPercent: number,
  doubtUs: number,
): boolean {
  const expectedUs = usPerPercent * (b.percent - a.percent);
  return Math.abs(b.pulseUs - a.pulseUs) <= 2 * doubtUs && expectedUs > 4 * doubtUs;
}
