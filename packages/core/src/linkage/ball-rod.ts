import { circleOf } from "./circle.ts";
import { type Drive, isLinkageProblem, type LinkageProblem } from "./drive.ts";
import { findNonLength } from "./find-non-length.ts";
import type { BallRod } from "./linkage.ts";
import { rodDrive } from "./rod-drive.ts";
import { rodLoop } from "./rod-loop.ts";
import { length } from "./vector.ts";

/** A ball-ended rod in space. */
export function ballRodDrive(ballRod: BallRod): Drive | LinkageProblem {
  const { shaft, armBall, hinge, hornBall, rod } = ballRod;
  const axes = { "shaft.along": length(shaft.along), "hinge.along": length(hinge.along) };
  const axisProblem = findNonLength({ ...axes, ...(rod === undefined ? {} : { rod }) });
  if (axisProblem !== undefined) return axisProblem;
  const arm = circleOf(shaft.through, shaft.along, armBall);
  const horn = circleOf(hinge.through, hinge.along, hornBall);
  const radiusProblem = findNonLength({ armBall: arm.radiusMm, hornBall: horn.radiusMm });
  if (radiusProblem !== undefined) return radiusProblem;
  const loop = rodLoop(arm, horn, rod);
  return isLinkageProblem(loop) ? loop : rodDrive(loop);
}
