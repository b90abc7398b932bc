// As in sine.ts: sums, products and quotients alone, which IEEE 754 fixes to the last bit.

/** The natural logarithm of 2: its first 32 bits after the point, so that a thousand of it are exact, and the rest. */
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;

/**
 * e to the power of x, within 2 units in the last place; the same bits in every engine. Infinity above 709.78, and below
 * -708 the digits run out, down to 0.
 */
export function expOf(x: number): number {
  if (!(x > -746)) return Number.isNaN(x) ? x : 0;
  if (x > 710) return Number.POSITIVE_INFINITY;
  const doublings = Math.round(x / (LN2_HIGH + LN2_LOW));
  const rest = x - doublings * LN2_HIGH - doublings * LN2_LOW;
  const half = doublings >> 1;
  return (1 + (rest + rest * expSeries(rest))) * powerOfTwo(half) * powerOfTwo(doublings - half);
}

/** Natural logarithm, within 2 units in the last place; the same bits in every engine. -Infinity of 0, NaN below. */
export function logOf(x: number): number {
  if (!(x > 0 && x < Number.POSITIVE_INFINITY))
    return x === 0 ? Number.NEGATIVE_INFINITY : x < 0 ? Number.NaN : x;
  let mantissa = x;
  let doublings = 0;
  for (const step of [32, 1]) {
    const factor = powerOfTwo(step);
    for (; mantissa < Math.SQRT1_2; doublings -= step) mantissa *= factor;
    for (; mantissa >= Math.SQRT2 * (factor / 2); doublings += step) mantissa /= factor;
  }
  const excess = mantissa - 1;
  const s = excess / (2 + excess);
  // log(1 + f) = 2 atanh(s), and 2 s = f - s f: so written, f alone decides the last digit.
  const lessRest = s * (excess - logSeries(s * s));
  return doublings * LN2_HIGH + (excess - (lessRest - doublings * LN2_LOW));
}

/** The series of e^x - 1 after its first term, over that term; up to half of log 2. */
function expSeries(x: number): number {
  let sum = 0;
  for (let n = 14; n >= 2; n--) sum = (x / n) * (1 + sum);
  return sum;
}

/** The series of 2 atanh after its first term, over s, in the square of s; up to 0.03. */
function logSeries(q: number): number {
  let sum = 0;
  for (let n = 23; n >= 3; n -= 2) sum = q * (2 / n + sum);
  return sum;
}

/** 2 to a whole power, by exact products. */
function powerOfTwo(exponent: number): number {
  let power = 1;
  let base = exponent < 0 ? 0.5 : 2;
  for (let rest = Math.abs(exponent); rest > 0; rest >>= 1) {
    if (rest % 2 === 1) power *= base;
    base *= base;
  }
  return power;
}
