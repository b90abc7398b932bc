import { rotationOf } from "../response/drive-response.ts";
import { deg, us } from "../units/quantity.ts";
import type { Rig } from "./rig-servos.ts";

/** How a servo holds its surface at one pulse. */
export interface Leverage {
  /** |d(deflection)/d(shaft rotation)|. */
  readonly ratio: number;
  /** Of the rod that stands worst, where the linkage is known: levers about shaft and hinge, millimetres, and sines at arm and horn. */
  readonly rod?: {
    readonly shaftMm: number;
    readonly surfaceMm: number;
    readonly sineAtArm: number;
    readonly sineAtHorn: number;
  };
}

/** From the linkage where there is one, else from the slope of the response and the servo's rotation; undefined where neither tells. */
export function leverageAt(rig: Rig, pulseUs: number): Leverage | undefined {
  return leverageOfLinkage(rig, pulseUs) ?? leverageOfSlope(rig, pulseUs);
}

function leverageOfLinkage({ linked }: Rig, pulseUs: number): Leverage | undefined {
  if (linked === undefined) return undefined;
  const rotation = deg(rotationOf(linked.line, pulseUs));
  const ratio = linked.drive.ratioAt(rotation);
  if (ratio === undefined) return undefined;
  const [worst] = [...(linked.drive.rodsAt(rotation) ?? [])].sort(
    (a, b) => Math.min(a.sineAtArm, a.sineAtHorn) - Math.min(b.sineAtArm, b.sineAtHorn),
  );
  if (worst === undefined) return { ratio: Math.abs(ratio) };
  const { shaftLever, surfaceLever, sineAtArm, sineAtHorn } = worst;
  return {
    ratio: Math.abs(ratio),
    rod: { shaftMm: Math.abs(shaftLever), surfaceMm: Math.abs(surfaceLever), sineAtArm, sineAtHorn },
  };
}

function leverageOfSlope({ response, named }: Rig, pulseUs: number): Leverage | undefined {
  const slope = response?.slopeAt(us(pulseUs));
  const rotation = named.servo.type?.rotation;
  return slope === undefined || rotation === undefined ? undefined : { ratio: Math.abs(slope / rotation) };
}
