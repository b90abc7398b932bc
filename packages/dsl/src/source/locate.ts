import { type Address, parseAddress } from "@hingeline/core";
import { evaluate } from "./evaluate.ts";
import { placeOf } from "./place-of.ts";
import type { Place, Source } from "./source.ts";
import type { Traced } from "./traced.ts";

/** Where an address of a model is written in its files. */
export interface Located extends Place {
  /**
   * `exact`: what stands there is the value itself; `computed`: the value is computed there when the model runs;
   * `around`: no such part is written, and this is the nearest that would hold it.
   */
  readonly stands: "exact" | "computed" | "around";
}

/**
 * The place that an address (`surfaces.flapLeft.servo.bench.level`) stands for, through constants, helper objects, spreads and
 * imports of the project. Undefined where the text is no address or the file exports nothing.
 */
export function locate(source: Source, address: string): Located | undefined {
  return locateAll(source, [address]).get(address);
}

/** The same for several addresses at once; those without a place are left out. Of those in `keys` the place is that of their name. */
export function locateAll(
  source: Source,
  addresses: readonly string[],
  keys: ReadonlySet<string> = new Set(),
): ReadonlyMap<string, Located> {
  const places = new Map<string, Located>();
  const root = evaluate(source).readDefault();
  if (root === undefined) return places;
  for (const address of addresses) {
    const parsed = parseAddress(address);
    if (parsed !== undefined)
      places.set(address, locateIn(root, parsed, keys.has(address) ? "key" : "value"));
  }
  return places;
}

/** The place of an address below a traced value: of what stands there, or of the name that it stands under where that is written. */
export function locateIn(root: Traced, address: Address, what: "value" | "key" = "value"): Located {
  let value = root;
  for (const step of address) {
    const part = partOf(value, step);
    if (part === undefined) return nearest(value);
    value = part;
  }
  if (what === "key" && value.key !== undefined) return { ...placeOf(value.key), stands: "exact" };
  return { ...placeOf(value.node), stands: isComputed(value) ? "computed" : "exact" };
}

/** The part of a value under a name or index. */
function partOf(value: Traced, step: string | number): Traced | undefined {
  if (value.kind === "object") return value.parts.get(String(step));
  return value.kind === "list" ? value.items[Number(step)] : undefined;
}

function isComputed(value: Traced): boolean {
  return value.kind === "value" ? value.literal === undefined : value.kind === "unknown";
}

/** Where a part that was not found would be: in what is spread, in what computes the whole, or simply in the whole. */
function nearest(value: Traced): Located {
  const open = "open" in value ? value.open.at(-1) : undefined;
  if (open !== undefined) return { ...placeOf(open), stands: "computed" };
  return { ...placeOf(value.node), stands: value.kind === "unknown" ? "computed" : "around" };
}
