import type { Instruments, Radio, Surface } from "../model/model.ts";
import type { Assumed } from "../plan/setup-plan.ts";
import { READINGS_TO_FIT } from "../response/fit-linkage.ts";
import { linkageDoubt } from "../response/linkage-doubt.ts";
import type { ReadingPoint } from "../response/merge-readings.ts";
import { expand } from "../uncertainty/expand.ts";
import { allowedOf } from "./allowed-of.ts";
import {
  assumedCauses,
  assumedOfLinkage,
  dimensionHalfWidths,
  levelDoubt,
  readingDoubt,
  settingDoubt,
} from "./doubts.ts";
import { type Linked, linkServo } from "./link-servo.ts";
import { type PositionDoubt, standardAt } from "./position-doubt.ts";
import { readResponse } from "./read-response.ts";
import type { Report } from "./report.ts";
import { type ResolvedBench, resolveBench } from "./resolve-bench.ts";
import type { NamedServo, NamedSurface } from "./resolve-names.ts";
import { type Travel, travelByPulse, travelByResponse } from "./travel.ts";

/** A servo, what its bench allows and how its pulse moves its surface. */
export interface Rig extends PositionDoubt {
  readonly named: NamedServo;
  readonly bench: ResolvedBench;
  readonly travel: Travel;
  /** Absent where no linkage is declared, or its shape could not be fitted. */
  readonly linked?: Linked;
  /** The readings, both ways made one. */
  readonly points?: readonly ReadingPoint[];
  /** Causes of a position's doubt that the model does not state. */
  readonly assumed: ReadonlyMap<string, Assumed>;
  /** What may be emitted: inside the guards, and inside the deflections that the builder allows. */
  readonly safeUs: readonly [number, number];
  /** Pulses that are safe and known. */
  readonly openUs: readonly [number, number];
  /** The places of `openUs`, lowest and highest. */
  readonly openPlaces: readonly [number, number];
}

/** Bench and response of every servo of a surface; undefined where one of them contradicts itself. */
export function rigServos(
  { surface, servos }: NamedSurface,
  radio: Radio,
  instruments: Instruments | undefined,
  report: Report,
): readonly [Rig, ...Rig[]] | undefined {
  const rigs = servos.map((named) => rigServo(named, surface, radio, instruments, report));
  const [first, ...others] = rigs.filter((rig) => rig !== undefined);
  return first === undefined || others.length + 1 < servos.length ? undefined : [first, ...others];
}

function rigServo(
  named: NamedServo,
  surface: Surface,
  radio: Radio,
  instruments: Instruments | undefined,
  report: Report,
): Rig | undefined {
  const bench = resolveBench(named, radio, instruments, report);
  const read = readResponse(named, surface, bench, instruments, report);
  if (bench === undefined || read === "contradicts") return undefined;
  const doubt = readingDoubt(surface, instruments, named.servo.bench.readings).causes;
  const linked = linkServo(named, bench, read, doubt.standard, report);
  if (linked === "contradicts") return undefined;
  const response = linked?.response ?? read?.response;
  const travel = response === undefined ? travelByPulse(bench) : travelByResponse(response);
  const safeUs = withinAllowed(bench.safeUs, surface, travel);
  const openUs = [Math.max(safeUs[0], travel.pulsesUs[0]), Math.min(safeUs[1], travel.pulsesUs[1])] as const;
  const ends = openUs.map(travel.placeAt).filter((place) => place !== undefined);
  if (openUs[0] >= openUs[1] || ends.length < 2) {
    const [lowUs, highUs] = travel.pulsesUs;
    report("nothing-measured-inside", [...named.address, "bench"], {
      servo: named.id,
      safeLowUs: safeUs[0],
      safeHighUs: safeUs[1],
      lowUs,
      highUs,
    });
    return undefined;
  }
  const openPlaces = [Math.min(...ends), Math.max(...ends)] as const;
  const rig: Rig = {
    named,
    bench,
    travel,
    ...(response === undefined ? {} : { response }),
    ...(read === undefined ? {} : { points: read.points }),
    ...(linked === undefined ? {} : { linked }),
    readingDoubt: doubt,
    assumed: assumedCauses(surface, instruments, named.servo.bench.readings),
    ...(linked === undefined || read !== undefined ? {} : neverRead(named, linked, surface, instruments)),
    settingDoubt: settingDoubt(radio, instruments, named.servo.type),
    safeUs,
    openUs,
    openPlaces,
  };
  if (rig.linkageDoubt !== undefined) reportNeverRead(rig, report);
  return rig;
}

/** Both ends, because the doubt of a linkage grows away from level. */
function reportNeverRead(rig: Rig, report: Report): void {
  const { named, openUs } = rig;
  report("linkage-never-read", [...named.address, "linkage"], {
    servo: named.id,
    doubtDeg: expand(Math.max(...openUs.map((pulseUs) => standardAt(rig, pulseUs) ?? 0))),
    needed: READINGS_TO_FIT,
  });
}

/** What takes the place of the doubt of readings where there are none. */
function neverRead(
  { servo: { linkage } }: NamedServo,
  { drive, line }: Linked,
  surface: Surface,
  instruments: Instruments | undefined,
): Pick<Rig, "readingDoubt" | "assumed" | "linkageDoubt"> | undefined {
  return (
    linkage && {
      readingDoubt: levelDoubt(surface, instruments, drive.extension !== undefined),
      assumed: assumedOfLinkage(surface, instruments, linkage),
      linkageDoubt: linkageDoubt(linkage, drive, line, dimensionHalfWidths(instruments)),
    }
  );
}

function withinAllowed(
  safeUs: readonly [number, number],
  surface: Surface,
  travel: Travel,
): readonly [number, number] {
  const allowed = allowedOf(surface);
  // On a bench that knows no degrees they cannot be held, which placeMoves reports.
  if (allowed === undefined || travel.unit === "us") return safeUs;
  // Where readings end before what is allowed does, nobody knows the pulse that goes too far: the last reading is the end.
  const [lowest, highest] = travel.places;
  const [one, other] = allowed.map((place) => travel.pulseAt(Math.min(Math.max(place, lowest), highest)));
  if (one === undefined || other === undefined) return safeUs;
  return [Math.max(safeUs[0], Math.min(one, other)), Math.min(safeUs[1], Math.max(one, other))];
}
