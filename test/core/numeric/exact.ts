// Reference values in whole numbers: 200 bits after the point, by textbook series, none of it shared with the sources.

const BITS = 200n;
const ONE = 1n << BITS;

/** A number in units of 2^-200. */
export type Exact = bigint;

/** A double, exactly; at least 2^-140 or 0, so that all its bits are kept. */
export function exactly(x: number): Exact {
  let [whole, shift] = [x, 0n];
  while (!Number.isInteger(whole)) [whole, shift] = [whole * 2, shift + 1n];
  return (BigInt(whole) << BITS) >> shift;
}

/** How far a double is from the exact value, in units of the double's last place. */
export function ulpsOff(x: number, exact: Exact): number {
  const size = Math.abs(x);
  const place = 2 ** Math.max(-1022, Math.floor(Math.log2(size === 0 ? 1 : size))) * Number.EPSILON;
  const off = exactly(x) - exact;
  return Number(((off < 0n ? -off : off) * 1_000_000n) / exactly(place)) / 1e6;
}

const times = (a: Exact, b: Exact): Exact => (a * b) >> BITS;
const over = (a: Exact, b: Exact): Exact => (a << BITS) / b;

export function exactRoot(x: Exact): Exact {
  if (x === 0n) return 0n;
  let root = 1n << BigInt(((x << BITS).toString(2).length / 2 + 1) | 0);
  for (;;) {
    const next = (root + (x << BITS) / root) >> 1n;
    if (next >= root) return root;
    root = next;
  }
}

/** Halved six times by atan x = 2 atan(x / (1 + sqrt(1 + x^2))), then its series. */
export function exactArc(tangent: Exact): Exact {
  let x = tangent;
  for (let halved = 0; halved < 6; halved++) x = over(x, ONE + exactRoot(ONE + times(x, x)));
  const square = times(x, x);
  let [sum, power] = [0n, x];
  for (let n = 1n; power !== 0n && power !== -1n; n += 2n) {
    sum += n % 4n === 1n ? power / n : -power / n;
    power = times(power, square);
  }
  return sum << 6n;
}

export const exactPi: Exact = exactArc(ONE) * 4n;

/** atan2 for a point that is not the origin. */
export function exactAngle(y: Exact, x: Exact): Exact {
  const [height, width] = [y < 0n ? -y : y, x < 0n ? -x : x];
  const steep = height > width;
  const low = exactArc(steep ? over(width, height) : over(height, width));
  const first = steep ? exactPi / 2n - low : low;
  const turned = x < 0n ? exactPi - first : first;
  return y < 0n ? -turned : turned;
}

export const exactArcSine = (sine: Exact): Exact =>
  exactAngle(sine, exactRoot(times(ONE - sine, ONE + sine)));
export const exactArcCosine = (cosine: Exact): Exact =>
  exactAngle(exactRoot(times(ONE - cosine, ONE + cosine)), cosine);

/** The series of the sine (from 1) and the cosine (from 0), for angles up to some turns. */
function wave(angle: Exact, first: bigint): Exact {
  let [sum, term] = [0n, first === 0n ? ONE : angle];
  for (let n = first; term !== 0n && term !== -1n; n += 2n) {
    sum += term;
    term = -times(times(term, angle), angle) / ((n + 1n) * (n + 2n));
  }
  return sum;
}
export const exactSine = (angle: Exact): Exact => wave(angle, 1n);
export const exactCosine = (angle: Exact): Exact => wave(angle, 0n);

/** Halved twelve times, the series, and squared again. */
export function exactExp(x: Exact): Exact {
  const part = x >> 12n;
  let [sum, term] = [0n, ONE];
  for (let n = 1n; term !== 0n && term !== -1n; n++) {
    sum += term;
    term = times(term, part) / n;
  }
  for (let squared = 0; squared < 12; squared++) sum = times(sum, sum);
  return sum;
}

/** From the engine's own, by y + 2 (x - e^y) / (x + e^y), which triples its digits each time. */
export function exactLog(x: number): Exact {
  let log = exactly(Math.log(x));
  for (let step = 0; step < 3; step++) {
    const power = exactExp(log);
    log += over(2n * (exactly(x) - power), exactly(x) + power);
  }
  return log;
}
