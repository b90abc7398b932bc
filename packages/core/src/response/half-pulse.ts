import { type Deg, deg, type Us, us } from "../units/quantity.ts";
import type { Response } from "./response.ts";

/** What the surface does at half of a pulse span, against half of the deflection. */
export interface HalfPulse {
  readonly pulseUs: Us;
  /** Deflection at half the pulse span. */
  readonly deflectionDeg: Deg;
  /** Half-way between the deflections at both ends. */
  readonly wantedDeg: Deg;
  /** `deflectionDeg` minus `wantedDeg`: the mistake of who takes half the pulses for half the deflection. */
  readonly errorDeg: Deg;
}

/** The half of the span between two pulses, in either order; undefined where the response does not cover both. */
export function halfPulse(response: Response, from: Us, to: Us): HalfPulse | undefined {
  const pulseUs = us((from + to) / 2);
  const [fromDeg, toDeg] = [response.deflectionAt(from), response.deflectionAt(to)];
  const deflectionDeg = response.deflectionAt(pulseUs);
  if (fromDeg === undefined || toDeg === undefined || deflectionDeg === undefined) return undefined;
  const wantedDeg = deg((fromDeg + toDeg) / 2);
  return { pulseUs, deflectionDeg, wantedDeg, errorDeg: deg(deflectionDeg - wantedDeg) };
}
