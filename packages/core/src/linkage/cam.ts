import { bisect } from "../numeric/bisect.ts";
import { monotoneCurve } from "../numeric/monotone-curve.ts";
import { powerOf } from "../numeric/power.ts";
import type { LinkageProblem } from "./drive.ts";
import type { Cam } from "./linkage.ts";

/** A cam made computable over a track's travel: extension, millimetres, <-> deflection, degrees. Strictly monotone. */
export interface CamCurve {
  deflectionAt(extensionMm: number): number;
  /** d(deflection)/d(extension), degrees per millimetre. */
  slopeAt(extensionMm: number): number;
  /** Undefined for a deflection that no place of the carriage gives. */
  extensionAt(deflectionDeg: number): number | undefined;
}

/** Places at which a sum of powers is looked at for its sense. */
const checks = 400;

/** A cam over a travel in millimetres, or why it does not serve. */
export function camCurve(cam: Cam, travelMm: number): CamCurve | LinkageProblem {
  const curve = cam.kind === "table" ? tableCurve(cam.points, travelMm) : powersCurve(cam, travelMm);
  if ("kind" in curve) return curve;
  const startDeg = curve.valueAt(0);
  const endDeg = curve.valueAt(travelMm);
  return {
    deflectionAt: curve.valueAt,
    slopeAt: curve.slopeAt,
    extensionAt: (deflectionDeg) => {
      if (deflectionDeg === startDeg) return 0;
      if (deflectionDeg === endDeg) return travelMm;
      if (deflectionDeg > startDeg === deflectionDeg > endDeg) return undefined;
      return bisect((extensionMm) => curve.valueAt(extensionMm) - deflectionDeg, 0, travelMm);
    },
  };
}

interface Curve {
  valueAt(extensionMm: number): number;
  slopeAt(extensionMm: number): number;
}

function tableCurve(
  points: readonly (readonly [number, number])[],
  travelMm: number,
): Curve | LinkageProblem {
  const [first, second] = points;
  const last = points.at(-1);
  const tooShort: LinkageProblem = {
    kind: "camTooShort",
    fromMm: first?.[0] ?? 0,
    camMm: last?.[0] ?? 0,
    travelMm,
  };
  if (first === undefined || second === undefined || last === undefined) return tooShort;
  const rises = second[1] > first[1];
  for (const [i, [extensionMm, deflectionDeg]] of points.slice(1).entries()) {
    const [previousMm, previousDeg] = points[i] ?? first;
    const onward = extensionMm > previousMm && deflectionDeg !== previousDeg;
    if (!onward || deflectionDeg > previousDeg !== rises) return { kind: "camNotMonotone", extensionMm };
  }
  if (first[0] > 0 || last[0] < travelMm) return tooShort;
  const curve = monotoneCurve(
    points.map(([extensionMm]) => extensionMm),
    points.map(([, deflectionDeg]) => deflectionDeg),
  );
  // A carriage computed to stand at the end of its track may stand past the table's end by a rounding error.
  const inside = (extensionMm: number) => Math.min(last[0], Math.max(first[0], extensionMm));
  return {
    valueAt: (extensionMm) => curve.valueAt(inside(extensionMm)) ?? 0,
    slopeAt: (extensionMm) => curve.slopeAt(inside(extensionMm)) ?? 0,
  };
}

function powersCurve(cam: Extract<Cam, { kind: "powers" }>, travelMm: number): Curve | LinkageProblem {
  if (!(cam.length > 0)) return { kind: "notALength", name: "cam.length", lengthMm: cam.length };
  // Below 1 the surface would jump as the carriage leaves its stop.
  if (cam.terms.some((term) => term.power < 1)) return { kind: "camNotMonotone", extensionMm: 0 };
  const curve = {
    valueAt: (extensionMm: number) => {
      let sum = 0;
      for (const term of cam.terms) sum += term.deflection * powerOf(extensionMm / cam.length, term.power);
      return sum;
    },
    slopeAt: (extensionMm: number) => {
      let sum = 0;
      for (const { deflection, power } of cam.terms) {
        sum += (deflection * power * powerOf(extensionMm / cam.length, power - 1)) / cam.length;
      }
      return sum;
    },
  };
  const sense = Math.sign(curve.valueAt(travelMm));
  for (let i = 1; i <= checks; i++) {
    const extensionMm = (travelMm * i) / checks;
    if (!(curve.slopeAt(extensionMm) * sense > 0)) return { kind: "camNotMonotone", extensionMm };
  }
  return curve;
}
