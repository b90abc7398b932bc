/** The distribution of a result, from values drawn. Unit of the values. */
export interface Summary {
  readonly count: number;
  readonly mean: number;
  /** Standard deviation of the values: the standard doubt of the result. */
  readonly standard: number;
  readonly coverage: number;
  /** As much probability left out below as above. */
  readonly symmetric: Interval;
  /** The least wide of all that hold `coverage`. Its place, not its width, is badly determined. */
  readonly shortest: Interval;
}

/** Both ends of an interval, in the unit of the values. */
export type Interval = readonly [low: number, high: number];

/**
 * Mean, standard doubt and coverage intervals of values in any order. Undefined where there are too few: two, and so
 * many that the interval leaves at least one out. `coverage` is above 0 and below 1.
 * Source: JCGM 101:2008 7.6, 7.7 and 5.3.4.
 */
export function summarise(values: Float64Array, coverage: number): Summary | undefined {
  const count = values.length;
  const held = Math.floor(coverage * count + 0.5);
  if (count < 2 || held < 1 || held >= count) return undefined;
  const sorted = values.toSorted();
  const at = (index: number) => sorted[index] ?? NaN;
  const mean = sorted.reduce((sum, value) => sum + value, 0) / count;
  const squares = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  // The standard counts from 1.
  const first = Math.floor((count - held + 1) / 2) - 1;
  let narrowest = 0;
  for (let low = 1; low + held < count; low += 1) {
    if (at(low + held) - at(low) < at(narrowest + held) - at(narrowest)) narrowest = low;
  }
  return {
    count,
    mean,
    standard: Math.sqrt(squares / (count - 1)),
    coverage,
    symmetric: [at(first), at(first + held)],
    shortest: [at(narrowest), at(narrowest + held)],
  };
}
