import { bisect } from "../numeric/bisect.ts";

/** Largest step of the search, 2 degrees: two roots closer than this are told apart by the dip between them. */
const stepRad = Math.PI / 90;

/**
 * The first root of `f` on the way from `from` to `to` (either direction), bracketed down to neighbouring doubles;
 * undefined where there is none. A dip that stays within `touch` of zero counts as a root. The start is no root.
 */
export function firstRoot(f: (x: number) => number, from: number, to: number, touch = 0): number | undefined {
  const count = Math.max(2, Math.ceil(Math.abs(to - from) / stepRad));
  const at = (i: number) => (i === count ? to : from + ((to - from) * i) / count);
  let before = f(from);
  let here = f(at(1));
  if (before * here <= 0 && before !== 0) return bisect(f, from, at(1));
  for (let i = 2; i <= count; i++) {
    const next = f(at(i));
    if (here * next <= 0 && here !== 0) return bisect(f, at(i - 1), at(i));
    if (Math.abs(here) < Math.abs(before) && Math.abs(here) <= Math.abs(next)) {
      const dip = lowest((x) => f(x) * Math.sign(here), at(i - 2), at(i));
      const value = f(dip) * Math.sign(here);
      if (value < -touch) return bisect(f, at(i - 2), dip);
      if (value <= touch) return dip;
    }
    before = here;
    here = next;
  }
  return undefined;
}

/** Where `f`, which dips once between `a` and `b`, is lowest: golden section. */
function lowest(f: (x: number) => number, a: number, b: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let low = a;
  let high = b;
  let left = high - golden * (high - low);
  let right = low + golden * (high - low);
  let atLeft = f(left);
  let atRight = f(right);
  for (let i = 0; i < 60; i++) {
    if (atLeft < atRight) {
      high = right;
      right = left;
      atRight = atLeft;
      left = high - golden * (high - low);
      atLeft = f(left);
    } else {
      low = left;
      left = right;
      atLeft = atRight;
      right = low + golden * (high - low);
      atRight = f(right);
    }
  }
  return (low + high) / 2;
}
