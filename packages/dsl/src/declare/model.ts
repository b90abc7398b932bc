import type { Group, Model, Radio, Surface } from "@hingeline/core";
import type { Controls, ModelSpec } from "./model-spec.ts";

/** A model whose names are known to the compiler; as data it is a `Model` and nothing more. */
export interface DeclaredModel<
  RadioName extends string = string,
  SurfaceName extends string = string,
  GroupName extends string = string,
  C extends Controls = Controls,
> extends Model {
  readonly radio: Radio<RadioName>;
  readonly surfaces: { readonly [Name in SurfaceName]: Surface };
  readonly groups?: { readonly [Name in GroupName]: Group };
  readonly controls: C;
}

/**
 * A model from what is declared of it: plain, frozen, JSON-safe data, a copy of `spec`. `JSON.stringify` of it is the
 * model's JSON form. Misspelt names, wrong units and missing detents do not compile; all else is for the compiler of
 * setup plans to find.
 */
export function model<
  const RadioName extends string,
  SurfaceName extends string,
  C extends Controls,
  GroupName extends string = never,
>(
  name: string,
  spec: ModelSpec<RadioName, SurfaceName, GroupName, C>,
): DeclaredModel<RadioName, SurfaceName, GroupName, C> {
  const data: unknown = { format: "hingeline/model", version: 1, name, ...spec };
  // By way of JSON, so that what is shared, undefined or -0 in the spec is as it will be once written and read.
  return freeze(JSON.parse(JSON.stringify(data)) as DeclaredModel<RadioName, SurfaceName, GroupName, C>);
}

function freeze<T>(value: T): T {
  if (typeof value === "object" && value !== null) {
    Object.values(value).forEach(freeze);
    Object.freeze(value);
  }
  return value;
}
