import { radians } from "../numeric/angle.ts";
import { type Circle, circleOf } from "./circle.ts";
import { type Drive, isLinkageProblem, type LinkageProblem } from "./drive.ts";
import { findNonLength } from "./find-non-length.ts";
import type { Pushrod } from "./linkage.ts";
import { rodDrive } from "./rod-drive.ts";
import { rodLoop } from "./rod-loop.ts";
import { inView, plus, toStarboard, type Vector } from "./vector.ts";

/** A rod in one plane: shaft at the origin, both axes to starboard. */
export function pushrodDrive(pushrod: Pushrod): Drive | LinkageProblem {
  const { arm, horn, rod, base, rise } = pushrod;
  const problem = findNonLength({ arm, horn, ...(rod === undefined ? {} : { rod }) });
  if (problem !== undefined) return problem;
  const loop = rodLoop(
    circleInView([0, 0, 0], arm, pushrod.armAt),
    circleInView([base, 0, rise], horn, pushrod.hornAt),
    rod,
  );
  return isLinkageProblem(loop) ? loop : rodDrive(loop);
}

/** The circle of a pin about an axis to starboard, at a layout angle from aft (0) through up (90). */
function circleInView(pivot: Vector, radiusMm: number, atDeg: number): Circle {
  return circleOf(pivot, toStarboard, plus(pivot, inView(radiusMm, radians(atDeg))));
}
