import { degrees, radians } from "../numeric/angle.ts";
import { atan2Of } from "../numeric/arc.ts";
import { deg, mm } from "../units/quantity.ts";
import { circleOf, pointOn } from "./circle.ts";
import type { Axis, BallRod, Linkage, Point } from "./linkage.ts";
import { cross, dot, length, minus, plus, times, toPoint, type Vector } from "./vector.ts";

/** One length or angle of a linkage that a builder can measure again. */
export interface Dimension {
  /**
   * Places of links in chains, then the name: ["links", 0, "horn"]. A ball-ended rod has the names of
   * `RuleMeasurements`, because its points are no lengths.
   */
  readonly path: readonly (string | number)[];
  readonly unit: "mm" | "deg";
  /** As declared. */
  readonly value: number;
  /** The linkage with another, finite value of it; `drive` says where that is none. */
  with(value: number): Linkage;
}

/** Every dimension that shapes a linkage, in a fixed order. A rod is one only where it is given. */
export function dimensionsOf(linkage: Linkage): readonly Dimension[] {
  switch (linkage.kind) {
    case "pushrod":
      return fields(linkage, {
        arm: "mm",
        horn: "mm",
        base: "mm",
        rise: "mm",
        rod: "mm",
        armAt: "deg",
        hornAt: "deg",
      });
    case "ballRod":
      return ballRodDimensions(linkage);
    case "bentRod":
      return fields(linkage, { bend: "deg", skew: "deg" });
    case "track":
      return fields(linkage, { arm: "mm", base: "mm", rise: "mm", rod: "mm", armAt: "deg", trackAt: "deg" });
    case "torqueRod":
      return [];
    case "cables":
      return fields(linkage, { arm: "mm", horn: "mm", base: "mm", armAft: "mm", hornAft: "mm" });
    case "chain":
      return linkage.links.flatMap((link, index) =>
        dimensionsOf(link).map((inner) => ({
          ...inner,
          path: ["links", index, ...inner.path],
          with: (value) => ({ ...linkage, links: linkage.links.with(index, inner.with(value)) }),
        })),
      );
  }
}

/** The named keys of a linkage, of those that it has. */
function fields<L extends Linkage>(
  linkage: L,
  units: { readonly [Key in keyof L]?: "mm" | "deg" },
): readonly Dimension[] {
  return Object.entries<"mm" | "deg" | undefined>(units).flatMap(([name, unit]) => {
    const value: unknown = linkage[name as keyof L];
    if (typeof value !== "number" || unit === undefined) return [];
    const brand = unit === "mm" ? mm : deg;
    return [{ path: [name], unit, value, with: (other) => ({ ...linkage, [name]: brand(other) }) }];
  });
}

function ballRodDimensions(ballRod: BallRod): readonly Dimension[] {
  const { shaft, armBall, hinge, hornBall } = ballRod;
  const hingeFrom = minus(hinge.through, shaft.through);
  const moved = (way: Vector): BallRod => ({
    ...ballRod,
    hinge: { ...hinge, through: toPoint(plus(hinge.through, way)) },
    hornBall: toPoint(plus(hornBall, way)),
  });
  const withArm = (ball: Point): BallRod => ({ ...ballRod, armBall: ball });
  const withHorn = (ball: Point): BallRod => ({ ...ballRod, hornBall: ball });
  return [
    ...leverLength("arm", shaft, armBall, withArm),
    ...leverLength("horn", hinge, hornBall, withHorn),
    { path: ["aft"], unit: "mm", value: hingeFrom[0], with: (aft) => moved([aft - hingeFrom[0], 0, 0]) },
    { path: ["up"], unit: "mm", value: hingeFrom[2], with: (up) => moved([0, 0, up - hingeFrom[2]]) },
    ...fields(ballRod, { rod: "mm" }),
    ...leverAngle("armAt", shaft, armBall, withArm),
    ...leverAngle("hornAt", hinge, hornBall, withHorn),
  ];
}

/** Distance of a ball from its axis; none for a ball on it. */
function leverLength(
  name: string,
  axis: Axis,
  ball: Point,
  using: (ball: Point) => Linkage,
): readonly Dimension[] {
  const { centre, level, radiusMm } = circleOf(axis.through, axis.along, ball);
  if (!(radiusMm > 0)) return [];
  return [
    {
      path: [name],
      unit: "mm",
      value: radiusMm,
      with: (value) => using(toPoint(plus(centre, times(level, value / radiusMm)))),
    },
  ];
}

/**
 * Layout angle of a ball about its axis, as `ballRodFromRule` counts it: from aft through up about an axis that runs across,
 * from aft through starboard about one that stands upright. None about an axis that runs aft, where nothing tells the two
 * apart, and for a ball on its axis.
 */
function leverAngle(
  name: string,
  axis: Axis,
  ball: Point,
  using: (ball: Point) => Linkage,
): readonly Dimension[] {
  const circle = circleOf(axis.through, axis.along, ball);
  const [, across, upright] = axis.along;
  const runsAcross = Math.abs(across) >= Math.abs(upright);
  const way = Math.sign(runsAcross ? across : upright);
  if (way === 0 || !(circle.radiusMm > 0)) return [];
  const along = times(axis.along, way / length(axis.along));
  const aftward = runsAcross ? cross(along, [0, 0, 1]) : cross([0, 1, 0], along);
  const sideward = runsAcross ? cross(aftward, along) : cross(along, aftward);
  const value = degrees(atan2Of(dot(circle.level, sideward), dot(circle.level, aftward)));
  // A positive turn about an axis to starboard goes from up to aft, about one that points up from aft to starboard.
  const sense = runsAcross ? -way : way;
  return [
    {
      path: [name],
      unit: "deg",
      value,
      with: (other) => using(toPoint(pointOn(circle, sense * radians(other - value)))),
    },
  ];
}
