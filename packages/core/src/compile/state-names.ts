import type { Controls, State } from "./motion.ts";

/** A state as the plan writes it: a selector's detent by its name, a stick by its position. */
export function nameState(controls: Controls, state: State): Readonly<Record<string, string | number>> {
  const named: Record<string, string | number> = {};
  for (const [name, position] of state) {
    const control = controls.get(name);
    if (control?.kind === "selector") named[name] = control.detents[position] ?? position;
    else named[name] = position;
  }
  return named;
}

/** The state that a model's words describe; controls not named stand at rest. */
export function readState(
  controls: Controls,
  rest: State,
  words: Readonly<Record<string, string | number>>,
): State {
  const state = new Map(rest);
  for (const [name, value] of Object.entries(words)) {
    const control = controls.get(name);
    if (control?.kind === "selector") state.set(name, Math.max(0, control.detents.indexOf(String(value))));
    else if (typeof value === "number") state.set(name, value);
  }
  return state;
}
