import type { Deg, Mm } from "../units/quantity.ts";

/** What turns shaft rotation into deflection, as plain data measured with a rule; `drive` makes it computable. */
export type Linkage = Pushrod | BallRod | BentRod | Track | TorqueRod | Cables | Chain;

/** A point or a step, millimetres: aft, to starboard, up. The origin is free but the same throughout one linkage. */
export type Point = readonly [aft: Mm, starboard: Mm, up: Mm];

/** A straight line in space. A positive turn about it is right-handed about `along`; a flap's hinge runs to starboard. */
export interface Axis {
  /** Any point of the line. */
  readonly through: Point;
  /** The step from one point of the line to another; its length does not matter. */
  readonly along: Point;
}

/** A rod in one plane from a servo arm to a horn. x aft, z up; angles from aft (0) through up (90). */
export interface Pushrod {
  readonly kind: "pushrod";
  /** Shaft to rod pin. */
  readonly arm: Mm;
  /** Hinge to rod pin. */
  readonly horn: Mm;
  /** Shaft to hinge, aft. */
  readonly base: Mm;
  /** Shaft to hinge, up. */
  readonly rise: Mm;
  /** Angle of the arm at level. */
  readonly armAt: Deg;
  /** Angle of the horn at level. */
  readonly hornAt: Deg;
  /** Pin to pin; left out, what fits at level. */
  readonly rod?: Mm;
}

/** A ball-ended rod in space, shaft and hinge in any direction; `ballRodFromRule` writes one from a builder's lengths. */
export interface BallRod {
  readonly kind: "ballRod";
  readonly shaft: Axis;
  /** Centre of the arm's ball at level. */
  readonly armBall: Point;
  readonly hinge: Axis;
  /** Centre of the horn's ball at level. */
  readonly hornBall: Point;
  /** Ball to ball; left out, what fits at level. */
  readonly rod?: Mm;
}

/**
 * A wire that turns about its own length, bent where it crosses the hinge line, its tip in a pocket of the surface that
 * leaves it free to slide. Positive rotation is clockwise seen from the front, looking aft along the wire.
 */
export interface BentRod {
  readonly kind: "bentRod";
  /** Angle between the wire and its bent tip, above 0 and at most 90. */
  readonly bend: Deg;
  /** The side the tip points to at level. To port, positive rotation brings the trailing edge down. */
  readonly tipTo: "port" | "starboard";
  /** Lean of the wire from square to the hinge, towards the side of the tip; 0 where left out. */
  readonly skew?: Deg;
}

/** A servo arm and a rod that push a carriage along a straight track; the surface follows the carriage. */
export interface Track {
  readonly kind: "track";
  /** Shaft to rod pin. */
  readonly arm: Mm;
  /** Angle of the arm at level, from aft (0) through up (90). */
  readonly armAt: Deg;
  /** Shaft to the carriage's pin when fully in, aft. */
  readonly base: Mm;
  /** Shaft to the carriage's pin when fully in, up. */
  readonly rise: Mm;
  /** Sideways from the plane of the arm's pin to the carriage's pin; 0 where left out. */
  readonly aside?: Mm;
  /** Angle of the way out, from aft (0) through up (90); a track falling aft by 6 degrees is -6. */
  readonly trackAt: Deg;
  /** Free length: how far the carriage goes out. */
  readonly travel: Mm;
  /** Pin to pin; left out, what fits with the carriage fully in at level. */
  readonly rod?: Mm;
  readonly cam: Cam;
}

/** How deflection follows the carriage, strictly monotone over the track's travel. */
export type Cam =
  /** Sum of `deflection` times (extension / `length`) to the `power`; powers of 1 and more. */
  | {
      readonly kind: "powers";
      readonly length: Mm;
      readonly terms: readonly { readonly deflection: Deg; readonly power: number }[];
    }
  /** Measured pairs, extension rising, from 0 to the track's travel or beyond; between them a monotone cubic. */
  | { readonly kind: "table"; readonly points: readonly (readonly [extension: Mm, deflection: Deg])[] };

/** The shaft turns the surface about its own line, degree for degree. */
export interface TorqueRod {
  readonly kind: "torqueRod";
  /** Whether the surface turns with the shaft or, through a pair of equal gears, against it. */
  readonly sense: "same" | "opposite";
}

/** Two cables from a double arm to a double horn, just taut at level; one pulls, the other goes slack. */
export interface Cables {
  readonly kind: "cables";
  /** Shaft to each cable pin, across the line from shaft to hinge. */
  readonly arm: Mm;
  /** Hinge to each cable pin, across the same line. */
  readonly horn: Mm;
  /** Shaft to hinge. */
  readonly base: Mm;
  /** How far the arm's pins lie behind the shaft, towards the hinge; 0 where left out. */
  readonly armAft?: Mm;
  /** How far the horn's pins lie behind the hinge line, away from the shaft; 0 where left out. */
  readonly hornAft?: Mm;
  /** The cables cross between arm and horn, so that the surface turns against the shaft. */
  readonly crossed?: boolean;
}

/** Links one after another, from the servo to the surface: what one deflects is the shaft of the next. */
export interface Chain {
  readonly kind: "chain";
  readonly links: readonly Linkage[];
}
