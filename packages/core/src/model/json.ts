import type { Address } from "../address/address.ts";

/** JSON data. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** What stands at `address` in `data`; undefined where nothing does. */
export function findAt(data: Json | undefined, address: Address): Json | undefined {
  let value: Json | undefined = data;
  for (const step of address) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Readonly<Record<string | number, Json>>)[step];
  }
  return value;
}
