import { atan2Of } from "../numeric/arc.ts";

/** Of the squares' sum: what three rounded squares can be off by. A negative rest within it is a dead centre, not a miss. */
const rounding = 1e-14;

/**
 * The angle x, radians in (-pi, pi], with a cos x + b sin x = c. `side` +1 or -1 picks one of the two; it is the sign of
 * a sin x - b cos x, which never changes along a branch. Undefined where there is none and where a = b = 0.
 * Form: McCarthy and Soh, Geometric Design of Linkages, 2nd ed. 2011, appendix A.1.
 */
export function solveAngle(a: number, b: number, c: number, side: number): number | undefined {
  const squares = a * a + b * b;
  const rest = squares - c * c;
  if (squares === 0 || rest < -rounding * squares) return undefined;
  const root = rest > 0 ? side * Math.sqrt(rest) : 0;
  // Sine and cosine of x, both times a^2 + b^2. An arc cosine would lose half the digits near a dead centre.
  return atan2Of(b * c + a * root, a * c - b * root);
}
