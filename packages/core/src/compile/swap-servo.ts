import type { Instruments, Model, Reading, Stop, Surface } from "../model/model.ts";
import { READINGS_TO_FIT } from "../response/fit-linkage.ts";
import {
  mapPulse,
  mapServo,
  type SwapMap,
  type SwapProblem,
  type SwapReading,
} from "../response/servo-swap.ts";
import { expand } from "../uncertainty/expand.ts";
import { us } from "../units/quantity.ts";
import { readingDoubt } from "./doubts.ts";
import { standardAt } from "./position-doubt.ts";
import { inDegrees } from "./read-response.ts";
import { resolveNames } from "./resolve-names.ts";
import { type Rig, rigServos } from "./rig-servos.ts";
import { sortKeys } from "./sort-keys.ts";

/** What a servo's bench becomes with another servo in its place, as far as three readings can tell. */
export interface ServoSwap {
  readonly kind: "mapped";
  /** The servo's name in the plan, and the label of the old one where it had one. */
  readonly servo: string;
  readonly label?: string;
  readonly map: SwapMap;
  /** The old readings with the new servo's pulses, by the order of the bench. Not to be used where the map is not accepted. */
  readonly readings: readonly Reading[];
  /** The new level pulse; absent where the old one lies outside the map. */
  readonly levelUs?: number;
  /** The guard that the old bench states, wider where the new servo needs more pulse span for a degree: no nearer to a stop than before. */
  readonly guardUs?: number;
  /**
   * The new servo's rotation, degrees per microsecond, as its type states it, and what the old one's states; absent where that
   * states none or no linkage asks for it.
   */
  readonly rotation?: { readonly degPerUs: number; readonly oldDegPerUs: number };
  /**
   * The readings of the new servo, where the old one had none and these are enough to fit its linkage to: they may stand in its
   * bench, and tell more than its linkage alone.
   */
  readonly taken?: readonly Reading[];
  /** What no map gives and has to be found on the bench. Stops always. */
  readonly measureAgain: {
    readonly stops: readonly ("up" | "down")[];
    readonly level: boolean;
    /** Old readings outside the map. */
    readonly readings: readonly Reading[];
  };
}

/** Why there is nothing to map. */
export type ServoSwapProblem =
  | SwapProblem
  | { readonly kind: "unknown-servo"; readonly servo: string; readonly known: readonly string[] }
  /** The bench of the old servo knows no degrees, or contradicts itself. */
  | { readonly kind: "no-response"; readonly servo: string }
  /** A reading that this surface and its meter cannot have. */
  | { readonly kind: "impossible-reading"; readonly index: number };

/**
 * Maps the bench of one servo to a new servo on the same linkage, from at least three readings of the new one taken as those of the
 * bench were. The stops are never mapped.
 * @param servo its name in the plan: "flapLeft", or "rudder.upper" where a surface has several
 */
export function swapServo(
  declared: Model,
  servo: string,
  readings: readonly Reading[],
): ServoSwap | ServoSwapProblem {
  const model = sortKeys(declared);
  // What is wrong with the model is in its plan already.
  const report = () => undefined;
  const { surfaces } = resolveNames(model, report);
  const surface = surfaces.find(({ servos }) => servos.some(({ id }) => id === servo));
  if (surface === undefined) {
    const known = surfaces.flatMap(({ servos }) => servos.map(({ id }) => id));
    return { kind: "unknown-servo", servo, known };
  }
  const rig = rigServos(surface, model.radio, model.instruments, report)?.find(
    ({ named }) => named.id === servo,
  );
  if (rig?.response === undefined) return { kind: "no-response", servo };
  const read = readings.map((reading, index) =>
    inDegrees(reading, index, rig.named, surface.surface, model.instruments, report),
  );
  const impossible = read.indexOf(undefined);
  if (impossible >= 0) return { kind: "impossible-reading", index: impossible };
  const points = read.filter((one): one is SwapReading => one !== undefined);
  const map = mapServo(rig.response, points, doubtOfTest(rig, surface.surface, model.instruments, readings));
  if (map.kind !== "map") return map;

  const { bench, label, type, linkage } = rig.named.servo;
  const mapped: Reading[] = [];
  const outside: Reading[] = [];
  for (const reading of bench.readings ?? []) {
    const [pulse, ...rest] = reading;
    const newUs = mapPulse(map, pulse);
    if (newUs === undefined) outside.push(reading);
    else mapped.push([us(newUs), ...rest] as Reading);
  }
  const levelUs = mapPulse(map, bench.level);
  const oldDegPerUs = linkage && type?.rotation;
  const pulses = new Set(points.map(({ pulseUs }) => pulseUs)).size;
  return {
    kind: "mapped",
    servo,
    ...(label === undefined ? {} : { label }),
    map,
    readings: mapped,
    ...(levelUs === undefined ? {} : { levelUs }),
    ...(bench.guard === undefined ? {} : { guardUs: bench.guard * Math.max(1, Math.abs(map.factor)) }),
    // The shaft turns as far as before for the new pulse span.
    ...(oldDegPerUs === undefined ? {} : { rotation: { degPerUs: oldDegPerUs / map.factor, oldDegPerUs } }),
    ...(rig.linkageDoubt === undefined || pulses < READINGS_TO_FIT ? {} : { taken: readings }),
    measureAgain: {
      stops: stopsOf(bench.up),
      level: levelUs === undefined,
      readings: outside,
    },
  };
}

/**
 * How far a test may miss. Of a linkage that was never read by no more than a reading of the new servo is true to: what its dimensions
 * and its rotation are off by is in every reading alike, and so in the map.
 */
function doubtOfTest(
  rig: Rig,
  surface: Surface,
  instruments: Instruments | undefined,
  readings: readonly Reading[],
): (pulseUs: number) => number {
  const { linkageDoubt, ...alone } = rig;
  const tested: Rig =
    linkageDoubt === undefined
      ? rig
      : { ...alone, readingDoubt: readingDoubt(surface, instruments, readings).causes };
  return (pulseUs) => expand(standardAt(tested, pulseUs) ?? 0);
}

function stopsOf(up: Stop | undefined): readonly ("up" | "down")[] {
  return up === undefined ? ["down"] : ["up", "down"];
}
