import type { Deg, Mm } from "../units/quantity.ts";
import type { Point } from "./linkage.ts";

/**
 * A linkage made computable. Rotation is the shaft's, from level, positive clockwise seen from the port tip
 * (right-handed about the shaft's axis); deflection is positive trailing edge down. Every answer is finite or undefined.
 * It knows only the branch that holds the level position, followed by continuity as far as it can be assembled.
 */
export interface Drive {
  /** The strictly monotone part of the branch around level. Where the linkage can turn for ever it ends at half a turn. */
  readonly range: DriveRange;
  /** Rotation -> deflection; undefined where the branch cannot be assembled. Goes on past a turning point. */
  deflectionAt(rotation: Deg): Deg | undefined;
  /** Deflection -> the one rotation inside `range`; undefined outside it. */
  rotationAt(deflection: Deg): Deg | undefined;
  /** Deflection -> every rotation of the branch that gives it, rising, within one turn around level. */
  rotationsAt(deflection: Deg): readonly Deg[];
  /** Rotation -> d(deflection)/d(rotation), signed; undefined where it cannot be assembled and at a dead centre. */
  ratioAt(rotation: Deg): number | undefined;
  /**
   * Rotation -> how each rod or pulling cable stands, from servo to surface; none for a drive without rods. Undefined
   * where it cannot be assembled, and where no moment of the surface reaches a rod, because no lever can be given: on the
   * level part of a cam, and in a chain where a later link turns back.
   */
  rodsAt(rotation: Deg): readonly RodStand[] | undefined;
  /** Rotation -> what to draw. */
  drawingAt(rotation: Deg): Drawing | undefined;
  /** Rotation -> slack of the cable that does not pull, negative where it would have to stretch. Cables only. */
  slackAt?(rotation: Deg): Mm | undefined;
  /** The carriage's way along its track. Drives that end in a track only. */
  readonly extension?: ExtensionDrive;
}

/** Shaft rotation <-> how far a carriage is out. */
export interface ExtensionDrive {
  /** Rotation -> extension from fully in, from 0 to the track's travel. */
  extensionAt(rotation: Deg): Mm | undefined;
  /** Extension -> the one rotation inside the drive's range; undefined outside it. */
  rotationAt(extension: Mm): Deg | undefined;
}

/** Both ends of a drive's range; `low` is the end of the lower rotation. */
export interface DriveRange {
  readonly low: DriveEnd;
  readonly high: DriveEnd;
}

/** One end of a drive's range: where shaft and surface stand there, and what ends it. */
export interface DriveEnd {
  readonly rotation: Deg;
  readonly deflection: Deg;
  /**
   * `deadCentreHorn`: rod and horn in line, the ratio is infinite, beyond it the rod does not reach;
   * `turnsBack`: arm and rod in line, the ratio is zero, beyond it the deflection comes back;
   * `cannotAssemble`: the rod stands square to its track, beyond it the rod does not reach;
   * `trackEnd`: the carriage stands at an end of its track; `full`: half a turn of the shaft and no limit met.
   */
  readonly kind: DriveEndKind;
}

/** What ends a drive's range; `DriveEnd` says what each means. */
export type DriveEndKind = "deadCentreHorn" | "turnsBack" | "cannotAssemble" | "trackEnd" | "full";

/** Leverage of one rod. Rod force = |hinge moment| / |surfaceLever|; torque at the servo = |hinge moment| * |ratio|. */
export interface RodStand {
  /** Lever of the rod about the shaft that drives it, signed: trade's r_s = axis . ((ball - shaft) x rod direction). */
  readonly shaftLever: Mm;
  /** Lever of the rod about the hinge, signed, r_h; through later links or a cam what has the same effect at the hinge. */
  readonly surfaceLever: Mm;
  /** |shaftLever| / arm: in a plane the sine of the angle between rod and arm; 0 where it turns back. */
  readonly sineAtArm: number;
  /** Lever / length at the horn, the same way; for a carriage the cosine between rod and track. 0 at a dead centre. */
  readonly sineAtHorn: number;
}

/** Named points and the straight parts between them. Leaving out `starboard` gives the view from the port tip. */
export interface Drawing {
  readonly points: Readonly<Record<string, Point>>;
  readonly segments: readonly Segment[];
  /** Names of the points where the shaft comes in and where the surface or the next link turns. */
  readonly from: string;
  readonly to: string;
}

/** A straight part between two of a drawing's points, by their names. */
export interface Segment {
  readonly part: "arm" | "rod" | "horn" | "track" | "cable" | "wire" | "surface";
  readonly between: readonly [string, string];
}

/** Why a linkage has no level position or no branch through it. Never thrown. */
export type LinkageProblem =
  /** A length that must be above zero is not; `name` is its key in the linkage. */
  | { readonly kind: "notALength"; readonly name: string; readonly lengthMm: number }
  /** The given rod does not reach, or is too long, with the arm at level: rods from shortest to longest would do. */
  | {
      readonly kind: "cannotAssemble";
      readonly rodMm: number;
      readonly shortestMm: number;
      readonly longestMm: number;
    }
  /**
   * Rod and horn, or rod and the square to the track, are in line at level, where two branches meet; or the horn's pin
   * stands on the shaft's own line, where the arm turns and moves nothing.
   */
  | { readonly kind: "deadCentreAtLevel" }
  /**
   * The bend is not above 0 and at most 90 degrees, or the tip would lie along the hinge line and move nothing: at level
   * where bend and skew together reach 90, half a turn on where bend less skew is 90.
   */
  | { readonly kind: "bendOutOfRange"; readonly bendDeg: number; readonly skewDeg: number }
  /** The cam's deflection does not keep rising or falling, first at this extension. */
  | { readonly kind: "camNotMonotone"; readonly extensionMm: number }
  /** The cam's table, from `fromMm` to `camMm`, does not reach from 0 to the track's end, or holds less than two points. */
  | {
      readonly kind: "camTooShort";
      readonly fromMm: number;
      readonly camMm: number;
      readonly travelMm: number;
    }
  /** With the given rod the carriage would stand off its track at level. */
  | { readonly kind: "offTrackAtLevel"; readonly extensionMm: number; readonly travelMm: number }
  /** A chain of no links. */
  | { readonly kind: "noLinks" }
  /** This link of the chain, counted from 0 at the servo, has a problem of its own. */
  | { readonly kind: "link"; readonly index: number; readonly problem: LinkageProblem }
  /** At level the links before it turn this link to where its own branch does not reach. */
  | { readonly kind: "linkOutOfReach"; readonly index: number; readonly rotationDeg: number };

/** Tells a problem from what was asked for; nothing else that `drive` and its parts return has a `kind`. */
export function isLinkageProblem(result: object): result is LinkageProblem {
  return "kind" in result;
}
