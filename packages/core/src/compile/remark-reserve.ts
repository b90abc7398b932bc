import { detentsOf } from "./list-wishes.ts";
import { type Controls, positions, restState, sumMoves } from "./motion.ts";
import type { Motion } from "./output.ts";
import type { Report } from "./report.ts";

/** Whether full stick still reaches, at every detent of every selector, the deflection that the surface must keep in reserve. */
export function remarkReserve(motions: readonly Motion[], controls: Controls, report: Report): void {
  for (const { name, surface, moves } of motions) {
    const { up, down } = surface.reserve ?? {};
    for (const [way, wantedDeg, sign] of [
      ["up", up, -1],
      ["down", down, 1],
    ] as const) {
      if (wantedDeg === undefined) continue;
      for (const [selector, control] of controls) {
        if (control.kind !== "selector" || !moves.some((move) => move.control === selector)) continue;
        detentsOf(controls, selector).forEach((detent, index) => {
          const state = restState(controls).set(selector, index);
          const leftDeg = sign * (furthest(moves, controls, state, sign) ?? 0);
          if (leftDeg < wantedDeg)
            report("reserve-short", ["surfaces", name, "reserve", way], {
              surface: name,
              detent: `${selector} ${detent}`,
              way,
              leftDeg,
              wantedDeg,
            });
        });
      }
    }
  }
}

/** The furthest that the sticks take the surface from `state`; each stick adds on its own, so each may be tried on its own. */
function furthest(
  moves: Motion["moves"],
  controls: Controls,
  state: ReadonlyMap<string, number>,
  sign: -1 | 1,
): number | undefined {
  const full = new Map(state);
  for (const [name, control] of controls) {
    if (control.kind !== "stick") continue;
    const ends = positions(control).map((position) => Math.max(-1, Math.min(1, position)));
    const sums = ends.map((position) => sumMoves(moves, controls, new Map(full).set(name, position)));
    const best = sums.reduce((a, b, index) => (sign * b > sign * (sums[a] ?? 0) ? index : a), 0);
    full.set(name, ends[best] ?? 0);
  }
  return sumMoves(moves, controls, full);
}
