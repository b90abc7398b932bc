import { type Deg, deg, type Mm, mm } from "../units/quantity.ts";
import { deflectionForThrow, type TrailingEdge } from "./throw.ts";

/** What a surface is used for, as far as free play matters. */
export type PlayUse = "flap" | "aileronOrElevator" | "fast";

/** Free play above which a surface should be looked at, whole way from side to side. From experience, no source. */
export const MOST_PLAY: Readonly<Record<PlayUse, Deg>> = {
  flap: deg(1),
  aileronOrElevator: deg(0.5),
  fast: deg(0.3),
};

/**
 * Free play as an angle, from the whole way, 0 or more, that the trailing edge moves with the servo at rest. Undefined
 * where no surface of that chord could move so far.
 */
export function freePlayAngle(edge: TrailingEdge, play: Mm): Deg | undefined {
  const half = deflectionForThrow(edge, mm(play / 2));
  return half === undefined ? undefined : deg(2 * half);
}
