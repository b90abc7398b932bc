import { type PercentPulsePoint, sum } from "./fit-line.ts";

/** One point a percent, in rising order: the mean pulse of all readings at it. */
export function meansByPercent(points: readonly PercentPulsePoint[]): readonly PercentPulsePoint[] {
  const percents = [...new Set(points.map((point) => point.percent))].toSorted((a, b) => a - b);
  return percents.map((percent) => {
    const same = points.filter((point) => point.percent === percent);
    return { percent, pulseUs: sum(same, (point) => point.pulseUs) / same.length };
  });
}
