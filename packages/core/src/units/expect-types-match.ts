import type { Quantity } from "./quantity.ts";

/** `T` with every quantity as a plain number and nothing read-only, all the way down. */
export type Unbranded<T> =
  T extends Quantity<string>
    ? number
    : T extends object
      ? { -readonly [Key in keyof T]: Unbranded<T[Key]> }
      : T;

/** `true` where the two types are the same to the last optional key, else `false`. */
export type TypesMatch<A, B> = [A, B] extends [B, A] ? Identical<A, B> : false;

/** Does nothing at run time; `expectTypesMatch<A, B>(true)` compiles only where the two types are the same. */
export function expectTypesMatch<A, B>(_match: TypesMatch<A, B>): void {}

// Tells apart what can be assigned both ways, such as `{}` and `{ a?: number }`, but not an optional key from one that
// may be undefined.
type Identical<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;
