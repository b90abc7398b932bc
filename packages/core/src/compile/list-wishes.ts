import type { Address } from "../address/address.ts";
import { type Controls, type Move, restState, type State, sumMoves } from "./motion.ts";

/** One place that is asked of a surface: by a control, every other control at rest, or by all controls together. */
export interface Wish {
  /** Empty for what all controls ask together. */
  readonly control: string;
  /** What all controls ask together: at rest, or at loss of signal. */
  readonly together?: "rest" | "failsafe";
  readonly detent?: string;
  readonly stick?: -1 | 1;
  /** Detents of other selectors on which this wish depends. */
  readonly when?: Readonly<Record<string, string>>;
  /** On the surface's own scale. */
  readonly place: number;
  /** The place with `when` alone, this control at rest: what an added percent is added to. */
  readonly restPlace: number;
}

/** The rest, the failsafe state, and every detent and stick end that moves the surface, in the order of the controls. */
export function listWishes(moves: readonly Move[], controls: Controls, failsafe: State): Wish[] {
  const restPlace = sumMoves(moves, controls, restState(controls));
  return [
    { control: "", together: "rest", place: restPlace, restPlace },
    { control: "", together: "failsafe", place: sumMoves(moves, controls, failsafe), restPlace },
    ...moves.flatMap((move) => listMoveWishes(move, moves, controls)),
  ];
}

function listMoveWishes(move: Move, moves: readonly Move[], controls: Controls): Wish[] {
  return move.cases.flatMap((share, index) => {
    if (share === undefined) return [];
    const state = restState(controls);
    const caseDetent = move.per === undefined ? undefined : detentsOf(controls, move.per)[index];
    if (move.per !== undefined) state.set(move.per, index);
    const restPlace = sumMoves(moves, controls, state);
    const wish = (position: number, which: Pick<Wish, "detent" | "stick">): Wish => ({
      control: move.control,
      ...which,
      ...(move.per === undefined || caseDetent === undefined ? {} : { when: { [move.per]: caseDetent } }),
      place: sumMoves(moves, controls, new Map(state).set(move.control, position)),
      restPlace,
    });
    if (share.kind === "stick") return [wish(-1, { stick: -1 }), wish(1, { stick: 1 })];
    return detentsOf(controls, move.control).map((detent, position) => wish(position, { detent }));
  });
}

/** What tells one wish from another on the same surface, and matches it with its twin on another surface. */
export function wishKey({
  control,
  together,
  detent,
  stick,
  when,
}: Omit<Wish, "place" | "restPlace">): string {
  return JSON.stringify([control, together ?? detent ?? stick, when ?? {}]);
}

/** For sentences: `flap at landing`, `roll at -1 (phase at thermal)`, `every control at rest`. */
export function describeWish({
  control,
  together,
  detent,
  stick,
  when,
}: Omit<Wish, "place" | "restPlace">): string {
  if (together !== undefined) return together === "rest" ? "every control at rest" : "failsafe";
  const position =
    detent === undefined ? `${control} at ${stick === 1 ? "+1" : "-1"}` : `${control} at ${detent}`;
  const others = Object.entries(when ?? {}).map(([name, value]) => `${name} at ${value}`);
  return others.length === 0 ? position : `${position} (${others.join(", ")})`;
}

/** Where a wish stands in the model. */
export function wishAddress(
  { control, together, detent }: Omit<Wish, "place" | "restPlace">,
  surface: string,
): Address {
  if (together !== undefined) return together === "rest" ? ["surfaces", surface] : ["failsafe"];
  return detent === undefined ? ["moves", control, surface] : ["moves", control, detent, surface];
}

/** The detents of a selector; none for anything else. */
export function detentsOf(controls: Controls, name: string): readonly string[] {
  const control = controls.get(name);
  return control?.kind === "selector" ? control.detents : [];
}
