/** One reading in plain numbers. */
export interface PercentPulsePoint {
  readonly percent: number;
  readonly pulseUs: number;
}

/** Straight line through readings by least squares, with what its parameters are worth. */
export interface FittedLine {
  /** Pulse at 0 percent. */
  readonly centreUs: number;
  readonly usPerPercent: number;
  /** Sum of squared residuals, square microseconds. */
  readonly squaresUs2: number;
  /** Readings less parameters. */
  readonly freedom: number;
  /** Standard doubt of each parameter where a reading's standard doubt is one microsecond; pure numbers of the layout. */
  readonly centrePerUs: number;
  readonly usPerPercentPerUs: number;
}

/**
 * Ordinary least squares in closed form, percent taken as exact. Undefined below two distinct percents. Sums are taken
 * about the means, which keeps the digits that raw sums lose.
 */
export function fitLine(points: readonly PercentPulsePoint[]): FittedLine | undefined {
  const count = points.length;
  const meanPercent = sum(points, (point) => point.percent) / count;
  const meanUs = sum(points, (point) => point.pulseUs) / count;
  const spread = sum(points, (point) => (point.percent - meanPercent) ** 2);
  if (!(spread > 0)) return undefined;
  const usPerPercent =
    sum(points, (point) => (point.percent - meanPercent) * (point.pulseUs - meanUs)) / spread;
  const centreUs = meanUs - usPerPercent * meanPercent;
  return {
    centreUs,
    usPerPercent,
    squaresUs2: sum(points, (point) => (point.pulseUs - centreUs - usPerPercent * point.percent) ** 2),
    freedom: count - 2,
    centrePerUs: Math.sqrt(1 / count + meanPercent ** 2 / spread),
    usPerPercentPerUs: Math.sqrt(1 / spread),
  };
}

/** Sum of a number taken of each item. */
export function sum<Item>(items: readonly Item[], take: (item: Item) => number): number {
  return items.reduce((total, item) => total + take(item), 0);
}
