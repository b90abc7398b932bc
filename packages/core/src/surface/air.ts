import { powerOf } from "../numeric/power.ts";
import type { Celsius, Mps } from "../units/quantity.ts";

/** The air above a flying field. */
export interface FlyingField {
  /** Height above the sea, metres, geopotential: 0.2 m less than a map's 1000 m. */
  readonly heightM: number;
  /** Left out: that of the standard atmosphere at this height. */
  readonly temperature?: Celsius;
}

/**
 * Density of dry air, kg/m3: the standard atmosphere's pressure at the height with the field's own temperature.
 * Undefined outside -2000 to 11000 m, which one lapse rate covers, and outside -100 to +100 degrees Celsius.
 * Source: ISO 2533:1975, constants from memory.
 */
export function airDensity(field: FlyingField): number | undefined {
  const { heightM, temperature } = field;
  if (!(heightM >= LOWEST_M && heightM <= HIGHEST_M)) return undefined;
  if (temperature !== undefined && Math.abs(temperature) > LARGEST_CELSIUS) return undefined;
  const standardK = SEA_LEVEL_K - LAPSE_K_PER_M * heightM;
  const pressurePa =
    SEA_LEVEL_PA * powerOf(standardK / SEA_LEVEL_K, GRAVITY / (GAS_CONSTANT * LAPSE_K_PER_M));
  const airK = temperature === undefined ? standardK : temperature + ZERO_CELSIUS_K;
  return pressurePa / (GAS_CONSTANT * airK);
}

/** Density at sea level in the standard atmosphere, kg/m3. Source: ISO 2533:1975. */
export const SEA_LEVEL_DENSITY = 1.225;

/** Half the density (kg/m3, above 0) times the airspeed's square, pascals; left out, the density at sea level. */
export function dynamicPressurePa(airspeed: Mps, densityKgM3: number = SEA_LEVEL_DENSITY): number {
  return (densityKgM3 / 2) * airspeed ** 2;
}

const SEA_LEVEL_K = 288.15;
const SEA_LEVEL_PA = 101_325;
const LAPSE_K_PER_M = 0.0065;
const GRAVITY = 9.80665;
/** J/(kg K) */
const GAS_CONSTANT = 287.05287;
const ZERO_CELSIUS_K = 273.15;
const [LOWEST_M, HIGHEST_M] = [-2000, 11_000];
const LARGEST_CELSIUS = 100;
