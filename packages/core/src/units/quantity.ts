declare const unit: unique symbol;
declare const scale: unique symbol;

/** A number that carries its unit in its type and nothing at run time. */
export type Quantity<Unit extends string> = number & { readonly [unit]: Unit };

/** Pulse or pulse span, microseconds. */
export type Us = Quantity<"microseconds">;
/** Angle, degrees; a deflection is positive trailing edge down. */
export type Deg = Quantity<"degrees">;
/** Length or trailing-edge travel, millimetres. */
export type Mm = Quantity<"millimetres">;
/** Height, metres. */
export type Metres = Quantity<"metres">;
/** Time, seconds. */
export type Seconds = Quantity<"seconds">;
/** Torque or hinge moment, newton metres. */
export type Nm = Quantity<"newton metres">;
/** Airspeed, metres per second. */
export type Mps = Quantity<"metres per second">;
/** Servo speed, degrees of shaft per second. */
export type DegPerS = Quantity<"degrees per second">;
/** Servo rotation, degrees of shaft per microsecond of pulse. */
export type DegPerUs = Quantity<"degrees per microsecond">;
/** Voltage, volts. */
export type Volts = Quantity<"volts">;
/** Current, amperes. */
export type Amps = Quantity<"amperes">;
/** Force, newtons. */
export type Newtons = Quantity<"newtons">;
/** Temperature, degrees Celsius. */
export type Celsius = Quantity<"degrees Celsius">;
/** Mass, grams. */
export type Grams = Quantity<"grams">;

/**
 * What a transmitter shows for a channel. `Scale` is the name of its signal scale where that is known, so that the
 * percent of one radio is not accepted where another's is wanted; `Percent<never>` fits every scale.
 */
export type Percent<Scale extends string = string> = Quantity<"percent"> & { readonly [scale]: Scale };

// Says to bundlers that a constructor which nobody uses may be left out.
/* @__NO_SIDE_EFFECTS__ */
const finite =
  <Q extends Quantity<string>>(name: string) =>
  (value: number): Q => {
    if (!Number.isFinite(value)) throw new RangeError(`${name}(${value}): expected a finite number`);
    return value as Q;
  };

/** Microseconds. Throws RangeError for NaN and infinities, as every constructor here does. */
export const us = finite<Us>("us");
/** Percent on no named scale. */
export const pct = finite<Percent<never>>("pct");
/** Degrees, positive trailing edge down. */
export const deg = finite<Deg>("deg");
/** Millimetres. */
export const mm = finite<Mm>("mm");
/** Metres. */
export const m = finite<Metres>("m");
/** Seconds. */
export const s = finite<Seconds>("s");
/** Newton metres. */
export const nm = finite<Nm>("nm");
/** Metres per second. */
export const mps = finite<Mps>("mps");
/** Degrees per second. */
export const degPerS = finite<DegPerS>("degPerS");
/** Degrees of shaft rotation per microsecond of pulse. */
export const degPerUs = finite<DegPerUs>("degPerUs");
/** Volts. */
export const volts = finite<Volts>("volts");
/** Amperes. */
export const amps = finite<Amps>("amps");
/** Newtons. */
export const newtons = finite<Newtons>("newtons");
/** Degrees Celsius. */
export const celsius = finite<Celsius>("celsius");
/** Grams. */
export const grams = finite<Grams>("grams");
