import { bisect } from "../numeric/bisect.ts";
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
  /** Pulses between which the travel is one smooth piece, the ends included. */
  readonly knotsUs: readonly number[];
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
    knotsUs: response.knots,
    pulseAt: (place) => response.pulseAt(deg(place)),
    placeAt: (pulseUs) => response.deflectionAt(us(pulseUs)),
  };
}

/** Travel in pulse span from level, between the stops. */
export function travelByPulse({ levelUs, rising, stopsUs }: ResolvedBench): Travel {
  const sign = rising ? 1 : -1;
  const [up, down] = rising ? stopsUs : [stopsUs[1], stopsUs[0]];
  return {
    unit: "us",
    rising,
    pulsesUs: stopsUs,
    places: [sign * (up - levelUs), sign * (down - levelUs)],
    knotsUs: stopsUs,
    pulseAt: (place) => inside(levelUs + sign * place, stopsUs),
    placeAt: (pulseUs) => (inside(pulseUs, stopsUs) === undefined ? undefined : sign * (pulseUs - levelUs)),
  };
}

/**
 * Travel of a Y lead: the mean of the places that one pulse gives, so that of two surfaces one is as far off to one side as the
 * other to the other. The travels rise the same way and all cover `pulsesUs`.
 */
export function travelOfMean(travels: readonly Travel[], pulsesUs: readonly [number, number]): Travel {
  const [first] = travels;
  const rising = first?.rising ?? true;
  const mean = (pulseUs: number) =>
    travels.reduce((sum, travel) => sum + (travel.placeAt(pulseUs) ?? Number.NaN), 0) / travels.length;
  const ends = pulsesUs.map(mean);
  const places = [Math.min(...ends), Math.max(...ends)] as const;
  return {
    unit: first?.unit ?? "us",
    rising,
    pulsesUs,
    places,
    knotsUs: [...pulsesUs, ...travels.flatMap(({ knotsUs }) => knotsUs)]
      .filter((pulseUs) => inside(pulseUs, pulsesUs) !== undefined)
      .sort((a, b) => a - b),
    placeAt: (pulseUs) => (inside(pulseUs, pulsesUs) === undefined ? undefined : mean(pulseUs)),
    pulseAt(place) {
      if (inside(place, places) === undefined) return undefined;
      for (const end of pulsesUs) if (mean(end) === place) return end;
      return bisect((pulseUs) => mean(pulseUs) - place, pulsesUs[0], pulsesUs[1]);
    },
  };
}

function inside(value: number, [low, high]: readonly [number, number]): number | undefined {
  return value >= low && value <= high ? value : undefined;
}
