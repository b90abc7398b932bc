import type { Deg } from "@hingeline/core";

/** Surfaces moved by one name, each on its own scale. */
export interface Together<Surface extends string> {
  readonly kind: "together";
  readonly surfaces: readonly Surface[];
}

/** Surfaces moved by one name that agree within a tolerance all along their travel. */
export interface Matched<Surface extends string> {
  readonly kind: "matched";
  readonly surfaces: readonly Surface[];
  readonly within: Deg;
}

/** A group of surfaces that nothing is asked of but to move together. */
export function together<const Surface extends string>(surfaces: readonly Surface[]): Together<Surface> {
  return { kind: "together", surfaces };
}

/** A group of surfaces whose deflections may differ by `within` degrees, anywhere in their travel. */
export function matched<const Surface extends string>(
  surfaces: readonly Surface[],
  options: { readonly within: Deg },
): Matched<Surface> {
  // The others go on as they are, so that a misspelt option is named rather than lost.
  const { within, ...others } = options;
  return { kind: "matched", surfaces, within, ...others };
}
