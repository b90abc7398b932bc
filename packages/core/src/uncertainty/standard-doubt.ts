/** The mean of readings taken again, and its doubt. Unit of the readings. */
export interface RepeatedDoubt {
  readonly mean: number;
  /** Standard doubt of the mean. */
  readonly standard: number;
  /** Degrees of freedom: readings minus one. */
  readonly dof: number;
}

/** Standard doubt (k = 1) of a value anywhere within plus and minus `halfWidth`, 0 or more, in its unit. Source: JCGM 100:2008 4.3.7. */
export function doubtFromRectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** As `doubtFromRectangular`, where the middle is likelier than the ends. Source: JCGM 100:2008 4.3.9. */
export function doubtFromTriangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(6);
}

/** Standard doubt of a value shown or set in whole steps, 0 or more: half a step to either side. Source: JCGM 100:2008 F.2.2.1. */
export function doubtFromStep(step: number): number {
  return step / Math.sqrt(12);
}

/** Standard doubt of what is stated as an expanded doubt, 0 or more, with its coverage factor, above 0. Source: JCGM 100:2008 4.3.3. */
export function doubtFromExpanded(expanded: number, k = 2): number {
  return expanded / k;
}

/**
 * Standard doubt of the mean of `count` readings, 1 or more, whose standard deviation, 0 or more, is known from before.
 * Source: JCGM 100:2008 4.2.3.
 */
export function doubtFromScatter(deviation: number, count: number): number {
  return deviation / Math.sqrt(count);
}

/**
 * Mean of finite readings and its standard doubt from their own scatter; undefined below two readings.
 * Source: JCGM 100:2008 4.2.1 to 4.2.3.
 */
export function doubtFromRepeated(readings: readonly number[]): RepeatedDoubt | undefined {
  const count = readings.length;
  if (count < 2) return undefined;
  const mean = readings.reduce((sum, reading) => sum + reading, 0) / count;
  const squares = readings.reduce((sum, reading) => sum + (reading - mean) ** 2, 0);
  return { mean, standard: Math.sqrt(squares / (count - 1) / count), dof: count - 1 };
}
