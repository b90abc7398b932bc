import { cosOf, sinOf } from "./sine.ts";

// As in sine.ts: sums, products, quotients and square roots alone, which IEEE 754 fixes to the last bit.

const PARTS = 16;
/** The arc tangents of 0/16, 1/16 up to 16/16, each to the nearest double, and what that leaves out. */
const ARC_HIGH = [
  0, 0.06241880999595735, 0.12435499454676144, 0.18534794999569476, 0.24497866312686414, 0.3028848683749714,
  0.35877067027057225, 0.4124104415973873, 0.4636476090008061, 0.5123894603107377, 0.5585993153435624,
  0.6022873461349642, 0.6435011087932844, 0.6823165548747481, 0.7188299996216245, 0.7531512809621944,
  0.7853981633974483,
] as const;
const ARC_LOW = [
  0, -1.5490756308295046e-18, -3.1253241424539383e-18, 4.180692268843079e-18, 1.0698755618734451e-17,
  -1.1010827903001369e-17, -2.4623815582638635e-17, -1.587652227770689e-17, 2.2698777452961687e-17,
  -2.5462781472855804e-17, -5.4556305485916264e-18, 2.950430737228402e-17, 1.5834785051444286e-17,
  6.943223671560008e-18, -2.1478388444456983e-17, -2.4256934659182068e-17, 3.061616997868383e-17,
] as const;
/** A quarter turn less its nearest double. */
const QUARTER_LOW = 6.123233995736766e-17;

/** Arc tangent, radians from -pi/2 to pi/2, within 2 units in the last place; the same bits in every engine. */
export function atanOf(tangent: number): number {
  const size = Math.abs(tangent);
  const angleRad = size <= 1 ? arc(size) : Math.PI / 2 - (arc(1 / size) - QUARTER_LOW);
  return tangent < 0 ? -angleRad : angleRad;
}

/**
 * The angle of a point, radians, above -pi up to pi, within 2 units in the last place; the same bits in every engine. Both
 * coordinates finite; a zero of either sign counts as above zero, and both zero as the angle 0.
 */
export function atan2Of(y: number, x: number): number {
  const height = Math.abs(y);
  const width = Math.abs(x);
  const steep = height > width;
  let angleRad = height === 0 ? 0 : arc(steep ? width / height : height / width);
  if (steep) angleRad = Math.PI / 2 - (angleRad - QUARTER_LOW);
  if (x < 0) angleRad = Math.PI - (angleRad - 2 * QUARTER_LOW);
  return y < 0 ? -angleRad : angleRad;
}

/** Arc sine, radians from -pi/2 to pi/2, within 2 units in the last place; NaN beyond 1, as the engine's own. */
export function asinOf(sine: number): number {
  const size = Math.abs(sine);
  const angleRad =
    size < Math.SQRT1_2
      ? lowArcSine(size)
      : Math.PI / 2 - (2 * lowArcSine(Math.sqrt((1 - size) / 2)) - QUARTER_LOW);
  return sine < 0 ? -angleRad : angleRad;
}

/** Arc cosine, radians from 0 to pi, within 2 units in the last place; NaN beyond 1, as the engine's own. */
export function acosOf(cosine: number): number {
  if (cosine > 0.5) return 2 * lowArcSine(Math.sqrt((1 - cosine) / 2));
  return Math.PI / 2 - (asinOf(cosine) - QUARTER_LOW);
}

/** Of a sine from 0 to the root of a half: from the tangent, then one step of Newton's rule, which mends the last digit. */
function lowArcSine(sine: number): number {
  const roughRad = arc(sine / Math.sqrt((1 - sine) * (1 + sine)));
  return roughRad + (sine - sinOf(roughRad)) / cosOf(roughRad);
}

/** Arc tangent from 0 to 1: the arc tangent of the nearest sixteenth, and the short series of what is left. */
function arc(tangent: number): number {
  const part = (tangent * PARTS + 0.5) | 0;
  const near = part * (1 / PARTS);
  const t = (tangent - near) / (1 + tangent * near);
  const q = t * t;
  const series = q * (-1 / 3 + q * (1 / 5) + q * q * (-1 / 7 + q * (1 / 9) + q * q * (-1 / 11)));
  return (ARC_HIGH[part] as number) + ((ARC_LOW[part] as number) + (t + t * series));
}
