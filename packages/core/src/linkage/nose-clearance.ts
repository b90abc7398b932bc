import { degrees, radians } from "../numeric/angle.ts";
import { hypotOf } from "../numeric/hypotenuse.ts";
import { cosOf, sinOf } from "../numeric/sine.ts";
import { type Deg, deg, type Mm, mm } from "../units/quantity.ts";
import { solveAngle } from "./solve-angle.ts";

/** A point of the section at level, millimetres from the hinge: aft, up. */
export type SectionPoint = readonly [aft: Mm, up: Mm];

/** How far a nose stands from the cove ahead of it. */
export interface NoseClearance {
  /** Deflection -> gap, ahead of the nose; negative where it would have run into the cove. */
  gapAt(deflection: Deg): Mm;
  /** The deflections nearest to level, up (negative) and down, at which the gap closes; left out where it never does. */
  readonly contact: { readonly up?: Deg; readonly down?: Deg };
}

/**
 * Clearance of the foremost point of a dropped hinge's surface: `nose` from the hinge at level, `gap` ahead of it at
 * level. It moves along the chord as x cos d + z sin d: a nose above the hinge closes up when the surface goes up.
 */
export function noseClearance(nose: SectionPoint, gap: Mm): NoseClearance {
  const [aftMm, upMm] = nose;
  const touchAtMm = aftMm - gap;
  const contacts = [1, -1]
    .map((side) => solveAngle(aftMm, upMm, touchAtMm, side))
    .filter((angleRad) => angleRad !== undefined)
    .map(degrees);
  const up = contacts.filter((angleDeg) => angleDeg <= 0).sort((a, b) => b - a)[0];
  const down = contacts.filter((angleDeg) => angleDeg > 0).sort((a, b) => a - b)[0];
  return {
    gapAt: (deflection) => mm(turned(nose, deflection)[0] - touchAtMm),
    contact: {
      ...(up === undefined ? {} : { up: deg(up) }),
      ...(down === undefined ? {} : { down: deg(down) }),
    },
  };
}

/** The slot of a slotted surface: a fixed lip and the round nose that moves past it. */
export interface Slot {
  /** The fixed edge, from the hinge. */
  readonly lip: SectionPoint;
  /** Centre of the nose's roundness at level, from the hinge. */
  readonly nose: SectionPoint;
  /** Radius of the nose; 0 for a sharp one. */
  readonly radius: Mm;
}

/** Deflection -> width of the slot, lip to nose; negative where they overlap. */
export function slotGapAt(slot: Slot, deflection: Deg): Mm {
  const [aftMm, upMm] = turned(slot.nose, deflection);
  return mm(hypotOf(aftMm - slot.lip[0], upMm - slot.lip[1]) - slot.radius);
}

/** Where a point of the surface stands after a deflection. */
function turned([aftMm, upMm]: SectionPoint, deflection: Deg): readonly [number, number] {
  const c = cosOf(radians(deflection));
  const s = sinOf(radians(deflection));
  return [aftMm * c + upMm * s, upMm * c - aftMm * s];
}
