import {
  type Deg,
  type DegPerS,
  deg,
  degPerS,
  type Grams,
  grams,
  type Mm,
  type Mps,
  mm,
  mps,
  type Nm,
  nm,
} from "./quantity.ts";

/**
 * The units that servo sheets, rulers and airspeed meters use, in those of this package. All but the radian are exact
 * by definition. Sources: BIPM, The International System of Units, 9th edition 2019, for g_n (3rd CGPM 1901), the
 * radian and the degree; NIST SP 811 (2008) appendix B for the foot of 0.3048 m, the pound of 0.45359237 kg, the mile
 * and the knot of 1852 m in an hour. Seconds per 60 degrees is common practice, no source.
 */
export const UNITS = {
  /** Standard gravity, m/s2: newtons in a kilogram-force. Exact. */
  newtonsPerKgf: 9.80665,
  /** Newton metres in a kgf cm: 9.80665 hundredths. Exact. */
  nmPerKgfCm: 0.0980665,
  /** Newton metres in an ozf in: 0.45359237 / 16 times 9.80665 times 0.0254. The nearest double. */
  nmPerOzfIn: 0.0070615518142260435,
  /** Millimetres in an inch. Exact. */
  mmPerInch: 25.4,
  /** Millimetres in a foot, 12 inches. Exact. */
  mmPerFoot: 304.8,
  /** Metres per second in a mile per hour: 1609.344 / 3600. Exact. */
  mpsPerMph: 0.44704,
  /** Metres in a kilometre and in a nautical mile, for speeds in an hour. Exact. */
  metresPerKm: 1000,
  metresPerNauticalMile: 1852,
  secondsPerHour: 3600,
  /** Grams in an avoirdupois ounce: 453.59237 / 16. Exact. */
  gramsPerOunce: 28.349523125,
  /** Radians in a degree. Irrational: the nearest double. */
  radPerDeg: Math.PI / 180,
} as const;

// Every `from…` takes a plain number in the unit of its name and every `to…` gives one. As the constructors of
// quantity.ts do, they throw RangeError where the value is no finite number.

/** Torque in kilogram-force centimetres ("kg cm" on a servo sheet), in newton metres. */
export const fromKgfCm = (kgfCm: number): Nm => nm(kgfCm * UNITS.nmPerKgfCm);
/** Torque in kilogram-force centimetres. */
export const toKgfCm = (torque: Nm): number => nm(torque) / UNITS.nmPerKgfCm;

/** Torque in ounce-force inches ("oz in" on a servo sheet), in newton metres. */
export const fromOzfIn = (ozfIn: number): Nm => nm(ozfIn * UNITS.nmPerOzfIn);
/** Torque in ounce-force inches. */
export const toOzfIn = (torque: Nm): number => nm(torque) / UNITS.nmPerOzfIn;

/** Length in inches, in millimetres. */
export const fromInch = (inch: number): Mm => mm(inch * UNITS.mmPerInch);
/** Length in inches. */
export const toInch = (length: Mm): number => mm(length) / UNITS.mmPerInch;

/** Length in feet, in millimetres. */
export const fromFoot = (foot: number): Mm => mm(foot * UNITS.mmPerFoot);
/** Length in feet. */
export const toFoot = (length: Mm): number => mm(length) / UNITS.mmPerFoot;

/** Servo speed in seconds for 60 degrees of shaft, in degrees per second. Zero seconds throw: no servo is that fast. */
export const fromSecondsPer60Deg = (seconds: number): DegPerS => degPerS(60 / seconds);
/** Servo speed in seconds for 60 degrees of shaft. A speed of zero throws. */
export const toSecondsPer60Deg = (speed: DegPerS): number =>
  finite("toSecondsPer60Deg", speed, 60 / degPerS(speed));

/** Airspeed in kilometres per hour, in metres per second. */
export const fromKmPerH = (kmPerH: number): Mps => mps((kmPerH * UNITS.metresPerKm) / UNITS.secondsPerHour);
/** Airspeed in kilometres per hour. */
export const toKmPerH = (speed: Mps): number => (mps(speed) * UNITS.secondsPerHour) / UNITS.metresPerKm;

/** Airspeed in statute miles per hour, in metres per second. */
export const fromMph = (mph: number): Mps => mps(mph * UNITS.mpsPerMph);
/** Airspeed in statute miles per hour. */
export const toMph = (speed: Mps): number => mps(speed) / UNITS.mpsPerMph;

/** Airspeed in knots, in metres per second. */
export const fromKnots = (knots: number): Mps =>
  mps((knots * UNITS.metresPerNauticalMile) / UNITS.secondsPerHour);
/** Airspeed in knots. */
export const toKnots = (speed: Mps): number =>
  (mps(speed) * UNITS.secondsPerHour) / UNITS.metresPerNauticalMile;

/** Angle in radians, in degrees. */
export const fromRad = (rad: number): Deg => deg(rad / UNITS.radPerDeg);
/** Angle in radians. */
export const toRad = (angle: Deg): number => deg(angle) * UNITS.radPerDeg;

/** Mass in avoirdupois ounces, in grams. */
export const fromOunce = (ounce: number): Grams => grams(ounce * UNITS.gramsPerOunce);
/** Mass in avoirdupois ounces. */
export const toOunce = (mass: Grams): number => grams(mass) / UNITS.gramsPerOunce;

function finite(name: string, from: number, to: number): number {
  if (!Number.isFinite(to)) throw new RangeError(`${name}(${from}): expected a speed above zero`);
  return to;
}
