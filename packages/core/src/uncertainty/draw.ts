import { logOf } from "../numeric/exponential.ts";
import { powerOf } from "../numeric/power.ts";
import type { Random } from "./random.ts";

/** What is known about an input. Widths and scales are 0 or more, in the unit of `mean`. */
export type Distribution =
  | { readonly kind: "normal"; readonly mean: number; readonly standard: number }
  /** Anywhere within plus and minus the half-width, all equally likely. */
  | { readonly kind: "rectangular"; readonly mean: number; readonly halfWidth: number }
  | { readonly kind: "triangular"; readonly mean: number; readonly halfWidth: number }
  /** The mean of few readings: `scale` is its standard doubt after `doubtFromRepeated`, `dof` above 0. */
  | { readonly kind: "t"; readonly mean: number; readonly scale: number; readonly dof: number };

/** One value of the input, by chance. Source: JCGM 101:2008 6.4 for the choice of distribution. */
export function draw(distribution: Distribution, random: Random): number {
  const { mean } = distribution;
  switch (distribution.kind) {
    case "normal":
      return mean + distribution.standard * drawNormal(random);
    case "rectangular":
      return mean + distribution.halfWidth * (2 * random() - 1);
    case "triangular":
      return mean + distribution.halfWidth * (random() + random() - 1);
    case "t":
      return mean + distribution.scale * drawStudent(distribution.dof, random);
  }
}

/** Source: G. Marsaglia, T. A. Bray, A convenient method for generating normal variables, SIAM Review 6 (1964). */
function drawNormal(random: Random): number {
  const [x, square] = inUnitCircle(random);
  return x * Math.sqrt((-2 * logOf(square)) / square);
}

/** Source: R. W. Bailey, Polar generation of random variates with the t-distribution, Math. Comp. 62 (1994). */
function drawStudent(dof: number, random: Random): number {
  const [x, square] = inUnitCircle(random);
  return x * Math.sqrt((dof * (powerOf(square, -2 / dof) - 1)) / square);
}

/** A point of the unit circle without its centre: one coordinate, and the square of its distance. */
function inUnitCircle(random: Random): readonly [x: number, square: number] {
  for (;;) {
    const [x, y] = [2 * random() - 1, 2 * random() - 1];
    const square = x ** 2 + y ** 2;
    if (square > 0 && square < 1) return [x, square];
  }
}
