/** Where a function is largest, and how large. */
export interface Peak {
  readonly x: number;
  readonly value: number;
}

/**
 * The peak of `f`, which has one hump between left and right, where `top` is the highest of three known points of it; it may
 * be left or right itself. To the last places of the value where f is smooth at its peak.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 5 (from memory).
 */
export function findPeak(f: (x: number) => number, left: Peak, top: Peak, right: Peak): Peak {
  if (top.x > left.x && top.x < right.x) return climb(f, left, top, right);
  // From an end it goes down at once, or the hump begins with a rise.
  const away = top.x > left.x ? left : right;
  const x = top.x + (away.x - top.x) * PROBE;
  const value = f(x);
  return value > top.value ? climb(f, left, { x, value }, right) : top;
}

/** A part of the interval in which a rise shows above the last places, and a hump can hide nothing. */
const PROBE = 1e-5;
/** A peak is flat: this near to it in x, the value differs in its last places only. */
const NEAR = 1e-6;
const GOLDEN = (3 - Math.sqrt(5)) / 2;
const MOST_STEPS = 60;

function climb(f: (x: number) => number, left: Peak, top: Peak, right: Peak): Peak {
  let [low, high] = [left.x, right.x];
  let best = top;
  let [second, third] = left.value > right.value ? [left, right] : [right, left];
  let step = high - low;
  let stepBefore = step;
  const near = NEAR * step;
  for (let count = 0; count < MOST_STEPS; count++) {
    const middle = (low + high) / 2;
    if (Math.abs(best.x - middle) + (high - low) / 2 <= 2 * near) break;
    const parabolic = vertexStep(best, second, third);
    const small = Math.abs(parabolic) < Math.abs(stepBefore) / 2;
    const target = best.x + parabolic;
    stepBefore = step;
    if (small && target > low && target < high) step = parabolic;
    else {
      stepBefore = best.x < middle ? high - best.x : low - best.x;
      step = GOLDEN * stepBefore;
    }
    if (Math.abs(step) < near) step = best.x < middle ? near : -near;
    const x = best.x + step;
    const now = { x, value: f(x) };
    if (now.value >= best.value) {
      if (x > best.x) low = best.x;
      else high = best.x;
      [best, second, third] = [now, best, second];
    } else {
      if (x > best.x) high = x;
      else low = x;
      if (now.value >= second.value || second.x === best.x) [second, third] = [now, second];
      else if (now.value >= third.value || third.x === best.x || third.x === second.x) third = now;
    }
  }
  return best;
}

/** From the best point to the vertex of the parabola through all three; NaN where they are not three. */
function vertexStep(best: Peak, second: Peak, third: Peak): number {
  const [a, b] = [best.x - second.x, best.x - third.x];
  const [rise, riseThird] = [best.value - second.value, best.value - third.value];
  const down = a * riseThird - b * rise;
  return down === 0 ? Number.NaN : -(a * a * riseThird - b * b * rise) / (2 * down);
}
