import { degrees, radians } from "../numeric/angle.ts";
import { asinOf, atan2Of } from "../numeric/arc.ts";
import { hypotOf } from "../numeric/hypotenuse.ts";
import { cosOf, sinOf } from "../numeric/sine.ts";
import { type Deg, deg, type Mm, mm } from "../units/quantity.ts";

/** How a throw is read off: along the straight line between both trailing-edge points, or as their difference in height. */
export type ThrowBy = "straight" | "vertical";

/** Where the trailing edge stands at level, seen from the hinge, square to it. */
export interface TrailingEdge {
  /** Distance aft of the hinge, greater than 0. */
  readonly chord: Mm;
  /** Height above the hinge; left out, 0. */
  readonly rise?: Mm;
  /** Left out, `straight`. */
  readonly by?: ThrowBy;
}

/**
 * The throw at a deflection, both positive trailing edge down. Meant for deflections within 90 degrees of level.
 * Straight line: 2 r sin(d/2) with r from hinge to trailing edge. Vertical: z - (z cos d - x sin d).
 * Source: elementary trigonometry.
 */
export function throwAt(edge: TrailingEdge, deflection: Deg): Mm {
  const halfRad = radians(deflection) / 2;
  if (edge.by !== "vertical") return mm(2 * radiusMm(edge) * sinOf(halfRad));
  // z (1 - cos d) as 2 z sin²(d/2): no cancellation near level.
  const dropMm = 2 * riseMm(edge) * sinOf(halfRad) ** 2;
  return mm(dropMm + edge.chord * sinOf(radians(deflection)));
}

/**
 * The deflection at a throw, the inverse of `throwAt`; undefined where no deflection from -90 to +90 degrees gives it.
 * A vertical throw turns back where the trailing edge passes straight above or below the hinge; of two deflections with
 * the same throw this is the one nearer level.
 */
export function deflectionForThrow(edge: TrailingEdge, throwMm: Mm): Deg | undefined {
  const radius = radiusMm(edge);
  const leanRad = atan2Of(riseMm(edge), edge.chord);
  const angleRad =
    edge.by === "vertical"
      ? leanRad + asinOf(throwMm / radius - sinOf(leanRad))
      : 2 * asinOf(throwMm / (2 * radius));
  const angleDeg = degrees(angleRad);
  // asin gives NaN where the throw is longer than the surface can reach; NaN fails this comparison too.
  return Math.abs(angleDeg) <= 90 ? deg(angleDeg) : undefined;
}

/**
 * d(throw)/d(deflection) in millimetres per degree: what turns the doubt of a throw into the doubt of a deflection.
 * Zero or negative where a vertical throw has turned back.
 */
export function throwMmPerDegAt(edge: TrailingEdge, deflection: Deg): number {
  const angleRad = radians(deflection);
  const mmPerRad =
    edge.by === "vertical"
      ? riseMm(edge) * sinOf(angleRad) + edge.chord * cosOf(angleRad)
      : radiusMm(edge) * cosOf(angleRad / 2);
  return (mmPerRad * Math.PI) / 180;
}

function riseMm(edge: TrailingEdge): number {
  return edge.rise ?? 0;
}

function radiusMm(edge: TrailingEdge): number {
  return hypotOf(edge.chord, riseMm(edge));
}
