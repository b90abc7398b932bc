import type { Drive } from "../linkage/drive.ts";
import { deg } from "../units/quantity.ts";
import { rotationOf, type ShaftLine } from "./drive-response.ts";
import { fitLeastSquares } from "./least-squares.ts";

/** One reading, plain numbers. */
export interface FitPoint {
  readonly pulseUs: number;
  readonly deflectionDeg: number;
}

/** Where the fit of a linkage to readings starts, and what is known of the servo. */
export interface FitStart {
  /** Pulse at which the linkage stands about as declared. */
  readonly levelUs: number;
  /** The servo's rotation per microsecond, positive where the shaft turns clockwise as the pulse rises; left out: unknown. */
  readonly degPerUs?: number;
  /** Standard doubt of `degPerUs`, as a part of it; `ROTATION_DOUBT` where left out. */
  readonly degPerUsDoubt?: number;
}

/** What is fitted beside gain and zeros. The drive is undefined where the value makes none. */
export interface FreeValue {
  readonly declared: number;
  /** How far the declared value may plausibly be off: a standard doubt. */
  readonly doubt: number;
  driveWith(value: number): Drive | undefined;
}

/** An estimate and its standard doubt. */
export interface Estimate {
  readonly value: number;
  readonly doubt: number;
}

/** The line from pulse to rotation, and one value more, that bring a linkage's shape nearest to readings. */
export interface ShapeFit {
  readonly drive: Drive;
  readonly line: ShaftLine;
  readonly degPerUs: Estimate;
  readonly rotationZeroDeg: Estimate;
  readonly deflectionZeroDeg: Estimate;
  readonly free?: Estimate;
  /** What was read minus what the fit gives, one for each reading. */
  readonly missesDeg: readonly number[];
  /** Sum of the squared misses of readings and of what was known before, each in its standard doubts. */
  readonly chiSquare: number;
  /** Whether the search came to rest. */
  readonly settled: boolean;
}

/** Standard doubt of a servo's stated rotation per microsecond, as a part of it; common practice, no source. */
export const ROTATION_DOUBT = 0.02;

/**
 * Standard doubts of the shaft's and the surface's angle at the level pulse, degrees; common practice, no source. Wide: they
 * only decide where readings do not tell the two apart, as on a straight response.
 */
const ZERO_DOUBT_DEG = 5;

/** A linkage that cannot be made misses every reading by this many doubts. */
const NO_DRIVE = 1e3;

/**
 * Fits gain and both zeros, and a free value if given, to readings that are in doubt by `doubtDeg` (standard, above 0).
 * `readDegPerUs` is where the gain starts if the servo's own is not known. Undefined where the readings do not tell the values apart.
 */
export function fitShape(
  drive: Drive,
  points: readonly FitPoint[],
  doubtDeg: number,
  start: FitStart & { readonly readDegPerUs: number },
  free?: FreeValue,
): ShapeFit | undefined {
  const startDegPerUs = start.degPerUs ?? start.readDegPerUs;
  const lineOf = ([degPerUs = 0, rotationZeroDeg = 0, deflectionZeroDeg = 0]: readonly number[]) => ({
    levelUs: start.levelUs,
    degPerUs,
    rotationZeroDeg,
    deflectionZeroDeg,
  });
  // Slopes against the other parameters ask for the same drive again, and to make one costs more than to use it.
  const drives = new Map<number, Drive | undefined>();
  const driveOf = (parameters: readonly number[]) => {
    const value = parameters[3];
    if (free === undefined || value === undefined) return drive;
    if (!drives.has(value)) drives.set(value, free.driveWith(value));
    return drives.get(value);
  };
  const priorsOf = ([degPerUs = 0, rotationZeroDeg = 0, deflectionZeroDeg = 0, value]: readonly number[]) => [
    rotationZeroDeg / ZERO_DOUBT_DEG,
    deflectionZeroDeg / ZERO_DOUBT_DEG,
    ...(start.degPerUs === undefined
      ? []
      : [(degPerUs / start.degPerUs - 1) / (start.degPerUsDoubt ?? ROTATION_DOUBT)]),
    ...(free === undefined || value === undefined ? [] : [(value - free.declared) / free.doubt]),
  ];
  const residualsAt = (parameters: readonly number[]) => {
    const made = driveOf(parameters);
    const line = lineOf(parameters);
    const misses = points.map((point) =>
      made === undefined ? NO_DRIVE : (modelAt(made, line, point.pulseUs) - point.deflectionDeg) / doubtDeg,
    );
    return [...misses, ...priorsOf(parameters)];
  };
  const fit = fitLeastSquares({
    residualsAt,
    start: [startDegPerUs, 0, 0, ...(free === undefined ? [] : [free.declared])],
    units: [Math.abs(startDegPerUs) / 100, 1, 1, ...(free === undefined ? [] : [free.doubt / 4])],
  });
  const made = fit && driveOf(fit.parameters);
  if (fit === undefined || made === undefined) return undefined;
  const estimate = (index: number) => ({ value: fit.parameters[index] ?? 0, doubt: fit.doubts[index] ?? 0 });
  return {
    drive: made,
    line: lineOf(fit.parameters),
    degPerUs: estimate(0),
    rotationZeroDeg: estimate(1),
    deflectionZeroDeg: estimate(2),
    ...(free === undefined ? {} : { free: estimate(3) }),
    missesDeg: points.map((_, i) => -(fit.residuals[i] ?? 0) * doubtDeg),
    chiSquare: fit.chiSquare,
    settled: fit.settled,
  };
}

/** What the drive gives at a pulse; one that can go no further stays at its end. */
function modelAt({ range: { low, high }, deflectionAt }: Drive, line: ShaftLine, pulseUs: number): number {
  const rotation = rotationOf(line, pulseUs);
  if (rotation <= low.rotation) return low.deflection + line.deflectionZeroDeg;
  if (rotation >= high.rotation) return high.deflection + line.deflectionZeroDeg;
  return (deflectionAt(deg(rotation)) ?? low.deflection) + line.deflectionZeroDeg;
}
