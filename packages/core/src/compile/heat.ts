import type { Model } from "../model/model.ts";
import { MATERIALS } from "../surface/materials.ts";
import { rodShift, servoDrift, thermalShift } from "../surface/thermal-shift.ts";
import { deg, mm, us } from "../units/quantity.ts";
import { leverageAt } from "./leverage.ts";
import type { Rig } from "./rig-servos.ts";

/** Temperature of a bench that states none. (assumption of experience) */
const usualCelsius = 20;

/** What heat or cold may do to a position between bench and flight, all sizes, none signed. */
export interface Heat {
  /** Furthest from the bench's temperature at which the model is flown. */
  readonly kelvin: number;
  /** Drift of the servo's neutral, and what the surface makes of it. */
  readonly servoUs: number;
  readonly servoDeg: number;
  /** Absent where nothing is declared that the rod lies along, or the linkage is not known. */
  readonly rod?: {
    /** What rod and structure grow apart by. */
    readonly growthMm: number;
    readonly deflectionDeg: number;
  };
  /** Both the same way. */
  readonly shiftDeg: number;
}

/** Heat and cold at one pulse; undefined where the model states no temperatures or the bench knows no degrees there. */
export function heatAt(rig: Rig, pulseUs: number, { temperatures }: Model): Heat | undefined {
  const slope = rig.response?.slopeAt(us(pulseUs));
  if (temperatures === undefined || slope === undefined) return undefined;
  const kelvin = kelvinFromBench(rig, temperatures);
  const drift = servoDrift(kelvin);
  const rod = rodAt(rig, pulseUs, kelvin);
  return {
    kelvin,
    servoUs: drift,
    servoDeg: thermalShift(deg(0), drift, slope),
    ...(rod === undefined ? {} : { rod }),
    shiftDeg: thermalShift(deg(rod?.deflectionDeg ?? 0), drift, slope),
  };
}

/** How far the temperatures of flight go from that of the bench. */
export function kelvinFromBench(
  { named }: Rig,
  temperatures: readonly [coldest: number, hottest: number],
): number {
  const measured = named.servo.bench.measured?.temperature ?? usualCelsius;
  return Math.max(...temperatures.map((celsius) => Math.abs(celsius - measured)));
}

function rodAt(rig: Rig, pulseUs: number, kelvin: number): Heat["rod"] {
  const { rod } = rig.named.servo;
  const hornMm = leverageAt(rig, pulseUs)?.rod?.surfaceMm;
  if (rod?.along === undefined || hornMm === undefined || hornMm === 0) return undefined;
  const [structurePerK, rodPerK] = [rod.along, rod.material].map((name) => MATERIALS[name].expansionPerK);
  if (structurePerK === undefined || rodPerK === undefined) return undefined;
  return {
    growthMm: Math.abs(structurePerK - rodPerK) * rod.length * kelvin,
    deflectionDeg: rodShift({ structurePerK, rodPerK, length: rod.length, hornRadius: mm(hornMm) }, kelvin),
  };
}
