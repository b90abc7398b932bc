import { toPulse } from "../signal/percent.ts";
import type { SignalScale } from "../signal/signal-scale.ts";
import { pct } from "../units/quantity.ts";
import type { Device, EndPoints, OutputMemory, Transmitter } from "./transmitter.ts";

/** What there is to know of a transmitter that nobody has touched. */
export interface FactoryFacts {
  readonly scale: SignalScale;
  readonly endPoints: EndPoints;
  /** Numbers of the outputs. */
  readonly outputs: readonly number[];
  /** The travel that a new memory has, percent to either side; left out: as far as the scale reaches, the worst there is. */
  readonly travelPercent?: number;
  /** Largest trim of each stick, percent of its travel to one side. */
  readonly trims?: Readonly<Record<string, number>>;
  /** Where each stick rests; left out: at its centre. */
  readonly rests?: Readonly<Record<string, -1 | 0 | 1>>;
  /** What receiver outputs send before they hear the transmitter; left out: nothing. */
  readonly powerUpUs?: number;
  /** Devices after the receiver, by output. */
  readonly chains?: Readonly<Record<number, readonly Device[]>>;
}

/** The control that a new memory puts on every output. */
export const factoryControl = "factory stick";

/** A memory that nobody has touched: on every output one stick over the whole travel, failsafe at the centre of the scale. */
export function factoryState(facts: FactoryFacts): Transmitter {
  const { scale, endPoints, outputs, trims = {}, rests = {}, powerUpUs, chains = {} } = facts;
  const travel = facts.travelPercent ?? scale.reach;
  const full = endPoints === "scale" ? 100 : travel;
  const memory = (output: number): OutputMemory => ({
    restPercent: 0,
    contributions: [
      { control: factoryControl, position: -1, when: {}, percent: -full },
      { control: factoryControl, position: 1, when: {}, percent: full },
    ],
    shiftPercent: 0,
    lowPercent: -travel,
    highPercent: travel,
    reversed: false,
    transits: {},
    failsafeUs: toPulse(scale, pct(0)),
    ...(powerUpUs === undefined ? {} : { powerUpUs }),
    chain: chains[output] ?? [],
  });
  return {
    scale,
    endPoints,
    trims,
    rests,
    outputs: Object.fromEntries(outputs.map((output) => [output, memory(output)])),
  };
}
