import type { Model } from "../model/model.ts";
import type { Output } from "./output.ts";
import { type PlanCurve, planCurve } from "./plan-curve.ts";
import type { Report } from "./report.ts";

/** What a curve may be off where no matched group says less, degrees. (assumption of experience) */
const usualWithinDeg = 0.5;
/** No radio is taken to have more points. (common practice, no source) */
const mostPoints = 17;

/** How many points a correction curve needs, where those of the radio leave it further off than is wanted. */
export function remarkCurve(
  output: Output,
  curve: PlanCurve | undefined,
  { radio, groups }: Model,
  report: Report,
): void {
  const withins = Object.values(groups ?? {}).flatMap((group) =>
    group.kind === "matched" && group.surfaces.includes(output.motion.name) ? [group.within] : [],
  );
  const wantedDeg = Math.min(usualWithinDeg, ...withins);
  const worstDeg = curve?.curveWorstDeg;
  if (worstDeg === undefined || worstDeg <= wantedDeg) return;
  const isFine = (points: number) => (planCurve(output, radio, points)?.curveWorstDeg ?? 0) <= wantedDeg;
  // Where the most points do not serve, a coarse step is to blame, and fewer are not worth trying.
  const reachable = radio.curvePoints < mostPoints && isFine(mostPoints);
  let needed = reachable ? radio.curvePoints + 1 : mostPoints;
  while (needed < mostPoints && !isFine(needed)) needed++;
  report(reachable ? "curve-coarse" : "curve-never-fine", output.members[0].rig.named.address, {
    surface: output.motion.name,
    points: radio.curvePoints,
    worstDeg,
    wantedDeg,
    needed,
  });
}
