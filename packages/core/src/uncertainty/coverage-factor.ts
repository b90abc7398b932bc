import { expOf } from "../numeric/exponential.ts";
import { powerOf } from "../numeric/power.ts";
import { cosOf, sinOf } from "../numeric/sine.ts";
/**
 * Half-width, in standard doubts, that holds a value with probability `coverage` (above 0, below 1): 2.92 for 0.99 and
 * 16 degrees of freedom. `dof` is 1 or more, Infinity for a normal distribution; a fraction counts as the next lower
 * whole number. Source: JCGM 100:2008 G.3.2 and G.4.1.
 */
export function coverageFactor(coverage: number, dof = Infinity): number {
  // A sum that should be whole may have come out a rounding below.
  const whole = Math.floor(dof * (1 + 1e-12));
  if (whole > LARGEST_SUMMED) return fromNormal(normalFactor(coverage), whole);
  const angle = bisect((angleRad) => studentCoverage(angleRad, whole), coverage, Math.PI / 2);
  return Math.sqrt(whole) * (sinOf(angle) / cosOf(angle));
}

/** Beyond it the sums grow long, and the expansion about the normal distribution errs by 1e-10 at a coverage of 0.9999. */
const LARGEST_SUMMED = 400;

/** Beyond it a normal distribution has less than a double can tell from nothing. */
const LARGEST_NORMAL = 9;

/**
 * Probability that |t| is below sqrt(dof) tan(angle), for whole degrees of freedom. Source: Abramowitz and Stegun,
 * Handbook of Mathematical Functions, 26.7.3 (odd) and 26.7.4 (even).
 */
function studentCoverage(angleRad: number, dof: number): number {
  const [cos, sin] = [cosOf(angleRad), sinOf(angleRad)];
  const isOdd = dof % 2 === 1;
  let term = isOdd ? cos : 1;
  let sum = 0;
  for (let power = isOdd ? 1 : 0; power <= dof - 2; power += 2) {
    sum += term;
    term *= (cos ** 2 * (power + 1)) / (power + 2);
  }
  return isOdd ? (2 / Math.PI) * (angleRad + sin * sum) : sin * sum;
}

function normalFactor(coverage: number): number {
  return bisect(normalCoverage, coverage, LARGEST_NORMAL);
}

/** Probability that a standard normal value is within plus and minus z. Source: Abramowitz and Stegun 26.2.11. */
function normalCoverage(z: number): number {
  let term = z;
  let sum = 0;
  for (let odd = 3; sum + term !== sum; odd += 2) {
    sum += term;
    term *= z ** 2 / odd;
  }
  return Math.sqrt(2 / Math.PI) * expOf(-(z ** 2) / 2) * sum;
}

/** Student's t from the normal distribution's z for many degrees of freedom. Source: Abramowitz and Stegun 26.7.5. */
function fromNormal(z: number, dof: number): number {
  const g1 = (powerOf(z, 3) + z) / 4;
  const g2 = (5 * powerOf(z, 5) + 16 * powerOf(z, 3) + 3 * z) / 96;
  const g3 = (3 * powerOf(z, 7) + 19 * powerOf(z, 5) + 17 * powerOf(z, 3) - 15 * z) / 384;
  const g4 =
    (79 * powerOf(z, 9) + 776 * powerOf(z, 7) + 1482 * powerOf(z, 5) - 1920 * powerOf(z, 3) - 945 * z) /
    92160;
  return z + g1 / dof + g2 / dof ** 2 + g3 / powerOf(dof, 3) + g4 / powerOf(dof, 4);
}

/** Where a rising function takes a value, from 0 to `most`, to the last digit. */
function bisect(rising: (at: number) => number, value: number, most: number): number {
  let [low, high] = [0, most];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (rising(middle) < value) low = middle;
    else high = middle;
  }
}
