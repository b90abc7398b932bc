/**
 * The root of the sum of squares, taken from the first to the last; the same bits in every engine. Within 2 units in the
 * last place for a few numbers that are 0 or from 1e-150 to 1e150, which all lengths, angles and doubts are; 0 of none.
 */
export function hypotOf(...values: readonly number[]): number {
  let squares = 0;
  for (const value of values) squares += value * value;
  return Math.sqrt(squares);
}
