import { radians } from "../numeric/angle.ts";
import { sinOf } from "../numeric/sine.ts";
import { type Deg, type Newtons, type Nm, newtons, nm } from "../units/quantity.ts";

/** Friction of a carriage on its track. From experience, no source. */
export const USUAL_FRICTION = 0.2;

/**
 * Force along a track that holds a surface which the air presses square to its chord with `normal`, 0 or more: the part
 * that pushes it back, whichever way it is deflected, and friction. Common practice, no source.
 */
export function trackForce(normal: Newtons, deflection: Deg, friction: number = USUAL_FRICTION): Newtons {
  return newtons(normal * (Math.abs(sinOf(radians(deflection))) + friction));
}

/**
 * Servo torque for a force along a track whose carriage moves by so many millimetres a radian of shaft, of either sign;
 * without friction in the linkage. Source: virtual work.
 */
export function trackTorque(force: Newtons, mmPerRad: number): Nm {
  return nm((force * Math.abs(mmPerRad)) / 1000);
}
