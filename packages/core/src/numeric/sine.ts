// The language leaves the last digit of Math.sin and Math.cos to each engine, and engines differ in it. A plan's bytes
// must not depend on who compiles it, so these use sums and products alone, which IEEE 754 fixes to the last bit.

/** The first 33 bits of a quarter turn, so that a few quarter turns of it are exact, and the rest. */
const QUARTER_HIGH = 1.5707963267341256;
const QUARTER_LOW = 6.077100506506192e-11;

/** Coefficients of the series of sine after its first term and of cosine after its one, in the square of the angle. */
const SINE = [-1 / 6, 1 / 120, -1 / 5040, 1 / 362880, -1 / 39916800, 1 / 6227020800, -1 / 1307674368000];
const COSINE = [
  -1 / 2,
  1 / 24,
  -1 / 720,
  1 / 40320,
  -1 / 3628800,
  1 / 479001600,
  -1 / 87178291200,
  1 / 20922789888000,
];

/** Sine of an angle in radians, up to a hundred turns either way, to 2e-16; the same bits in every engine. */
export const sinOf = (angleRad: number): number => quarterTurns(angleRad, 0);

/** Cosine of an angle in radians, up to a hundred turns either way, to 2e-16; the same bits in every engine. */
export const cosOf = (angleRad: number): number => quarterTurns(angleRad, 1);

/** Sine of an angle that is ahead by some quarter turns. */
function quarterTurns(angleRad: number, ahead: number): number {
  const quarters = Math.round(angleRad / (QUARTER_HIGH + QUARTER_LOW));
  const restRad = angleRad - quarters * QUARTER_HIGH - quarters * QUARTER_LOW;
  const square = restRad * restRad;
  // The two lowest bits, which of a negative number count from below as well.
  const quadrant = (quarters + ahead) & 3;
  const value = quadrant % 2 === 0 ? restRad + restRad * series(SINE, square) : 1 + series(COSINE, square);
  return quadrant < 2 ? value : -value;
}

function series(coefficients: readonly number[], square: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) sum = square * ((coefficients[i] ?? 0) + sum);
  return sum;
}
