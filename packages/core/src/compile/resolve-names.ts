import type { Address } from "../address/address.ts";
import type { Control, Group, Model, Servo, Surface } from "../model/model.ts";
import { own, selectors, unknown } from "./look-up.ts";
import type { Report } from "./report.ts";
import { type NamedMove, spreadMoves } from "./spread-moves.ts";

/** A servo with its name in the plan: its surface's, or `rudder.upper` where a surface has several. */
export interface NamedServo {
  readonly id: string;
  readonly surface: string;
  readonly address: Address;
  readonly servo: Servo;
}

export interface NamedSurface {
  readonly name: string;
  readonly surface: Surface;
  readonly servos: readonly NamedServo[];
}

export interface Named {
  readonly surfaces: readonly NamedSurface[];
  readonly controls: ReadonlyMap<string, Control>;
  /** Surface -> its moves, in the order of the controls. */
  readonly moves: ReadonlyMap<string, readonly NamedMove[]>;
}

/** Every name is looked up, groups become their surfaces, and what points nowhere is reported. */
export function resolveNames(model: Model, report: Report): Named {
  const surfaces = Object.entries(model.surfaces).map(([name, surface]) => ({
    name,
    surface,
    servos: namedServos(name, surface),
  }));
  const groups = groupMembers(model, report);
  const controls = new Map(Object.entries(model.controls));
  checkReferences(model, groups, report);
  const moves = new Map<string, NamedMove[]>(surfaces.map(({ name }) => [name, []]));
  for (const [name, declared] of Object.entries(model.moves)) {
    const control = own(model.controls, name);
    const address = ["moves", name];
    if (control === undefined) {
      report("unknown-name", address, unknown(name, "control", Object.keys(model.controls)));
      continue;
    }
    for (const move of spreadMoves(model, groups, name, control, declared, report))
      moves.get(move.surface)?.push(move.move);
  }
  for (const list of moves.values()) refuseCircles(list, report);
  return { surfaces, controls, moves };
}

function namedServos(name: string, surface: Surface): NamedServo[] {
  const address = ["surfaces", name];
  if (surface.servo !== undefined)
    return [{ id: name, surface: name, address: [...address, "servo"], servo: surface.servo }];
  return Object.entries(surface.servos ?? {}).map(([part, servo]) => ({
    id: `${name}.${part}`,
    surface: name,
    address: [...address, "servos", part],
    servo,
  }));
}

function groupMembers(model: Model, report: Report): ReadonlyMap<string, readonly string[]> {
  const members = new Map<string, readonly string[]>();
  for (const name of Object.keys(model.surfaces)) members.set(name, [name]);
  for (const [name, group] of Object.entries(model.groups ?? {})) {
    if (Object.hasOwn(model.surfaces, name)) report("name-twice", ["groups", name], { name });
    else members.set(name, knownMembers(model, name, group, report));
  }
  return members;
}

function knownMembers(model: Model, name: string, group: Group, report: Report): string[] {
  const known: string[] = [];
  group.surfaces.forEach((surface, index) => {
    if (!Object.hasOwn(model.surfaces, surface))
      report(
        "unknown-name",
        ["groups", name, "surfaces", index],
        unknown(surface, "surface", Object.keys(model.surfaces)),
      );
    else if (!known.includes(surface)) known.push(surface);
  });
  return known;
}

function checkReferences(model: Model, groups: ReadonlyMap<string, unknown>, report: Report): void {
  const controls = Object.keys(model.controls);
  for (const [name, list] of Object.entries(model.yields ?? {})) {
    if (!groups.has(name))
      report("unknown-name", ["yields", name], unknown(name, "surface or group", [...groups.keys()]));
    list.forEach((control, index) => {
      if (!controls.includes(control))
        report("unknown-name", ["yields", name, index], unknown(control, "control", controls));
    });
  }
  for (const name of Object.keys(model.transit ?? {}))
    if (own(model.controls, name)?.kind !== "selector")
      report("unknown-name", ["transit", name], unknown(name, "selector", selectors(model)));
  for (const [name, value] of Object.entries(model.failsafe ?? {}))
    checkState(model, ["failsafe", name], name, value, report);
  for (const [name, speeds] of Object.entries(model.airspeed ?? {})) {
    if (name === "otherwise") continue;
    const address = ["airspeed", name];
    if (!controls.includes(name)) report("unknown-name", address, unknown(name, "control", controls));
    else if (typeof speeds === "object")
      for (const detent of Object.keys(speeds)) checkState(model, [...address, detent], name, detent, report);
  }
}

function checkState(
  model: Model,
  address: Address,
  name: string,
  value: string | number,
  report: Report,
): void {
  const control = own(model.controls, name);
  if (control === undefined)
    report("unknown-name", address, unknown(name, "control", Object.keys(model.controls)));
  else if (control.kind === "selector") {
    if (typeof value !== "string" || !control.detents.includes(value))
      report("unknown-name", address, unknown(String(value), `detent of ${name}`, control.detents));
  } else if (typeof value !== "number" || Math.abs(value) > 1)
    report("unknown-name", address, unknown(String(value), `position of ${name}`, ["-1 to +1"]));
}

function refuseCircles(moves: NamedMove[], report: Report): void {
  const perOf = new Map(moves.map((move) => [move.control, move.per]));
  for (const move of moves) {
    let per = move.per;
    for (let steps = 0; per !== undefined && steps <= moves.length; steps++) {
      if (per === move.control) {
        report("per-circle", ["moves", move.control], { control: move.control, per: move.per ?? "" });
        moves.splice(0);
        return;
      }
      per = perOf.get(per);
    }
  }
}
