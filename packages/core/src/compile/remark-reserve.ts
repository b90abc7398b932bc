import { detentsOf } from "./list-wishes.ts";
import { type Controls, positions, restState, type State, sumMoves } from "./motion.ts";
import type { Motion } from "./output.ts";
import type { Report } from "./report.ts";

/**
 * Whether full stick still reaches, at rest and at every detent of every selector, the deflection that the surface must keep in
 * reserve. A reserve is an angle: a surface that is known in pulses only is not looked at.
 */
export function remarkReserve(motions: readonly Motion[], controls: Controls, report: Report): void {
  for (const { name, surface, rigs, moves } of motions) {
    if (rigs[0].travel.unit === "us") continue;
    const { up, down } = surface.reserve ?? {};
    for (const [way, wantedDeg, sign] of [
      ["up", up, -1],
      ["down", down, 1],
    ] as const) {
      if (wantedDeg === undefined) continue;
      for (const { detent, state } of statesOf(moves, controls)) {
        const leftDeg = sign * furthest(moves, controls, state, sign);
        if (leftDeg < wantedDeg)
          report("reserve-short", ["surfaces", name, "reserve", way], {
            surface: name,
            detent,
            way,
            leftDeg,
            wantedDeg,
          });
      }
    }
  }
}

/** All selectors that have a say in these moves at rest, then one after the other at each later detent. */
function statesOf(
  moves: Motion["moves"],
  controls: Controls,
): { readonly detent: string; readonly state: State }[] {
  const rest = restState(controls);
  const selectors = [...controls.keys()]
    .filter((name) => moves.some(({ control, per }) => control === name || per === name))
    .map((name) => ({ name, detents: detentsOf(controls, name) }))
    .filter(({ detents }) => detents.length > 0);
  return [
    { detent: selectors.map(({ name, detents }) => `${name} ${detents[0]}`).join(", "), state: rest },
    ...selectors.flatMap(({ name, detents }) =>
      detents.slice(1).map((detent, index) => ({
        detent: `${name} ${detent}`,
        state: new Map(rest).set(name, index + 1),
      })),
    ),
  ];
}

/** The furthest that the sticks take the surface from `state`; each stick adds on its own, so each may be tried on its own. */
function furthest(moves: Motion["moves"], controls: Controls, state: State, sign: -1 | 1): number {
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
