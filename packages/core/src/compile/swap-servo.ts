import type { Model, Reading, Stop } from "../model/model.ts";
import {
  mapPulse,
  mapServo,
  type SwapMap,
  type SwapProblem,
  type SwapReading,
} from "../response/servo-swap.ts";
import { expand } from "../uncertainty/expand.ts";
import { us } from "../units/quantity.ts";
import { standardAt } from "./plan-doubt.ts";
import { inDegrees } from "./read-response.ts";
import { resolveNames } from "./resolve-names.ts";
import { rigServos } from "./rig-servos.ts";
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
  const map = mapServo(rig.response, points, (pulseUs) => expand(standardAt(rig, pulseUs) ?? 0));
  if (map.kind !== "map") return map;

  const { bench, label } = rig.named.servo;
  const mapped: Reading[] = [];
  const outside: Reading[] = [];
  for (const reading of bench.readings ?? []) {
    const [pulse, ...rest] = reading;
    const newUs = mapPulse(map, pulse);
    if (newUs === undefined) outside.push(reading);
    else mapped.push([us(newUs), ...rest] as Reading);
  }
  const levelUs = mapPulse(map, bench.level);
  return {
    kind: "mapped",
    servo,
    ...(label === undefined ? {} : { label }),
    map,
    readings: mapped,
    ...(levelUs === undefined ? {} : { levelUs }),
    measureAgain: {
      stops: stopsOf(bench.up),
      level: levelUs === undefined,
      readings: outside,
    },
  };
}

function stopsOf(up: Stop | undefined): readonly ("up" | "down")[] {
  return up === undefined ? ["down"] : ["up", "down"];
}
