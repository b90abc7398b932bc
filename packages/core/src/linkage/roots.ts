import { bisect } from "../numeric/bisect.ts";
import { goldenSection } from "../numeric/golden-section.ts";

/** Largest step of the search, 2 degrees: two roots closer than this are told apart by the dip between them. */
const stepRad = Math.PI / 90;
/** Golden cuts that exhaust a dip. */
const cuts = 60;
/** The part of a step within which the way from the start shows whether it dips. */
const hair = 1e-6;

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
  // In the first step and in the last the dip's lowest place may have no neighbour that is looked at on its other side.
  if (Math.abs(f(at(hair))) < Math.abs(before) && Math.abs(before) <= Math.abs(here)) {
    const root = rootInDip(f, from, at(1), Math.sign(before), touch);
    if (root !== undefined) return root;
  }
  for (let i = 2; i <= count; i++) {
    const next = f(at(i));
    if (here * next <= 0 && here !== 0) return bisect(f, at(i - 1), at(i));
    if (Math.abs(here) < Math.abs(before) && Math.abs(here) <= Math.abs(next)) {
      const root = rootInDip(f, at(i - 2), at(i), Math.sign(here), touch);
      if (root !== undefined) return root;
    }
    before = here;
    here = next;
  }
  const isRising = Math.abs(f(at(count - hair))) < Math.abs(here) && Math.abs(here) <= Math.abs(before);
  return isRising ? rootInDip(f, at(count - 1), to, Math.sign(here), touch) : undefined;
}

/** The first root between `a` and `b`, where `f`, of this sign at both, dips once towards zero. */
function rootInDip(
  f: (x: number) => number,
  a: number,
  b: number,
  sign: number,
  touch: number,
): number | undefined {
  const dip = goldenSection((x) => -f(x) * sign, a, b, cuts).x;
  const value = f(dip) * sign;
  if (value < -touch) return bisect(f, a, dip);
  return value <= touch ? dip : undefined;
}
