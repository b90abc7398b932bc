import type { Drive, DriveEnd } from "../linkage/drive.ts";
import { type Deg, deg, degPerUs, type Us, us } from "../units/quantity.ts";
import { branded } from "./branded.ts";
import type { Response } from "./response.ts";
import { smoothPieces } from "./smooth-pieces.ts";

/** How a servo's pulse turns the shaft of a drive, and how the deflection is read, in plain numbers. */
export interface ShaftLine {
  readonly levelUs: number;
  /** Rotation per microsecond, positive where the shaft turns clockwise as the pulse rises; not 0. */
  readonly degPerUs: number;
  /** Rotation at the level pulse, in the drive's count. */
  readonly rotationZeroDeg: number;
  /** What is read where the drive's deflection is 0. */
  readonly deflectionZeroDeg: number;
}

/** An end of a drive that cuts a response short. */
export interface Cut {
  /** Where the response ends instead. */
  readonly pulse: Us;
  /** The drive's own end: rotation, deflection, kind. */
  readonly end: DriveEnd;
}

/** Where the asked pulses went beyond the drive's range: at the low or at the high pulse, or both. */
export interface Cuts {
  readonly low?: Cut;
  readonly high?: Cut;
}

/** A response made from a drive. */
export interface LinkageResponse {
  readonly response: Response;
  /** The drive, and pulse -> its rotation by `rotationOf`: for ratio, rods and drawing at a pulse. */
  readonly drive: Drive;
  readonly line: ShaftLine;
  readonly cut: Cuts;
}

/** How far a drive can be used towards one of its ends. */
export interface UsableEnd {
  readonly rotationDeg: number;
  readonly end: DriveEnd;
}

/**
 * A response ends this far inside a dead centre, degrees of rotation: there the slope is zero or infinite, and neither the
 * way back nor the slope could be told.
 */
export const DEAD_CENTRE_MARGIN_DEG = 0.01;

/** A piece of a response keeps this near to the cubic through its ends and their slopes. */
const PIECE_DEG = 1e-7;

/** Pulse -> rotation. */
export function rotationOf(line: ShaftLine, pulseUs: number): number {
  return line.degPerUs * (pulseUs - line.levelUs) + line.rotationZeroDeg;
}

/**
 * The response of a servo that drives a linkage, between two pulses, low then high, as far as the drive is monotone; and
 * which of its ends cut it short. Undefined where nothing is left.
 */
export function driveResponse(
  drive: Drive,
  line: ShaftLine,
  [lowUs, highUs]: readonly [number, number],
): LinkageResponse | undefined {
  const pulseOf = (rotationDeg: number) =>
    line.levelUs + (rotationDeg - line.rotationZeroDeg) / line.degPerUs;
  const usable = usableRotations(drive);
  const [atLow, atHigh] = line.degPerUs > 0 ? usable : usable.toReversed();
  if (atLow === undefined || atHigh === undefined) return undefined;
  const reachLowUs = pulseOf(atLow.rotationDeg);
  const reachHighUs = pulseOf(atHigh.rotationDeg);
  const pulses = [us(Math.max(lowUs, reachLowUs)), us(Math.min(highUs, reachHighUs))] as const;
  if (!(pulses[0] < pulses[1])) return undefined;
  const response = responseOver(drive, line, pulses);
  if (response === undefined) return undefined;
  return {
    response,
    drive,
    line,
    cut: {
      ...(reachLowUs > lowUs ? { low: { pulse: pulses[0], end: atLow.end } } : {}),
      ...(reachHighUs < highUs ? { high: { pulse: pulses[1], end: atHigh.end } } : {}),
    },
  };
}

/** The rotations between which a response can be told, low then high, each with the drive's own end near it. */
export function usableRotations({ range: { low, high } }: Drive): readonly [UsableEnd, UsableEnd] {
  const margin = ({ kind }: DriveEnd) =>
    kind === "full" || kind === "trackEnd" ? 0 : DEAD_CENTRE_MARGIN_DEG;
  return [
    { rotationDeg: low.rotation + margin(low), end: low },
    { rotationDeg: high.rotation - margin(high), end: high },
  ];
}

function responseOver(drive: Drive, line: ShaftLine, pulses: readonly [Us, Us]): Response | undefined {
  const { low, high } = drive.range;
  // Rounding may carry a pulse at an end a hair past it.
  const rotationAt = (pulseUs: number) =>
    deg(Math.min(high.rotation, Math.max(low.rotation, rotationOf(line, pulseUs))));
  const valueAt = (pulseUs: number) => {
    const deflection = drive.deflectionAt(rotationAt(pulseUs));
    return deflection === undefined ? undefined : deflection + line.deflectionZeroDeg;
  };
  const slopeAt = (pulseUs: number) => {
    const ratio = drive.ratioAt(rotationAt(pulseUs));
    return ratio === undefined ? undefined : ratio * line.degPerUs;
  };
  const [atLowDeg, atHighDeg] = [valueAt(pulses[0]), valueAt(pulses[1])];
  if (atLowDeg === undefined || atHighDeg === undefined) return undefined;
  const deflections = [deg(Math.min(atLowDeg, atHighDeg)), deg(Math.max(atLowDeg, atHighDeg))] as const;
  const isInside = (pulse: number) => pulse >= pulses[0] && pulse <= pulses[1];
  const inverse = (deflection: Deg): number | undefined => {
    if (!(deflection >= deflections[0] && deflection <= deflections[1])) return undefined;
    if (deflection === atLowDeg) return pulses[0];
    if (deflection === atHighDeg) return pulses[1];
    const rotation = drive.rotationAt(deg(deflection - line.deflectionZeroDeg));
    if (rotation === undefined) return undefined;
    const pulseUs = line.levelUs + (rotation - line.rotationZeroDeg) / line.degPerUs;
    return Math.min(pulses[1], Math.max(pulses[0], pulseUs));
  };
  return {
    pulses,
    deflections,
    knots: smoothPieces(valueAt, slopeAt, pulses, PIECE_DEG).map((pulse) => us(pulse)),
    rising: atHighDeg > atLowDeg,
    deflectionAt: (pulse) => branded(deg, isInside(pulse) ? valueAt(pulse) : undefined),
    pulseAt: (deflection) => branded(us, inverse(deflection)),
    slopeAt: (pulse) => branded(degPerUs, isInside(pulse) ? slopeAt(pulse) : undefined),
  };
}
