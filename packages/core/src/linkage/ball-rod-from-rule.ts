import { radians } from "../numeric/angle.ts";
import { cosOf, sinOf } from "../numeric/sine.ts";
import type { Deg, Mm } from "../units/quantity.ts";
import type { BallRod } from "./linkage.ts";
import { cross, length, plus, times, toPoint, type Vector } from "./vector.ts";

/** What a rule and a protractor give of a ball-ended rod between two axes, at level. */
export interface RuleMeasurements {
  /** Shaft to hinge along the chord, aft; both at the planes in which arm and horn swing. */
  readonly aft: Mm;
  /** Shaft to hinge, up. */
  readonly up: Mm;
  /** Sideways from the plane of the arm's ball to the plane of the horn's ball, to starboard. */
  readonly starboard: Mm;
  /** Shaft to ball. */
  readonly arm: Mm;
  /** `across`: from aft (0) through up (90), seen from the port tip. `upright`: from aft (0) through starboard (90). */
  readonly armAt: Deg;
  /** The way the shaft points: `across`, to starboard, servo on its side (default); `upright`, up, servo lying flat. */
  readonly shaft?: "across" | "upright";
  /** Hinge line to ball. */
  readonly horn: Mm;
  /** Lean of the horn, square to the hinge: from aft (0) through up (90). */
  readonly hornAt: Deg;
  /** The hinge line's starboard end lies aft by this angle; 0 where left out. */
  readonly hingeSweep?: Deg;
  /** The hinge line's starboard end lies high by this angle; 0 where left out. */
  readonly hingeTilt?: Deg;
  /** Ball to ball; left out, what fits at level. */
  readonly rod?: Mm;
}

/** The space geometry of a builder's lengths. The origin is the shaft, in the plane of the arm's ball. */
export function ballRodFromRule(rule: RuleMeasurements): BallRod {
  const armRad = radians(rule.armAt);
  const upright = rule.shaft === "upright";
  const armDirection: Vector = upright
    ? [cosOf(armRad), sinOf(armRad), 0]
    : [cosOf(armRad), 0, sinOf(armRad)];
  const hinge: Vector = [rule.aft, rule.starboard, rule.up];
  const along = hingeAxis(radians(rule.hingeSweep ?? 0), radians(rule.hingeTilt ?? 0));
  const aftward = unit(cross(along, [0, 0, 1]));
  const upward = cross(aftward, along);
  const hornRad = radians(rule.hornAt);
  const hornDirection = plus(times(aftward, cosOf(hornRad)), times(upward, sinOf(hornRad)));
  return {
    kind: "ballRod",
    shaft: { through: toPoint([0, 0, 0]), along: toPoint(upright ? [0, 0, 1] : [0, 1, 0]) },
    armBall: toPoint(times(armDirection, rule.arm)),
    hinge: { through: toPoint(hinge), along: toPoint(along) },
    hornBall: toPoint(plus(hinge, times(hornDirection, rule.horn))),
    ...(rule.rod === undefined ? {} : { rod: rule.rod }),
  };
}

/** To starboard, turned aft by the sweep and up by the tilt. */
const hingeAxis = (sweepRad: number, tiltRad: number): Vector => [
  sinOf(sweepRad) * cosOf(tiltRad),
  cosOf(sweepRad) * cosOf(tiltRad),
  sinOf(tiltRad),
];

const unit = (v: Vector): Vector => times(v, 1 / length(v));
