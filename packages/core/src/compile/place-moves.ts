import type { Surface } from "../model/model.ts";
import { allowedOf } from "./allowed-of.ts";
import { declaredDeg } from "./declared-deg.ts";
import type { Move, Share } from "./motion.ts";
import type { Report } from "./report.ts";
import type { Rig } from "./rig-servos.ts";
import type { NamedCase, NamedMove, NamedPlace } from "./spread-moves.ts";

/** Every declared place as a number on the surface's own scale; undefined where one of them cannot be placed. */
export function placeMoves(
  name: string,
  surface: Surface,
  rigs: readonly [Rig, ...Rig[]],
  moves: readonly NamedMove[],
  report: Report,
): readonly Move[] | undefined {
  const allowed = allowedOf(surface);
  const measured = rigs.find(({ travel }) => travel.unit === "deg");
  const other = rigs.find(({ travel }) => travel.unit === "us");
  if (measured !== undefined && other !== undefined) {
    const facts = { surface: name, measured: measured.named.id, other: other.named.id };
    report("servos-not-measured", [...other.named.address, "bench"], facts);
    return undefined;
  }
  if (other !== undefined && allowed !== undefined)
    report("allowed-not-held", ["surfaces", name, "allowed"], {
      surface: name,
      servo: other.named.id,
      lowestDeg: allowed[0],
      highestDeg: allowed[1],
    });
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
  const { travel, bench, named, linked } = rig;
  if (typeof place === "number" || place.kind === "throw" || place.kind === "extension") {
    const wanted = typeof place === "number" ? place : declaredDeg(place, named, surface, address, report);
    if (wanted === undefined) return undefined;
    // What a fitted linkage calls level is a little off what the bench does.
    const zeroDeg =
      typeof place !== "number" && place.kind === "extension" ? (linked?.line.deflectionZeroDeg ?? 0) : 0;
    if (travel.unit === "deg") return wanted + zeroDeg;
    report("no-response", [...named.address, "bench"], {
      surface: name,
      servo: named.id,
      readings: named.servo.bench.readings?.length ?? 0,
    });
    return undefined;
  }
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
