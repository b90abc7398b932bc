import { type PercentPulsePoint, sum } from "./fit-line.ts";

/** Two lines through one centre, one below it and one above, by least squares. */
export interface FittedSides {
  /** Pulse at 0 percent. */
  readonly centreUs: number;
  readonly below: { readonly usPerPercent: number; readonly usPerPercentPerUs: number };
  readonly above: { readonly usPerPercent: number; readonly usPerPercentPerUs: number };
  /** Sum of squared residuals, square microseconds. */
  readonly squaresUs2: number;
  /** Readings less parameters. */
  readonly freedom: number;
  /** Standard doubts where a reading's standard doubt is one microsecond; pure numbers of the layout. */
  readonly centrePerUs: number;
  readonly differencePerUs: number;
}

/**
 * Ordinary least squares of pulse = centre + below * min(percent, 0) + above * max(percent, 0), in closed form: no
 * reading has both terms, so each side's slope follows from the centre. Undefined where a side has no reading, or where
 * nothing fixes the centre: no reading at 0 percent and one percent only on each side.
 */
export function fitTwoSided(points: readonly PercentPulsePoint[]): FittedSides | undefined {
  const low = points.filter((point) => point.percent < 0);
  const high = points.filter((point) => point.percent > 0);
  const middle = points.filter((point) => point.percent === 0);
  if (low.length === 0 || high.length === 0) return undefined;
  if (middle.length === 0 && !severalPercents(low) && !severalPercents(high)) return undefined;

  const lowSums = sumsOf(low);
  const highSums = sumsOf(high);
  const weight = middle.length + lowSums.weight + highSums.weight;
  const centreUs =
    (sum(middle, (point) => point.pulseUs) + lowSums.weightedUs + highSums.weightedUs) / weight;
  const usPerPercent = (side: SideSums) => (side.crossed - centreUs * side.first) / side.second;
  const belowUs = usPerPercent(lowSums);
  const aboveUs = usPerPercent(highSums);
  const doubt = (side: SideSums) => Math.sqrt(1 / side.second + side.lever ** 2 / weight);
  return {
    centreUs,
    below: { usPerPercent: belowUs, usPerPercentPerUs: doubt(lowSums) },
    above: { usPerPercent: aboveUs, usPerPercentPerUs: doubt(highSums) },
    squaresUs2: sum(
      points,
      ({ percent, pulseUs }) => (pulseUs - centreUs - percent * (percent < 0 ? belowUs : aboveUs)) ** 2,
    ),
    freedom: points.length - 3,
    centrePerUs: Math.sqrt(1 / weight),
    differencePerUs: Math.sqrt(
      1 / lowSums.second + 1 / highSums.second + (highSums.lever - lowSums.lever) ** 2 / weight,
    ),
  };
}

interface SideSums {
  readonly first: number;
  readonly second: number;
  readonly crossed: number;
  /** How far this side's slope gives way for one microsecond of centre. */
  readonly lever: number;
  /** What this side says of the centre once its slope is free: its weight in readings, and that weight times pulse. */
  readonly weight: number;
  readonly weightedUs: number;
}

function sumsOf(side: readonly PercentPulsePoint[]): SideSums {
  const first = sum(side, (point) => point.percent);
  const second = sum(side, (point) => point.percent ** 2);
  const crossed = sum(side, (point) => point.percent * point.pulseUs);
  const lever = first / second;
  // Written as sums of what remains: side.length - first ** 2 / second loses its digits where the percents are close.
  const remains = (point: PercentPulsePoint) => 1 - lever * point.percent;
  return {
    first,
    second,
    crossed,
    lever,
    weight: sum(side, (point) => remains(point) ** 2),
    weightedUs: sum(side, (point) => remains(point) * point.pulseUs),
  };
}

function severalPercents(side: readonly PercentPulsePoint[]): boolean {
  return new Set(side.map((point) => point.percent)).size > 1;
}
