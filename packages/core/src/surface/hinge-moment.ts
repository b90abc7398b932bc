import { radians } from "../numeric/angle.ts";
import { acosOf } from "../numeric/arc.ts";
import { cosOf, sinOf } from "../numeric/sine.ts";
import { type Deg, type Mm, type Nm, nm } from "../units/quantity.ts";

/** How hard the air turns a surface back, per radian; both are negative where it resists. */
export interface HingeCoefficients {
  /** By incidence of the whole section, deflection held. */
  readonly b1PerRad: number;
  /** By deflection, incidence held. */
  readonly b2PerRad: number;
}

/** Plain flap of a thin section: hinge-moment coefficients and what it does to the lift. */
export interface FlapCoefficients extends HingeCoefficients {
  /** Incidence that changes the lift as much as one radian of deflection. */
  readonly effectiveness: number;
}

/** The part of a surface aft of its hinge. */
export interface FlapSize {
  readonly span: Mm;
  /** Hinge to trailing edge; the mean, where it tapers. */
  readonly chord: Mm;
}

/**
 * Coefficients of a plain, sealed flap that takes `chordFraction` of the section, from 0.01 to 1; undefined outside.
 * Gaps, thickness and a short span make real ones smaller. Source: H. Glauert, R&M 1095 (1927); closed forms as in
 * Houghton and Carpenter, Aerodynamics for Engineering Students, 4.5 (4.52) to (4.57).
 */
export function flapCoefficients(chordFraction: number): FlapCoefficients | undefined {
  if (!(chordFraction >= LEAST_FRACTION && chordFraction <= 1)) return undefined;
  // Glauert's angle of the hinge, and what is left of half a turn: the flap.
  const hingeRad = acosOf(2 * chordFraction - 1);
  const flapRad = Math.PI - hingeRad;
  const [cos, sin] = [cosOf(hingeRad), sinOf(hingeRad)];
  const [cosTwice, sinTwice] = [cosOf(2 * hingeRad), sinOf(2 * hingeRad)];
  const b1 = 2 * flapRad * (2 * cos - 1) + 4 * sin - sinTwice;
  const b2 = 1 - cosTwice - 2 * flapRad ** 2 * (1 - 2 * cos) + 4 * flapRad * sin;
  return {
    b1PerRad: -b1 / (4 * chordFraction ** 2),
    b2PerRad: -b2 / (4 * Math.PI * chordFraction ** 2),
    effectiveness: (flapRad + sin) / Math.PI,
  };
}

/** Coefficients as the trade states them, per degree. */
export function coefficientsPerDeg(b1PerDeg: number, b2PerDeg: number): HingeCoefficients {
  return { b1PerRad: (b1PerDeg * 180) / Math.PI, b2PerRad: (b2PerDeg * 180) / Math.PI };
}

/**
 * Size of the moment about the hinge at a dynamic pressure: the parts of incidence and deflection add up whatever their
 * signs, because the air may come from either side; the pressure is 0 or more. An estimate; it does not know the surface's weight or inertia.
 */
export function hingeMoment(
  size: FlapSize,
  coefficients: HingeCoefficients,
  dynamicPressurePa: number,
  angles: { readonly incidence: Deg; readonly deflection: Deg },
): Nm {
  const [spanM, chordM] = [size.span / 1000, size.chord / 1000];
  const coefficient =
    Math.abs(coefficients.b1PerRad * radians(angles.incidence)) +
    Math.abs(coefficients.b2PerRad * radians(angles.deflection));
  return nm(dynamicPressurePa * spanM * chordM ** 2 * coefficient);
}

/** Least part of a section that `flapCoefficients` takes: below it the closed forms lose their digits, and nobody builds it. */
export const LEAST_FRACTION = 0.01;
