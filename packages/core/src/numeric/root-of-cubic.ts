/** More than bisection needs to exhaust a double. */
const MOST_STEPS = 200;

/**
 * The s from 0 to `largest` with s (slope + s (square + s cube)) = target, for a cubic that is monotone there and reaches
 * target. Newton's rule kept inside a bracket, so that a slope of zero at either end does no harm; the answer is good to the
 * last places of a double.
 */
export function rootOfCubic(
  slope: number,
  square: number,
  cube: number,
  target: number,
  largest: number,
): number {
  if (target === 0) return 0;
  const sign = Math.sign(target);
  let low = 0;
  let high = largest;
  let s = largest / 2;
  for (let step = 0; step < MOST_STEPS; step++) {
    const excess = sign * (s * (slope + s * (square + s * cube)) - target);
    if (excess === 0) return s;
    if (excess > 0) high = s;
    else low = s;
    const newton = s - excess / (sign * (slope + s * (2 * square + s * 3 * cube)));
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - s) <= Number.EPSILON * s) return next;
    s = next;
  }
  return s;
}
