import { type Mps, mps, type Nm, nm, type Volts } from "../units/quantity.ts";

/** What a servo's sheet says of its strength. */
export interface RatedTorque {
  /** Stall torque, above 0. */
  readonly torque: Nm;
  /** Voltage at which it is stated, above 0. Left out: taken as the supply's. */
  readonly ratedAt?: Volts;
}

/** What a servo has to hold. */
export interface ServoLoad {
  /** Torque at the shaft. */
  readonly needed: Nm;
  /** Stall torque at the supply in use. */
  readonly held: Nm;
  /** Needed over held: 1 stalls the servo. */
  readonly share: number;
}

/** Share of its stall torque that a servo should use at most, where none is stated. From experience, no source. */
export const USUAL_SHARE = 0.5;

/**
 * Stall torque at the supply in use, in proportion to the voltage: near enough, common practice, no source. As stated
 * where either voltage is unknown.
 */
export function torqueAtSupply(servo: RatedTorque, supply?: Volts): Nm {
  if (servo.ratedAt === undefined || supply === undefined) return servo.torque;
  return nm((servo.torque * supply) / servo.ratedAt);
}

/**
 * Load of a servo that holds a hinge moment through a linkage with `ratio` d(deflection)/d(rotation) at that position;
 * without friction. Undefined where the servo holds nothing, so that there is no share.
 */
export function servoLoad(
  moment: Nm,
  ratio: number,
  servo: RatedTorque,
  supply?: Volts,
): ServoLoad | undefined {
  const held = torqueAtSupply(servo, supply);
  if (!(held > 0)) return undefined;
  const needed = nm(Math.abs(moment * ratio));
  return { needed, held, share: needed / held };
}

/**
 * Airspeed at which the load would use `allowed` of the torque, from the share at one airspeed; load grows with its
 * square. Undefined where there is no load, so that no speed is too high.
 */
export function limitSpeed(airspeed: Mps, share: number, allowed: number = USUAL_SHARE): Mps | undefined {
  return share > 0 && airspeed > 0 ? mps(airspeed * Math.sqrt(allowed / share)) : undefined;
}
