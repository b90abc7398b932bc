/** The mean of readings taken again, and its doubt. Unit of the readings. */
export interface RepeatedDoubt {
  readonly mean: number;
  /** Standard doubt of the mean. */
  readonly standard: number;
  /** Degrees of freedom: readings minus one. */
  readonly dof: number;
}

// Each takes what a builder states and gives a standard doubt (k = 1) in the same unit. Widths and deviations are 0 or more.

/** Anywhere within plus and minus `halfWidth`, all equally likely. Source: JCGM 100:2008 4.3.7. */
export function fromRectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** Within plus and minus `halfWidth`, the middle likelier than the ends. Source: JCGM 100:2008 4.3.9. */
export function fromTriangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(6);
}

/** Shown or set in whole steps: half a step to either side. Source: JCGM 100:2008 F.2.2.1. */
export function fromStep(step: number): number {
  return step / Math.sqrt(12);
}

/** Stated as an expanded doubt with its coverage factor, above 0. Source: JCGM 100:2008 4.3.3. */
export function fromExpanded(expanded: number, k = 2): number {
  return expanded / k;
}

/** The mean of `count` readings, 1 or more, whose scatter is known from before. Source: JCGM 100:2008 4.2.3. */
export function fromScatter(deviation: number, count: number): number {
  return deviation / Math.sqrt(count);
}

/** Type A: the readings' own scatter. Undefined below two readings. Source: JCGM 100:2008 4.2.1 to 4.2.3. */
export function fromRepeated(readings: readonly number[]): RepeatedDoubt | undefined {
  const count = readings.length;
  if (count < 2) return undefined;
  const mean = readings.reduce((sum, reading) => sum + reading, 0) / count;
  const squares = readings.reduce((sum, reading) => sum + (reading - mean) ** 2, 0);
  return { mean, standard: Math.sqrt(squares / (count - 1) / count), dof: count - 1 };
}
