import type { Address } from "../address/address.ts";
import type { AtExtension, AtThrow, Surface } from "../model/model.ts";
import { deflectionForThrow } from "../surface/throw.ts";
import { deflectionAtExtension } from "./extension.ts";
import type { Report } from "./report.ts";
import type { NamedServo } from "./resolve-names.ts";
import { trailingEdge } from "./trailing-edge.ts";

/** A declared throw or extension as a deflection, degrees; undefined and reported where it is none. */
export function declaredDeg(
  { kind, mm: declaredMm }: AtThrow | AtExtension,
  named: NamedServo,
  surface: Surface,
  address: Address,
  report: Report,
): number | undefined {
  const of = { surface: named.surface };
  if (kind === "throw") {
    const { chord } = surface;
    if (chord === undefined) {
      report("throw-without-chord", address, of);
      return undefined;
    }
    const found = deflectionForThrow(trailingEdge(surface, chord), declaredMm);
    if (found === undefined)
      report("throw-too-long", address, { ...of, throwMm: declaredMm, chordMm: chord });
    return found;
  }
  const found = deflectionAtExtension(named.servo.linkage, declaredMm);
  if (found === undefined) report("extension-too-far", address, { ...of, extensionMm: declaredMm });
  if (found === "noTrack") report("no-extension", address, { ...of, servo: named.id });
  return found === "noTrack" ? undefined : found;
}
