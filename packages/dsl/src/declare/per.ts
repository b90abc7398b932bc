import type { Place } from "@hingeline/core";
import type { Mistake } from "./mistake.ts";

/** A place in moves. Its second part is only what the compiler prints where something else is given. */
export type PlaceSpec<Sentence extends string = "write it as deg(…) or atThrow(mm(…))"> =
  | Place
  | Mistake<Sentence>;

/** Exists in types only: the names that stand in moves, so that `model` can refuse those that are not declared. */
declare const used: unique symbol;

/** What a selector does: for each detent, surfaces or groups and their places. */
export type SelectorMovesOf<Detent extends string, Target extends string> = {
  readonly [D in Detent]: { readonly [T in Target]?: PlaceSpec };
};

/** What a stick does: surfaces or groups and their places at -1 and at +1. */
export type StickMovesOf<Target extends string> = {
  readonly [T in Target]?: readonly [PlaceSpec, PlaceSpec];
};

/** A selector's moves that depend on the detent of another selector. */
export interface SelectorPer<
  Per extends string,
  Case extends string,
  Detent extends string,
  Target extends string,
> {
  readonly per: Per;
  readonly cases: { readonly [K in Case]: SelectorMovesOf<Detent, Target> };
  readonly [used]?: readonly [cases: Case, detents: Detent, targets: Target];
}

/** A stick's moves that depend on the detent of a selector. */
export interface StickPer<Per extends string, Case extends string, Target extends string> {
  readonly per: Per;
  readonly cases: { readonly [K in Case]: StickMovesOf<Target> };
  readonly [used]?: readonly [cases: Case, targets: Target];
}

/** Moves that depend on the detent of the selector named `per`; `cases` lists every detent of it. */
export function per<const Per extends string, Case extends string, Target extends string>(
  per: Per,
  cases: { readonly [K in Case]: { readonly [T in Target]?: readonly [PlaceSpec, PlaceSpec] } },
): StickPer<Per, Case, Target>;
export function per<
  const Per extends string,
  Case extends string,
  Detent extends string,
  Target extends string,
>(
  per: Per,
  cases: { readonly [K in Case]: { readonly [D in Detent]: { readonly [T in Target]?: PlaceSpec } } },
): SelectorPer<Per, Case, Detent, Target>;
export function per(per: string, cases: object): object {
  return { per, cases };
}
