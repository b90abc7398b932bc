import type { BallRod, BentRod, Cables, Chain, Linkage, Pushrod, TorqueRod, Track } from "@hingeline/core";

/** A rod in one plane from a servo arm to a horn. */
export function pushrod(measures: Omit<Pushrod, "kind">): Pushrod {
  return { kind: "pushrod", ...measures };
}

/** A ball-ended rod in space, shaft and hinge in any direction. */
export function ballRod(measures: Omit<BallRod, "kind">): BallRod {
  return { kind: "ballRod", ...measures };
}

/** A wire that turns about its own length, its bent tip in a pocket of the surface. */
export function bentRod(measures: Omit<BentRod, "kind">): BentRod {
  return { kind: "bentRod", ...measures };
}

/** A servo arm and a rod that push a carriage along a straight track; the surface follows the carriage. */
export function track(measures: Omit<Track, "kind">): Track {
  return { kind: "track", ...measures };
}

/** A shaft that turns the surface about its own line. */
export function torqueRod(measures: Omit<TorqueRod, "kind">): TorqueRod {
  return { kind: "torqueRod", ...measures };
}

/** Two cables from a double arm to a double horn. */
export function cables(measures: Omit<Cables, "kind">): Cables {
  return { kind: "cables", ...measures };
}

/** Linkages one after another, from the servo to the surface. */
export function chain(...links: readonly [Linkage, ...Linkage[]]): Chain {
  return { kind: "chain", links };
}
