import type { Model } from "../model/model.ts";
import { nearestName } from "../model/nearest-name.ts";

/** The member of a record under `name`, never one that the prototype lends. */
export function own<T>(record: Readonly<Record<string, T>> | undefined, name: string): T | undefined {
  return record !== undefined && Object.hasOwn(record, name) ? record[name] : undefined;
}

/** The names of all selectors of a model. */
export function selectors(model: Model): string[] {
  return Object.entries(model.controls).flatMap(([name, control]) =>
    control.kind === "selector" ? [name] : [],
  );
}

/** The facts of the finding that a name is not known; `nearest` is the known one that was most likely meant, or empty. */
export function unknown(name: string, wanted: string, known: readonly string[]) {
  return {
    name,
    wanted,
    known: known.length === 0 ? "none" : known.join(", "),
    nearest: nearestName(name, known) ?? "",
  };
}
