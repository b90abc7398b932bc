import { type Amps, amps } from "../units/quantity.ts";

/** Currents of one servo. */
export interface ServoCurrent {
  readonly stall: Amps;
  /** While it holds its load. Left out, `USUAL_HOLDING`. */
  readonly holding?: Amps;
}

/** What a supply must deliver. */
export interface SupplyDemand {
  /** All servos holding. */
  readonly holding: Amps;
  /** All holding, and the hungriest stalled on top. */
  readonly oneStalled: Amps;
  /** All stalled at once. */
  readonly allStalled: Amps;
}

/** Current of a servo that holds a usual load. From experience, no source. */
export const USUAL_HOLDING = amps(0.25);

/** Current drawn by servos on one supply, to compare with what it is rated for. Common practice, no source. */
export function supplyDemand(servos: readonly ServoCurrent[]): SupplyDemand {
  const holding = servos.reduce((sum, servo) => sum + (servo.holding ?? USUAL_HOLDING), 0);
  const stalls = servos.map((servo) => servo.stall);
  return {
    holding: amps(holding),
    oneStalled: amps(holding + Math.max(0, ...stalls)),
    allStalled: amps(stalls.reduce((sum, stall) => sum + stall, 0)),
  };
}
