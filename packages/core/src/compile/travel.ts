import type { Response } from "../response/response.ts";
import { deg, us } from "../units/quantity.ts";
import type { ResolvedBench } from "./resolve-bench.ts";

/**
 * How a servo's pulse and the place of its surface belong together. The place is the deflection in degrees where that is
 * known; on a bench without readings it is the pulse span from level, positive towards the stop down. Monotone; undefined outside.
 */
export interface Travel {
  readonly unit: "deg" | "us";
  /** Whether the place grows with pulse. */
  readonly rising: boolean;
  /** Lowest and highest pulse that is known. */
  readonly pulsesUs: readonly [number, number];
  readonly places: readonly [number, number];
  pulseAt(place: number): number | undefined;
  placeAt(pulseUs: number): number | undefined;
}

/** Travel in degrees, from the response of the servo. */
export function travelByResponse(response: Response): Travel {
  return {
    unit: "deg",
    rising: response.rising,
    pulsesUs: response.pulses,
    places: response.deflections,
    pulseAt: (place) => response.pulseAt(deg(place)),
    placeAt: (pulseUs) => response.deflectionAt(us(pulseUs)),
  };
}

/** Travel in pulse span from level, between the stops. */
export function travelByPulse({ levelUs, rising, stopsUs }: ResolvedBench): Travel {
  const sign = rising ? 1 : -1;
  const places: [number, number] = [
    sign * (stopsUs[rising ? 0 : 1] - levelUs),
    sign * (stopsUs[rising ? 1 : 0] - levelUs),
  ];
  return {
    unit: "us",
    rising,
    pulsesUs: stopsUs,
    places,
    pulseAt: (place) => inside(levelUs + sign * place, stopsUs),
    placeAt: (pulseUs) => (inside(pulseUs, stopsUs) === undefined ? undefined : sign * (pulseUs - levelUs)),
  };
}

function inside(value: number, [low, high]: readonly [number, number]): number | undefined {
  return value >= low && value <= high ? value : undefined;
}
