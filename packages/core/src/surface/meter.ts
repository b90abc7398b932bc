import { degrees, radians } from "../numeric/angle.ts";
import { asinOf, atan2Of } from "../numeric/arc.ts";
import { cosOf, sinOf } from "../numeric/sine.ts";
import { type Deg, deg } from "../units/quantity.ts";

/**
 * How an angle meter stands on the surface: `square` to the hinge, laid along the line of flight, or a one-axis `gravity`
 * meter that shows the slope of what it lies on.
 */
export type MeterKind = "square" | "alongFlight" | "gravity";

/** A meter and the hinge it is used at. */
export interface MeterSetting {
  readonly meter: MeterKind;
  /** Hinge line from square to the line of flight; counts for `alongFlight`. Left out, 0. */
  readonly sweep?: Deg;
  /** Hinge line from horizontal; counts for `gravity`. Left out, 0. A fin has 90. */
  readonly tilt?: Deg;
}

/** An angle, and how many degrees of true deflection one degree shown stands for there. */
export interface MeterAngle {
  readonly kind: "angle";
  readonly angle: Deg;
  readonly trueDegPerShownDeg: number;
}

/** Why a meter says nothing about the deflection. */
export type MeterProblem =
  /** The hinge stands too steep for a gravity meter, or lies too much along a meter laid along flight. */
  | {
      readonly kind: "hingeUnfit";
      readonly meter: MeterKind;
      readonly hingeDeg: number;
      readonly largestHingeDeg: number;
    }
  /** No deflection within 90 degrees of level has this angle. */
  | {
      readonly kind: "noSuchAngle";
      readonly meter: MeterKind;
      readonly angleDeg: number;
      readonly largestDeg: number;
    };

/**
 * Steepest hinge at which a meter is still believed: there one degree shown stands for nearly four.
 * Common practice, no source.
 */
const LARGEST_HINGE_DEG = 75;

/**
 * The true deflection about the hinge, below 90 degrees, from the angle that the meter has turned by since level.
 * Along flight: tan(shown) = tan(true) cos(sweep). Gravity: sin(shown) = cos(tilt) sin(true).
 * Source: projection of the surface's chord line; elementary trigonometry.
 */
export function trueDeflection(setting: MeterSetting, shown: Deg): MeterAngle | MeterProblem {
  const cosine = hingeCosine(setting);
  if (typeof cosine !== "number") return cosine;
  const trueDeg = Math.abs(shown) < 90 ? project(setting, shown, 1 / cosine) : Number.NaN;
  // NaN, from here or from asin, is not below 90 either.
  if (Math.abs(trueDeg) < 90) {
    return { kind: "angle", angle: deg(trueDeg), trueDegPerShownDeg: gain(setting, trueDeg, shown, cosine) };
  }
  const largestDeg = project(setting, 90, cosine);
  return { kind: "noSuchAngle", meter: setting.meter, angleDeg: shown, largestDeg };
}

/** What the meter shows at a true deflection below 90 degrees: the inverse of `trueDeflection`. */
export function shownDeflection(setting: MeterSetting, deflection: Deg): MeterAngle | MeterProblem {
  const cosine = hingeCosine(setting);
  if (typeof cosine !== "number") return cosine;
  if (Math.abs(deflection) < 90) {
    const shownDeg = project(setting, deflection, cosine);
    return {
      kind: "angle",
      angle: deg(shownDeg),
      trueDegPerShownDeg: gain(setting, deflection, shownDeg, cosine),
    };
  }
  return { kind: "noSuchAngle", meter: setting.meter, angleDeg: deflection, largestDeg: 90 };
}

function hingeCosine(setting: MeterSetting): number | MeterProblem {
  const hingeDeg = { square: 0, alongFlight: setting.sweep ?? 0, gravity: setting.tilt ?? 0 }[setting.meter];
  if (Math.abs(hingeDeg) <= LARGEST_HINGE_DEG) return cosOf(radians(hingeDeg));
  return { kind: "hingeUnfit", meter: setting.meter, hingeDeg, largestHingeDeg: LARGEST_HINGE_DEG };
}

function project(setting: MeterSetting, angleDeg: number, factor: number): number {
  // So that a meter without correction changes no digit.
  if (factor === 1) return angleDeg;
  const angleRad = radians(angleDeg);
  const projectedRad =
    setting.meter === "gravity"
      ? asinOf(factor * sinOf(angleRad))
      : atan2Of(factor * sinOf(angleRad), cosOf(angleRad));
  return degrees(projectedRad);
}

function gain(setting: MeterSetting, trueDeg: number, shownDeg: number, cosine: number): number {
  const [trueCosine, shownCosine] = [cosOf(radians(trueDeg)), cosOf(radians(shownDeg))];
  return setting.meter === "gravity"
    ? shownCosine / (cosine * trueCosine)
    : trueCosine ** 2 / (cosine * shownCosine ** 2);
}
