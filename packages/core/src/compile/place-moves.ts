import type { Surface } from "../model/model.ts";
import { deflectionForThrow } from "../surface/throw.ts";
import { mm } from "../units/quantity.ts";
import { deflectionAtExtension } from "./extension.ts";
import type { Move, Share } from "./motion.ts";
import type { Report } from "./report.ts";
import type { Rig } from "./rig-servos.ts";
import type { NamedCase, NamedMove, NamedPlace } from "./spread-moves.ts";
import { trailingEdge } from "./trailing-edge.ts";

/** Every declared place as a number on the surface's own scale; undefined where one of them cannot be placed. */
export function placeMoves(
  name: string,
  surface: Surface,
  rigs: readonly [Rig, ...Rig[]],
  moves: readonly NamedMove[],
  report: Report,
): readonly Move[] | undefined {
  let complete = true;
  const place = (named: NamedPlace | undefined): number => {
    if (named === undefined) return 0;
    const value = placeOne(name, surface, rigs, named, report);
    if (value === undefined) complete = false;
    return value ?? 0;
  };
  const share = (one: NamedCase | undefined): Share | undefined => {
    if (one === undefined) return undefined;
    if (one.kind === "stick") return { kind: "stick", low: place(one.low), high: place(one.high) };
    return { kind: "detents", values: one.places.map(place) };
  };
  const placed = moves.map(({ control, per, cases }) => ({
    control,
    ...(per === undefined ? {} : { per }),
    cases: cases.map(share),
  }));
  const [rig] = rigs;
  if (complete && rig.travel.unit === "us" && placed.length > 1)
    report("adds-in-pulse", ["surfaces", name], {
      surface: name,
      controls: placed.map(({ control }) => control).join(" and "),
    });
  return complete ? placed : undefined;
}

function placeOne(
  name: string,
  surface: Surface,
  [rig]: readonly [Rig, ...Rig[]],
  { place, address }: NamedPlace,
  report: Report,
): number | undefined {
  const { travel, bench, named } = rig;
  if (typeof place === "number" || place.kind === "throw") {
    const wanted = typeof place === "number" ? place : throwToDeg(name, surface, place.mm, address, report);
    if (wanted === undefined || travel.unit === "deg") return wanted;
    report("no-response", [...named.address, "bench"], {
      surface: name,
      servo: named.id,
      readings: named.servo.bench.readings?.length ?? 0,
    });
    return undefined;
  }
  if (place.kind === "extension") return extensionToPlace(name, rig, place.mm, address, report);
  const pulseUs = place.kind === "pulse" ? place.us : partToPulse(rig, place.part, address, report);
  if (pulseUs === undefined) return undefined;
  const what = `${name} at ${pulseUs} us`;
  const found = travel.placeAt(pulseUs);
  if (found !== undefined) return found;
  const [lowUs, highUs] = bench.stopsUs;
  const below = pulseUs < lowUs;
  if (below || pulseUs > highUs) {
    const limitUs = bench.safeUs[below ? 0 : 1];
    const stop = below === bench.rising ? "up" : "down";
    const stopUs = below ? lowUs : highUs;
    report("limit-passed", address, {
      what,
      pulseUs,
      limitUs,
      stopUs,
      stop,
      guardUs: bench.guardUs[below ? 0 : 1],
      reach: "",
    });
  } else
    report("pulse-not-measured", address, {
      pulseUs,
      servo: named.id,
      lowUs: travel.pulsesUs[0],
      highUs: travel.pulsesUs[1],
    });
  return undefined;
}

function extensionToPlace(
  name: string,
  { named, linked }: Rig,
  extensionMm: number,
  address: NamedPlace["address"],
  report: Report,
): number | undefined {
  const found = deflectionAtExtension(named.servo.linkage, extensionMm);
  if (found === "noTrack") report("no-extension", address, { surface: name, servo: named.id });
  else if (found === undefined) report("extension-too-far", address, { surface: name, extensionMm });
  else return found + (linked?.line.deflectionZeroDeg ?? 0);
  return undefined;
}

function throwToDeg(
  name: string,
  surface: Surface,
  throwMm: number,
  address: NamedPlace["address"],
  report: Report,
): number | undefined {
  if (surface.chord === undefined) {
    report("throw-without-chord", address, { surface: name });
    return undefined;
  }
  const found = deflectionForThrow(trailingEdge(surface, surface.chord), mm(throwMm));
  if (found === undefined)
    report("throw-too-long", address, { surface: name, throwMm, chordMm: surface.chord });
  return found;
}

function partToPulse(
  { bench, named }: Rig,
  part: number,
  address: NamedPlace["address"],
  report: Report,
): number | undefined {
  if (part < 0 && bench.upUs === bench.levelUs) {
    report("part-without-up", address, { servo: named.id, part });
    return undefined;
  }
  const end = part < 0 ? bench.upUs : bench.downUs;
  return bench.levelUs + Math.abs(part) * (end - bench.levelUs);
}
