import type { Newtons } from "../units/quantity.ts";

/** A part that the rod's force goes through: rod, horn, horn bolt, arm, hinge, gear. */
export interface LoadedPart {
  readonly name: string;
  /** Force at which it gives way, above 0. */
  readonly holds: Newtons;
}

/** The part that gives way first. */
export interface WeakestPart extends LoadedPart {
  /** The force over what it holds: above 1 it gives way. */
  readonly share: number;
}

/** The part that a rising force, 0 or more, would break first; the first of equals; undefined where no part is known. */
export function findWeakestPart(force: Newtons, parts: readonly LoadedPart[]): WeakestPart | undefined {
  const [first, ...others] = parts;
  if (first === undefined) return undefined;
  const weakest = others.reduce((least, part) => (part.holds < least.holds ? part : least), first);
  return { ...weakest, share: force / weakest.holds };
}
