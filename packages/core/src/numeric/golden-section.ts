/** What each cut leaves of the stretch. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Where `f`, which has one hump between `low` and `high`, is largest, and the largest value met there. Each cut leaves 0.618
 * of the stretch: 38 some 1e-8 of it, 60 some 3e-13. Beside a smooth hump's top the values alone tell no more than 1e-8.
 */
export function goldenSection(
  f: (x: number) => number,
  low: number,
  high: number,
  cuts: number,
): { readonly x: number; readonly value: number } {
  let [from, to] = [low, high];
  let [first, second] = [to - GOLDEN * (to - from), from + GOLDEN * (to - from)];
  let [atFirst, atSecond] = [f(first), f(second)];
  for (let cut = 0; cut < cuts; cut++) {
    if (atFirst > atSecond) {
      [to, second, atSecond] = [second, first, atFirst];
      first = to - GOLDEN * (to - from);
      atFirst = f(first);
    } else {
      [from, first, atFirst] = [first, second, atSecond];
      second = from + GOLDEN * (to - from);
      atSecond = f(second);
    }
  }
  return { x: (from + to) / 2, value: Math.max(atFirst, atSecond) };
}
