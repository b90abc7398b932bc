import type { Address } from "../address/address.ts";
import { type Controls, type Move, restState, sumMoves } from "./motion.ts";

/** One place that a control asks of a surface, every other control at rest. */
export interface Wish {
  readonly control: string;
  readonly detent?: string;
  readonly stick?: -1 | 1;
  /** Detents of other selectors that this wish needs, where they differ from rest. */
  readonly when?: Readonly<Record<string, string>>;
  /** On the surface's own scale. */
  readonly place: number;
  /** The place with `when` alone, this control at rest: what an added percent is added to. */
  readonly restPlace: number;
}

/** Every detent and stick end that moves the surface, in the order of the controls. */
export function listWishes(moves: readonly Move[], controls: Controls): Wish[] {
  return moves.flatMap((move) =>
    move.cases.flatMap((share, index) => {
      if (share === undefined) return [];
      const state = restState(controls);
      if (move.per !== undefined) state.set(move.per, index);
      const when = whenOf(move.per, index, controls);
      const restPlace = sumMoves(moves, controls, state);
      const wish = (position: number, which: Pick<Wish, "detent" | "stick">): Wish => ({
        control: move.control,
        ...which,
        ...(when === undefined ? {} : { when }),
        place: sumMoves(moves, controls, new Map(state).set(move.control, position)),
        restPlace,
      });
      if (share.kind === "stick") return [wish(-1, { stick: -1 }), wish(1, { stick: 1 })];
      return detentsOf(controls, move.control).map((detent, position) => wish(position, { detent }));
    }),
  );
}

/** What tells one wish from another on the same surface, and matches it with its twin on another surface. */
export function wishKey({ control, detent, stick, when }: Omit<Wish, "place" | "restPlace">): string {
  return JSON.stringify([control, detent ?? stick, when ?? {}]);
}

/** For sentences: `landing of flap`, `roll at -1 (phase thermal)`. */
export function describeWish({ control, detent, stick, when }: Omit<Wish, "place" | "restPlace">): string {
  const position =
    detent === undefined ? `${control} at ${stick === 1 ? "+1" : "-1"}` : `${control} at ${detent}`;
  const others = Object.entries(when ?? {}).map(([name, value]) => `${name} at ${value}`);
  return others.length === 0 ? position : `${position} (${others.join(", ")})`;
}

/** Where a wish stands in the model. */
export function wishAddress({ control, detent }: Pick<Wish, "control" | "detent">, surface: string): Address {
  return detent === undefined ? ["moves", control, surface] : ["moves", control, detent, surface];
}

export function detentsOf(controls: Controls, name: string): readonly string[] {
  const control = controls.get(name);
  return control?.kind === "selector" ? control.detents : [];
}

function whenOf(
  per: string | undefined,
  index: number,
  controls: Controls,
): Readonly<Record<string, string>> | undefined {
  if (per === undefined || index === 0) return undefined;
  const detent = detentsOf(controls, per)[index];
  return detent === undefined ? undefined : { [per]: detent };
}
