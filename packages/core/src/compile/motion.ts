import type { Control } from "../model/model.ts";

/** What one control adds to one surface, in degrees from level (or in pulse span where the bench knows no degrees). */
export interface Move {
  readonly control: string;
  /** The selector whose detent chooses the case; none: the first case always holds. */
  readonly per?: string;
  readonly cases: readonly (Share | undefined)[];
}

export type Share =
  | { readonly kind: "detents"; readonly values: readonly number[] }
  | { readonly kind: "stick"; readonly low: number; readonly high: number };

/** Where every control stands: the index of a selector's detent, a stick's position with its trim added. */
export type State = ReadonlyMap<string, number>;
export type Controls = ReadonlyMap<string, Control>;

export interface Extreme {
  readonly value: number;
  readonly state: State;
}

/** Every control at rest: selectors at their first detent, sticks centred, levers at the end where they rest. */
export function restState(controls: Controls): Map<string, number> {
  return new Map([...controls].map(([name, control]) => [name, restPosition(control)]));
}

/** Where one control rests. */
export function restPosition(control: Control | undefined): number {
  return control?.kind === "stick" ? (control.rests ?? 0) : 0;
}

/** The sum of all moves at `state`. */
export function sumMoves(moves: readonly Move[], controls: Controls, state: State): number {
  let sum = 0;
  for (const move of moves) {
    const share = move.cases[move.per === undefined ? 0 : (state.get(move.per) ?? 0)];
    sum += shareAt(share, controls.get(move.control), state.get(move.control) ?? 0);
  }
  return sum;
}

/**
 * The least (`sign` -1) or greatest (+1) sum that any combination of controls makes, exactly: sticks are straight-line on
 * either side of level, so their extremes lie at their ends (trim added) or at level; a control that depends on a selector is
 * maximised within each of that selector's detents. Time is linear in the number of detents. Ties keep the position nearest to rest.
 */
export function extremeSum(moves: readonly Move[], controls: Controls, sign: -1 | 1): Extreme {
  const byControl = new Map(moves.map((move) => [move.control, move]));
  const dependents = new Map<string, string[]>();
  const roots = new Set<string>();
  for (const { control, per } of moves) {
    if (per === undefined) roots.add(control);
    else {
      dependents.set(per, [...(dependents.get(per) ?? []), control]);
      if (!byControl.has(per)) roots.add(per);
    }
  }
  const best = (name: string, parent: number): { value: number; state: [string, number][] } => {
    const control = controls.get(name);
    const share = byControl.get(name)?.cases[byControl.get(name)?.per === undefined ? 0 : parent];
    let found: { value: number; state: [string, number][] } | undefined;
    for (const position of positions(control)) {
      let value = shareAt(share, control, position);
      const state: [string, number][] = [[name, position]];
      for (const dependent of dependents.get(name) ?? []) {
        const below = best(dependent, position);
        value += below.value;
        state.push(...below.state);
      }
      if (found === undefined || sign * value > sign * found.value) found = { value, state };
    }
    return found ?? { value: 0, state: [] };
  };
  const state = new Map<string, number>();
  for (const root of roots) for (const [name, position] of best(root, 0).state) state.set(name, position);
  // Summed again at the witness, so that the value is to the last bit what that combination gives.
  return { value: sumMoves(moves, controls, state), state };
}

/** The positions at which a control's share can be extreme, the one at rest first. */
export function positions(control: Control | undefined): number[] {
  if (control === undefined) return [0];
  if (control.kind === "selector") return control.detents.map((_, index) => index);
  const end = 1 + (control.trim ?? 0) / 100;
  const rest = restPosition(control);
  return [rest, ...[-end, end].filter((position) => position !== rest)];
}

function shareAt(share: Share | undefined, control: Control | undefined, position: number): number {
  if (share === undefined) return 0;
  if (share.kind === "detents") return share.values[position] ?? 0;
  if (restPosition(control) !== 0) return (share.low * (1 - position) + share.high * (1 + position)) / 2;
  return position < 0 ? -position * share.low : position * share.high;
}
