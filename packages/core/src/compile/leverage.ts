import { us } from "../units/quantity.ts";
import type { Rig } from "./rig-servos.ts";

/** How a servo holds its surface at one pulse. */
export interface Leverage {
  /** |d(deflection)/d(shaft rotation)|. */
  readonly ratio: number;
}

/** From the slope of the response and the servo's rotation per microsecond; undefined where either is not known. */
export function leverageAt({ response, named }: Rig, pulseUs: number): Leverage | undefined {
  const slope = response?.slopeAt(us(pulseUs));
  const rotation = named.servo.type?.rotation;
  return slope === undefined || rotation === undefined ? undefined : { ratio: Math.abs(slope / rotation) };
}
