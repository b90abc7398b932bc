import type { Surface } from "../model/model.ts";
import type { TrailingEdge } from "../surface/throw.ts";
import { type Mm, mm } from "../units/quantity.ts";

/** Where a surface's trailing edge stands from its hinge, and how its throws are read. */
export function trailingEdge(surface: Surface, chord: Mm): TrailingEdge {
  return { chord, rise: surface.trailingEdgeRise ?? mm(0), by: surface.throwBy ?? "straight" };
}
