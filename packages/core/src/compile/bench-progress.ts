import type { Address } from "../address/address.ts";
import type { Finding } from "../findings/finding.ts";
import type { Model } from "../model/model.ts";
import { leaveOneOut } from "../response/leave-one-out.ts";
import { mergeReadings, type ReadingPoint } from "../response/merge-readings.ts";
import { type NextReading, nextReading } from "../response/next-reading.ts";
import { expand } from "../uncertainty/expand.ts";
import { us } from "../units/quantity.ts";
import { readingDoubt } from "./doubts.ts";
import { describeWish, listWishes } from "./list-wishes.ts";
import { restState } from "./motion.ts";
import { placeMoves } from "./place-moves.ts";
import { standardAt } from "./position-doubt.ts";
import { inDegrees } from "./read-response.ts";
import { reportTo } from "./report.ts";
import { resolveBench } from "./resolve-bench.ts";
import { type Named, type NamedServo, type NamedSurface, resolveNames } from "./resolve-names.ts";
import { type Rig, rigServos } from "./rig-servos.ts";
import { readState } from "./state-names.ts";

/** What one servo's bench says so far: what a builder wants to see after each reading. Deflections positive trailing edge down. */
export interface BenchProgress {
  /** By rising pulse; empty while the readings contradict each other, which is in `findings`. */
  readonly points: readonly BenchPoint[];
  /** Where the moves want the surface, each deflection once, in the order of the controls. */
  readonly wanted: readonly WantedDeflection[];
  /** Absent where there is nothing to recommend: contradictions come first. */
  readonly next?: BenchNext;
  /** What is wrong with, or worth knowing about, this bench alone. */
  readonly findings: readonly Finding[];
}

/** One pulse of a bench; where it was read both ways, their middle. */
export interface BenchPoint {
  readonly pulseUs: number;
  readonly deflectionDeg: number;
  /** Degrees a microsecond; absent with one point. */
  readonly slopeDegPerUs?: number;
  /** What was read minus what the other readings expect; absent at the ends and with fewer than four points. */
  readonly residualDeg?: number;
  /** Out minus back, where it was read both ways. */
  readonly hysteresisDeg?: number;
}

/** Where the moves want the surface, and how well the readings know it there. */
export interface WantedDeflection {
  /** "flap at landing" */
  readonly what: string;
  readonly deflectionDeg: number;
  /** Absent where it lies outside the readings. */
  readonly known?: {
    readonly pulseUs: number;
    /** Expanded doubt of the deflection there, k = 2. */
    readonly uncertaintyDeg: number;
    /** What the curve between the readings may be off by at most, where that is more than the doubt of one reading. */
    readonly gapDeg?: number;
  };
}

/** Where to read next, or that it is enough. */
export type BenchNext =
  | NextReading
  /** Too few readings for a response. */
  | { readonly kind: "start"; readonly pulseUs: number }
  /** A wanted deflection lies outside the readings, and this stop has not been read. */
  | { readonly kind: "beyond"; readonly pulseUs: number; readonly wantedDeg: number };

/** How far the bench of one servo has come. @param id its name in the plan. Undefined where the model has no such servo. */
export function benchProgress(model: Model, id: string): BenchProgress | undefined {
  const findings: Finding[] = [];
  const named = resolveNames(model, () => undefined);
  for (const surface of named.surfaces) {
    const servo = surface.servos.find((one) => one.id === id);
    if (servo === undefined) continue;
    const alone = { ...surface, servos: [servo] };
    const [rig] = rigServos(alone, model.radio, model.instruments, reportTo(findings)) ?? [];
    if (rig?.points === undefined) return { points: [], wanted: [], findings, ...start(alone, model) };
    const wanted = wantedOf(rig, rig.points, surface, named, model);
    const next = nextOf(rig, rig.points, wanted, model, surface);
    return {
      points: pointsOf(rig, rig.points, model, surface),
      wanted,
      findings,
      ...(next === undefined ? {} : { next }),
    };
  }
  return undefined;
}

/** With one reading or none: level first, then the stop that lies further off. */
function start({ servos: [named] }: NamedSurface, model: Model): { readonly next?: BenchNext } {
  const bench = named && resolveBench(named, model.radio, model.instruments, () => undefined);
  const readings = named?.servo.bench.readings ?? [];
  if (bench === undefined || readings.length > 1) return {};
  const [read] = readings;
  const [lowUs, highUs] = bench.stopsUs;
  if (read === undefined) return { next: { kind: "start", pulseUs: bench.levelUs } };
  const pulseUs = Math.abs(highUs - read[0]) > Math.abs(lowUs - read[0]) ? highUs : lowUs;
  return { next: { kind: "start", pulseUs } };
}

