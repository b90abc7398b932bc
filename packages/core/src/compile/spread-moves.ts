import type { Address } from "../address/address.ts";
import type { Control, Model, Moves, PerMoves, Place, SelectorMoves, StickMoves } from "../model/model.ts";
import { own, selectors, unknown } from "./look-up.ts";
import type { Report } from "./report.ts";

/** What one control does to one surface, groups and cases spread out; the places are still as declared. */
export interface NamedMove {
  readonly control: string;
  /** The selector whose detent chooses the case; none: `cases` has one entry. */
  readonly per?: string;
  readonly cases: readonly (NamedCase | undefined)[];
}

export type NamedCase =
  | { readonly kind: "detents"; readonly places: readonly (NamedPlace | undefined)[] }
  | { readonly kind: "stick"; readonly low: NamedPlace; readonly high: NamedPlace };

export interface NamedPlace {
  readonly place: Place;
  readonly address: Address;
}

/** What one control does, surface by surface; names that point nowhere are reported. */
export function spreadMoves(
  model: Model,
  groups: ReadonlyMap<string, readonly string[]>,
  name: string,
  control: Control,
  declared: Moves,
  report: Report,
): { surface: string; move: NamedMove }[] {
  const address: Address = ["moves", name];
  if (!isPer(declared)) {
    const cases = spreadCase(groups, name, control, declared, address, report);
    return [...cases].map(([surface, one]) => ({ surface, move: { control: name, cases: [one] } }));
  }
  const per = own(model.controls, declared.per);
  if (per?.kind !== "selector") {
    report("unknown-name", [...address, "per"], unknown(declared.per, "selector", selectors(model)));
    return [];
  }
  const casesAddress = [...address, "cases"];
  for (const detent of Object.keys(declared.cases))
    if (!per.detents.includes(detent))
      report(
        "unknown-name",
        [...casesAddress, detent],
        unknown(detent, `detent of ${declared.per}`, per.detents),
      );
  const spread = per.detents.map((detent) => {
    const moves = own(declared.cases, detent);
    if (moves === undefined) report("detent-missing", casesAddress, { control: declared.per, detent });
    return moves && spreadCase(groups, name, control, moves, [...casesAddress, detent], report);
  });
  const surfaces = new Set(spread.flatMap((one) => [...(one?.keys() ?? [])]));
  return [...surfaces].map((surface) => ({
    surface,
    move: { control: name, per: declared.per, cases: spread.map((one) => one?.get(surface)) },
  }));
}

/** Surface -> what this control does to it. */
function spreadCase(
  groups: ReadonlyMap<string, readonly string[]>,
  name: string,
  control: Control,
  moves: SelectorMoves | StickMoves,
  address: Address,
  report: Report,
): Map<string, NamedCase> {
  const cases = new Map<string, NamedCase>();
  const mismatch = () => report("moves-mismatch", address, { control: name, kind: control.kind });
  /** The surfaces of a target, without those that another target has moved there already, which is reported. */
  const membersOf = (target: string, at: Address, movers: Map<string, string>): readonly string[] => {
    const found = groups.get(target);
    if (found === undefined)
      report("unknown-name", at, unknown(target, "surface or group", [...groups.keys()]));
    return (found ?? []).filter((surface) => {
      const first = movers.get(surface);
      if (first === undefined) movers.set(surface, target);
      else report("moved-twice", at, { surface, first, second: target });
      return first === undefined;
    });
  };
  if (control.kind === "stick") {
    const movers = new Map<string, string>();
    for (const [target, places] of Object.entries(moves)) {
      const at = [...address, target];
      if (!isPair(places)) {
        mismatch();
        continue;
      }
      const [low, high] = places;
      for (const surface of membersOf(target, at, movers))
        cases.set(surface, {
          kind: "stick",
          low: { place: low, address: [...at, 0] },
          high: { place: high, address: [...at, 1] },
        });
    }
    return cases;
  }
  const table = moves as SelectorMoves;
  for (const detent of Object.keys(table))
    if (!control.detents.includes(detent))
      report("unknown-name", [...address, detent], unknown(detent, `detent of ${name}`, control.detents));
  const bySurface = new Map<string, (NamedPlace | undefined)[]>();
  control.detents.forEach((detent, index) => {
    const at = [...address, detent];
    const targets = own(table, detent);
    const movers = new Map<string, string>();
    if (targets === undefined) report("detent-missing", address, { control: name, detent });
    else if (isPair(targets)) mismatch();
    else
      for (const [target, place] of Object.entries(targets))
        for (const surface of membersOf(target, [...at, target], movers)) {
          const places = bySurface.get(surface) ?? control.detents.map(() => undefined);
          places[index] = { place, address: [...at, target] };
          bySurface.set(surface, places);
        }
  });
  for (const [surface, places] of bySurface) cases.set(surface, { kind: "detents", places });
  return cases;
}

function isPair(places: StickMoves[string] | SelectorMoves[string]): places is StickMoves[string] {
  return Array.isArray(places);
}

function isPer(moves: Moves): moves is PerMoves {
  return typeof (moves as { per?: unknown }).per === "string";
}
