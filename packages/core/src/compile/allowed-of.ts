import type { Surface } from "../model/model.ts";

/** The deflections that the builder allows, lowest and highest; undefined where none are stated, or they contradict themselves. */
export function allowedOf({ allowed }: Surface): readonly [number, number] | undefined {
  return allowed === undefined || allowed[0] >= allowed[1] ? undefined : allowed;
}
