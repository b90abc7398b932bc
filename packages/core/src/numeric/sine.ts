// The language leaves the last digit of Math.sin and Math.cos to each engine, and engines differ in it. A plan's bytes
// must not depend on who compiles it, so these use sums and products alone, which IEEE 754 fixes to the last bit.

/** The first 33 bits of a quarter turn, so that a few quarter turns of it are exact, and the rest. */
const QUARTER_HIGH = 1.5707963267341256;
const QUARTER_LOW = 6.077100506506192e-11;
/** Quarter turns a radian. */
const QUARTERS = 1 / (QUARTER_HIGH + QUARTER_LOW);

/** Sine of an angle in radians, up to a hundred turns either way, to 2e-16; the same bits in every engine. */
export const sinOf = (angleRad: number): number => quarterTurns(angleRad, 0);

/** Cosine of an angle in radians, up to a hundred turns either way, to 2e-16; the same bits in every engine. */
export const cosOf = (angleRad: number): number => quarterTurns(angleRad, 1);

/** `cosOf` and `sinOf` of one angle, to the same bits, for less work. */
export function turnOf(angleRad: number): { readonly cos: number; readonly sin: number } {
  const quarters = Math.round(angleRad * QUARTERS);
  const restRad = angleRad - quarters * QUARTER_HIGH - quarters * QUARTER_LOW;
  const square = restRad * restRad;
  const sine = restRad + restRad * sineSeries(square);
  const cosine = 1 + cosineSeries(square);
  const quadrant = quarters & 3;
  if (quadrant === 0) return { cos: cosine, sin: sine };
  if (quadrant === 1) return { cos: -sine, sin: cosine };
  return quadrant === 2 ? { cos: -cosine, sin: -sine } : { cos: sine, sin: -cosine };
}

/** Sine of an angle that is ahead by some quarter turns. */
function quarterTurns(angleRad: number, ahead: number): number {
  const quarters = Math.round(angleRad * QUARTERS);
  const restRad = angleRad - quarters * QUARTER_HIGH - quarters * QUARTER_LOW;
  const square = restRad * restRad;
  // The two lowest bits, which of a negative number count from below as well.
  const quadrant = (quarters + ahead) & 3;
  const value = quadrant % 2 === 0 ? restRad + restRad * sineSeries(square) : 1 + cosineSeries(square);
  return quadrant < 2 ? value : -value;
}

/** The series of sine after its first term, over that term, in the square of the angle. */
function sineSeries(q: number): number {
  return (
    q *
    (-1 / 6 +
      q *
        (1 / 120 +
          q *
            (-1 / 5040 +
              q * (1 / 362880 + q * (-1 / 39916800 + q * (1 / 6227020800 + q * (-1 / 1307674368000)))))))
  );
}

/** The series of cosine after its one, in the square of the angle. */
function cosineSeries(q: number): number {
  return (
    q *
    (-1 / 2 +
      q *
        (1 / 24 +
          q *
            (-1 / 720 +
              q *
                (1 / 40320 +
                  q *
                    (-1 / 3628800 +
                      q * (1 / 479001600 + q * (-1 / 87178291200 + q * (1 / 20922789888000))))))))
  );
}
