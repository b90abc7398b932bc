import type { Instruments, Reading, Surface } from "../model/model.ts";
import { hypotOf } from "../numeric/hypotenuse.ts";
import { type ReadingProblem, responseFromReadings } from "../response/from-readings.ts";
import type { ReadingPoint, ServoReading } from "../response/merge-readings.ts";
import type { Response } from "../response/response.ts";
import { trueDeflection } from "../surface/meter.ts";
import { type Deg, us } from "../units/quantity.ts";
import { declaredDeg } from "./declared-deg.ts";
import { type ReadingDoubt, readingDoubt } from "./doubts.ts";
import type { Report } from "./report.ts";
import type { ResolvedBench } from "./resolve-bench.ts";
import type { NamedServo } from "./resolve-names.ts";

/** A response with the points that it goes through. */
export interface ReadResponse {
  readonly response: Response;
  readonly points: readonly ReadingPoint[];
}

/**
 * The response of one servo from its readings. Undefined where there are too few to know degrees; `"contradicts"` where
 * the readings contradict each other or the stops, which is reported.
 */
export function readResponse(
  named: NamedServo,
  surface: Surface,
  bench: ResolvedBench | undefined,
  instruments: Instruments | undefined,
  report: Report,
): ReadResponse | undefined | "contradicts" {
  const declared = named.servo.bench.readings ?? [];
  const at = [...named.address, "bench", "readings"];
  const readings = declared.map((reading, index) =>
    inDegrees(reading, index, named, surface, instruments, report),
  );
  if (!readings.every((reading) => reading !== undefined)) return "contradicts";
  const doubt = readingDoubt(surface, instruments, declared);
  const { response, points, problems, hysteresis } = responseFromReadings(readings, doubt);
  for (const problem of problems) reportProblem(problem, readings, named, at, report);
  for (const { pulseUs, differenceDeg, indices } of hysteresis)
    if (Math.abs(differenceDeg) > 2 * doubt.deflectionDeg)
      report("hysteresis", [...at, indices[0] ?? 0], { pulseUs, differenceDeg: Math.abs(differenceDeg) });
  if (problems.some(({ kind }) => kind === "duplicate" || kind === "notMonotone")) return "contradicts";
  if (response === undefined || bench === undefined) return undefined;
  if (response.rising !== bench.rising) {
    report("direction-disagrees", at, {
      servo: named.id,
      levelUs: bench.levelUs,
      downUs: bench.downUs,
      readings: response.rising ? "rising" : "falling",
      stops: bench.rising ? "rising" : "falling",
    });
    return "contradicts";
  }
  compareWithBench(readings, response, bench, named, doubt, report);
  return { response, points };
}

export function inDegrees(
  [pulse, at, way]: Reading,
  index: number,
  named: NamedServo,
  surface: Surface,
  instruments: Instruments | undefined,
  report: Report,
): (ServoReading & { readonly pulseUs: number }) | undefined {
  const address = [...named.address, "bench", "readings", index];
  const deflectionDeg =
    typeof at === "number" ? fromMeter(at) : declaredDeg(at, named, surface, address, report);
  if (deflectionDeg === undefined) return undefined;
  return { pulseUs: pulse, deflectionDeg, ...(way === undefined ? {} : { way }) };

  function fromMeter(shown: Deg): number | undefined {
    const found = trueDeflection({ meter: instruments?.meter ?? "square", ...surface.hinge }, shown);
    if (found.kind === "angle") return found.angle;
    if (found.kind === "hingeUnfit") {
      const { hingeDeg, largestHingeDeg } = found;
      report("meter-unfit", ["surfaces", named.surface, "hinge"], {
        surface: named.surface,
        meter: found.meter,
        hingeDeg,
        largestDeg: largestHingeDeg,
      });
    } else
      report("angle-impossible", address, {
        surface: named.surface,
        meter: found.meter,
        shownDeg: shown,
        largestDeg: found.largestDeg,
      });
    return undefined;
  }
}

function reportProblem(
  problem: ReadingProblem,
  readings: readonly ServoReading[],
  named: NamedServo,
  at: readonly (string | number)[],
  report: Report,
): void {
  const address = [...at, problem.indices[0] ?? 0];
  switch (problem.kind) {
    case "tooFew":
      return;
    case "shapeUnknown": {
      const [first, second] = problem.indices.map((index) => readings[index]?.pulseUs ?? 0);
      const [firstUs, secondUs] = [first ?? 0, second ?? 0];
      report("shape-unknown", at, {
        servo: named.id,
        firstUs,
        secondUs,
        middleUs: Math.round((firstUs + secondUs) / 2),
      });
      return;
    }
    case "duplicate": {
      const [firstDeg, secondDeg] = problem.deflectionsDeg;
      report("reading-twice", [...at, problem.indices.at(-1) ?? 0], {
        pulseUs: problem.pulseUs,
        firstDeg: firstDeg ?? 0,
        secondDeg: secondDeg ?? 0,
      });
      return;
    }
    case "notMonotone": {
      const [lowUs, highUs] = problem.betweenUs;
      const [lowDeg, highDeg] = problem.deflectionsDeg;
      const odd = readings.findIndex(({ pulseUs }) => pulseUs < servoTakesUs[0] || pulseUs > servoTakesUs[1]);
      const oddUs = readings[odd]?.pulseUs;
      if (oddUs === undefined)
        report("not-monotone", [...at, problem.culpritIndices[0] ?? 0], { lowUs, highUs, lowDeg, highDeg });
      else report("reading-pulse", [...at, odd], { pulseUs: oddUs, lowUs, highUs, lowDeg, highDeg });
      return;
    }
    case "suspicious":
      report("suspicious-reading", address, {
        pulseUs: problem.pulseUs,
        readDeg: problem.deflectionDeg,
        expectedDeg: problem.expectedDeg,
        missDeg: Math.abs(problem.missDeg),
      });
  }
}

/** A pulse outside these, microseconds, is one that was mistyped. (common practice, no source) */
const servoTakesUs = [300, 3000] as const;

function compareWithBench(
  readings: readonly ServoReading[],
  response: Response,
  bench: ResolvedBench,
  named: NamedServo,
  doubt: ReadingDoubt,
  report: Report,
): void {
  const at = [...named.address, "bench"];
  const { levelUs, stopsUs, rising } = bench;
  readings.forEach(({ pulseUs }, index) => {
    const low = pulseUs < stopsUs[0];
    if (!low && pulseUs <= stopsUs[1]) return;
    const stopUs = low ? stopsUs[0] : stopsUs[1];
    // A bench without a stop up keeps level as its end; readings above level are then no contradiction.
    if (stopUs === levelUs) return;
    report("reading-past-stop", [...at, "readings", index], {
      pulseUs,
      stopUs,
      stop: low === rising ? "up" : "down",
    });
  });
  const deflectionDeg = response.deflectionAt(us(levelUs));
  if (deflectionDeg === undefined) {
    report("level-not-measured", [...at, "level"], { servo: named.id, levelUs });
    return;
  }
  const slope = response.slopeAt(us(levelUs)) ?? 0;
  const doubtDeg = 2 * hypotOf(doubt.deflectionDeg, slope * doubt.pulseUs);
  if (Math.abs(deflectionDeg) > doubtDeg)
    report("level-disagrees", [...at, "level"], { servo: named.id, levelUs, deflectionDeg, doubtDeg });
}
