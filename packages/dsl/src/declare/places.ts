import type {
  Amps,
  AtExtension,
  AtPart,
  AtPulse,
  AtThrow,
  MeasuredStop,
  Mm,
  StopReason,
  Us,
} from "@hingeline/core";

/** A deflection stated as trailing-edge travel at the surface's chord, positive trailing edge down. */
export function atThrow(travel: Mm): AtThrow {
  return { kind: "throw", mm: travel };
}

/** A place stated as how far a carriage is out along its track; needs a linkage that ends in a track. */
export function atExtension(extension: Mm): AtExtension {
  return { kind: "extension", mm: extension };
}

/** A place stated as a pulse, for a bench without readings. */
export function atPulse(pulse: Us): AtPulse {
  return { kind: "pulse", us: pulse };
}

/**
 * A place stated as a share of the pulse span from level, for a bench without readings: 0 level, +1 the stop down,
 * -1 the stop up. Throws RangeError beyond -1 and +1, as the unit constructors do for NaN.
 */
export function atPart(part: number): AtPart {
  if (!(part >= -1 && part <= 1)) throw new RangeError(`atPart(${part}): expected a share from -1 to +1`);
  return { kind: "part", part };
}

/** The last pulse at which all was well, with the reason that it is the last and the holding current there. */
export function stopAt(pulse: Us, reason: StopReason, current?: Amps): MeasuredStop {
  return { kind: "stop", pulse, reason, ...(current === undefined ? {} : { current }) };
}
