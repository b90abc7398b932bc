import type { Selector, Stick } from "@hingeline/core";

/** A control with named positions, in the order it goes through them; it starts at the first. */
export function selector<const Detent extends string>(
  first: Detent,
  ...others: readonly Detent[]
): Selector<Detent> {
  return { kind: "selector", detents: [first, ...others] };
}

/** A control that runs from -1 to +1. Without options it has no trim and rests in the middle. */
export function stick(options: Omit<Stick, "kind"> = {}): Stick {
  return { kind: "stick", ...options };
}
