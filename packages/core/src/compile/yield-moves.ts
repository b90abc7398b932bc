import type { Model } from "../model/model.ts";
import { type Controls, extremeSum, type Move, restPosition, type State } from "./motion.ts";
import type { Motion } from "./output.ts";
import type { Report } from "./report.ts";
import { nameState } from "./state-names.ts";

/** One position of one move, whose value is cut. */
interface Cut {
  readonly control: string;
  readonly caseIndex: number;
  readonly position: number;
  readonly from: number;
  readonly to: number;
}

// A sum that ends at the last safe place must not count as past it for a rounding error.
const tolerance = 1e-9;

/**
 * Where the moves of a surface pass what is safe, the controls named in `yields` give way, the first first: their values are
 * cut for good, by just what is too much, as a transmitter without logic can do it. On a group the cut is the same for all of its
 * surfaces, so that what is taken from one side is taken from the other.
 */
export function yieldMoves(
  motions: readonly Motion[],
  model: Model,
  controls: Controls,
  report: Report,
): readonly Motion[] {
  const yielded = new Map(motions.map((motion) => [motion.name, motion]));
  for (const [name, order] of Object.entries(model.yields ?? {})) {
    const surfaces = model.groups?.[name]?.surfaces ?? [name.split(".")[0] ?? name];
    const cuts: Cut[] = [];
    // Each cut mends one position of one control; there are never more of them than positions.
    for (const sign of [-1, 1] as const)
      for (let left = 1000; left > 0; left--) {
        const members = surfaces
          .map((surface) => yielded.get(surface))
          .filter((motion) => motion !== undefined);
        const cut = findCut(members, order, controls, sign);
        if (cut === undefined) break;
        for (const motion of members)
          yielded.set(motion.name, { ...motion, moves: motion.moves.map((move) => applyCut(move, cut)) });
        cuts.push(cut);
      }
    const [first] = surfaces.flatMap((surface) => yielded.get(surface) ?? []);
    for (const { control, position, from, to } of joinCuts(cuts))
      report("gave-way", ["yields", name], {
        control,
        position: String(nameState(controls, new Map([[control, position]]))[control] ?? position),
        surface: name,
        from,
        to,
        unit: first?.rigs[0].travel.unit ?? "deg",
      });
  }
  return motions.map((motion) => yielded.get(motion.name) ?? motion);
}

/** The places that every servo of a surface can take safely and that are measured, lowest and highest. */
export function openPlaces({ rigs }: Motion): readonly [number, number] {
  return [
    Math.max(...rigs.map((rig) => rig.openPlaces[0])),
    Math.min(...rigs.map((rig) => rig.openPlaces[1])),
  ];
}

/** What to cut next: of the member that is furthest past, the first control in order that still has something to give. */
function findCut(
  members: readonly Motion[],
  order: readonly string[],
  controls: Controls,
  sign: -1 | 1,
): Cut | undefined {
  let worst: { readonly motion: Motion; readonly state: State; readonly excess: number } | undefined;
  for (const motion of members) {
    const { value, state } = extremeSum(motion.moves, controls, sign);
    const excess = sign * (value - openPlaces(motion)[sign < 0 ? 0 : 1]);
    if (excess > tolerance && excess > (worst?.excess ?? 0)) worst = { motion, state, excess };
  }
  if (worst === undefined) return undefined;
  const { motion, state, excess } = worst;
  for (const control of order) {
    const move = motion.moves.find((one) => one.control === control);
    if (move === undefined) continue;
    const caseIndex = move.per === undefined ? 0 : (state.get(move.per) ?? 0);
    const share = move.cases[caseIndex];
    const position = state.get(control) ?? 0;
    if (share === undefined) continue;
    const from =
      share.kind === "detents" ? (share.values[position] ?? 0) : position < 0 ? share.low : share.high;
    // Trim stretches a stick's value, so the value at its end gives less than the whole excess.
    const stretch =
      share.kind === "stick" && restPosition(controls.get(control)) === 0
        ? Math.max(1, Math.abs(position))
        : 1;
    const gives = Math.min(excess / stretch, Math.abs(from));
    if (sign * from > 0 && gives > tolerance)
      return {
        control,
        caseIndex,
        position: share.kind === "stick" ? Math.sign(position) : position,
        from,
        // To a billionth of a degree: more digits would only show the rounding errors of the sum.
        to: Number((from - sign * gives).toFixed(9)) + 0,
      };
  }
  return undefined;
}

function applyCut(move: Move, { control, caseIndex, position, from, to }: Cut): Move {
  if (move.control !== control) return move;
  const less = (value: number) =>
    Math.sign(value) === Math.sign(from) && Math.abs(value) > Math.abs(to) ? to : value;
  return {
    ...move,
    cases: move.cases.map((share, index) => {
      if (share === undefined || index !== caseIndex) return share;
      if (share.kind === "detents")
        return { ...share, values: share.values.map((value, at) => (at === position ? less(value) : value)) };
      // What one side does at -1, the other does at +1.
      return { ...share, low: less(share.low), high: less(share.high) };
    }),
  };
}

/** Several cuts of the same position as one, from the first value to the last. */
function joinCuts(cuts: readonly Cut[]): Cut[] {
  const joined = new Map<string, Cut>();
  for (const cut of cuts) {
    const key = JSON.stringify([cut.control, cut.caseIndex, cut.position, Math.sign(cut.from)]);
    joined.set(key, { ...cut, from: joined.get(key)?.from ?? cut.from });
  }
  return [...joined.values()];
}