function pointsOf(
  rig: Rig,
  points: readonly ReadingPoint[],
  model: Model,
  { surface }: NamedSurface,
): BenchPoint[] {
  const doubts = readingDoubt(surface, model.instruments, rig.named.servo.bench.readings);
  const misses = new Map(leaveOneOut(points, doubts).map(({ point, missDeg }) => [point, missDeg]));
  const hysteresis = new Map(
    hysteresisOf(rig.named, model, surface).map(({ pulseUs, differenceDeg }) => [pulseUs, differenceDeg]),
  );
  return points.map((point) => {
    const { pulseUs, deflectionDeg } = point;
    const slope = rig.response?.slopeAt(us(pulseUs));
    const [miss, difference] = [misses.get(point), hysteresis.get(pulseUs)];
    return {
      pulseUs,
      deflectionDeg,
      ...(slope === undefined ? {} : { slopeDegPerUs: slope }),
      ...(miss === undefined ? {} : { residualDeg: miss }),
      ...(difference === undefined ? {} : { hysteresisDeg: difference }),
    };
  });
}

function hysteresisOf(named: NamedServo, model: Model, surface: NamedSurface["surface"]) {
  const readings = (named.servo.bench.readings ?? []).flatMap(
    (reading, index) => inDegrees(reading, index, named, surface, model.instruments, () => undefined) ?? [],
  );
  return mergeReadings(readings).hysteresis;
}

/** Empty where a move's place cannot be told, which the compiler reports. */
function wantedOf(
  rig: Rig,
  points: readonly ReadingPoint[],
  { name, surface }: NamedSurface,
  named: Named,
  model: Model,
): WantedDeflection[] {
  const { controls } = named;
  const moves = placeMoves(name, surface, [rig], named.moves.get(name) ?? [], () => undefined);
  if (moves === undefined || rig.response === undefined) return [];
  const wanted = new Map<number, WantedDeflection>();
  const doubts = readingDoubt(surface, model.instruments, rig.named.servo.bench.readings);
  const wishes = listWishes(moves, controls, readState(controls, restState(controls), model.failsafe ?? {}));
  // Detents by their own names first, and what all controls ask together only where no detent asks the same.
  const [together, single] = [true, false].map((both) =>
    wishes.filter((wish) => (wish.together !== undefined) === both),
  );
  for (const wish of [...(single ?? []), ...(together ?? [])]) {
    if (wanted.has(wish.place)) continue;
    const pulseUs = rig.travel.pulseAt(wish.place);
    const standard = pulseUs === undefined ? undefined : standardAt(rig, pulseUs);
    const gap = nextReading(points, [wish.place], doubts);
    wanted.set(wish.place, {
      what: describeWish(wish),
      deflectionDeg: wish.place,
      ...(pulseUs === undefined || standard === undefined
        ? {}
        : {
            known: {
              pulseUs,
              uncertaintyDeg: expand(standard),
              ...(gap?.kind === "gap" ? { gapDeg: gap.gapDeg } : {}),
            },
          }),
    });
  }
  return [...wanted.values()];
}

/** A stop counts as read this near to it: nobody dials the very same pulse twice. Common practice, no source. */
const nearUs = 2;

function nextOf(
  rig: Rig,
  points: readonly ReadingPoint[],
  wanted: readonly WantedDeflection[],
  model: Model,
  { surface }: NamedSurface,
): BenchNext | undefined {
  const { upUs, downUs } = rig.bench;
  const [lowDeg, highDeg] = rig.travel.places;
  for (const { deflectionDeg: wantedDeg } of wanted) {
    const pulseUs = wantedDeg > highDeg ? downUs : wantedDeg < lowDeg ? upUs : undefined;
    const isRead = points.some(
      (point) => pulseUs !== undefined && Math.abs(point.pulseUs - pulseUs) <= nearUs,
    );
    if (pulseUs !== undefined && !isRead) return { kind: "beyond", pulseUs, wantedDeg };
  }
  const doubts = readingDoubt(surface, model.instruments, rig.named.servo.bench.readings);
  return nextReading(
    points,
    wanted.map(({ deflectionDeg }) => deflectionDeg),
    doubts,
  );
}

/** The address of every servo's bench, by the servo's name in the plan, in the order in which the model names them. */
export function benchAddresses(model: Model): ReadonlyMap<string, Address> {
  const { surfaces } = resolveNames(model, () => undefined);
  return new Map(
    surfaces.flatMap(({ servos }) => servos.map(({ id, address }) => [id, [...address, "bench"]] as const)),
  );
}
