import fc from "fast-check";
import type {
  Bench,
  Control,
  Model,
  Moves,
  Place,
  Radio,
  Reading,
  Surface,
} from "../../packages/core/src/model/model.ts";
import type { Deg, Percent, Us } from "../../packages/core/src/units/quantity.ts";

/** A number with one decimal, from `low` to `high`. */
const tenths = (low: number, high: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.ceil(low * 10), max: Math.floor(high * 10) }).map((whole) => whole / 10);

/** A radio that could be: centre 1400 to 1600 us, 400 to 600 us per 100 %, on either side its own, steps 0.1 to 1 %. */
export const arbitraryRadio: fc.Arbitrary<Radio> = fc
  .record({
    name: fc.constantFrom("field set", "desk set"),
    centre: tenths(1400, 1600),
    per100: fc.oneof(tenths(400, 600), fc.record({ below: tenths(400, 600), above: tenths(400, 600) })),
    reach: fc.integer({ min: 100, max: 150 }),
    step: fc.constantFrom(0.1, 0.2, 0.5, 1),
    endPoints: fc.constantFrom("clamp", "scale"),
    curvePoints: fc.constantFrom(0, 5, 9, 17),
    curveSpacing: fc.constantFrom("equal", "free"),
  })
  .map((radio) => radio as unknown as Radio);

/** What a bench can be asked for: deflections where it has readings, else parts. */
interface Reach {
  readonly unit: "degrees" | "part";
  readonly low: number;
  readonly high: number;
}

/** A surface's bench and how far its moves may go. */
export interface BenchCase {
  readonly bench: Bench;
  readonly reach: Reach;
}

/**
 * A bench with three to eight strictly monotone readings, pulse rising or falling with deflection, 0.04 to 0.12 degrees
 * per microsecond; `level` is one of the readings, at 0 degrees, and the stops are the first and the last.
 */
export const arbitraryBench: fc.Arbitrary<BenchCase> = fc
  .record({
    first: tenths(950, 1150),
    spans: fc.array(fc.record({ us: tenths(40, 120), slope: fc.integer({ min: 4, max: 12 }) }), {
      minLength: 2,
      maxLength: 7,
    }),
    levelAt: fc.nat({ max: 6 }),
    rising: fc.boolean(),
    reversed: fc.boolean(),
  })
  .map(({ first, spans, levelAt, rising, reversed }) => {
    const points = [{ pulse: first, deflection: 0 }];
    for (const span of spans) {
      const last = points.at(-1) ?? { pulse: first, deflection: 0 };
      points.push({
        pulse: last.pulse + span.us,
        deflection: last.deflection + (span.us * span.slope) / 100,
      });
    }
    const level = points[levelAt % spans.length] ?? { pulse: first, deflection: 0 };
    // A falling servo is the same bench in the mirror of 1500 us, its deflections kept.
    const pulseOf = (pulse: number) => round(rising ? pulse : 3000 - pulse, 10) as Us;
    const readings = points.map(
      ({ pulse, deflection }): Reading => [pulseOf(pulse), round(deflection - level.deflection, 1000) as Deg],
    );
    const [top, bottom] = [readings[0], readings.at(-1)];
    const bench: Bench = {
      ...(top !== undefined && top[0] !== pulseOf(level.pulse) && { up: top[0] }),
      level: pulseOf(level.pulse),
      down: bottom?.[0] ?? pulseOf(level.pulse),
      readings: reversed ? readings.toReversed() : readings,
    };
    return { bench, reach: { unit: "degrees", low: Number(top?.[1]), high: Number(bottom?.[1]) } };
  });

/** A bench that knows only level and the stops. */
const arbitraryBareBench: fc.Arbitrary<BenchCase> = fc
  .record({ level: tenths(1400, 1600), up: tenths(0, 300), down: tenths(100, 400), rising: fc.boolean() })
  .map(({ level, up, down, rising }) => {
    const sign = rising ? 1 : -1;
    const bench = {
      ...(up > 0 && { up: round(level - sign * up, 10) as Us }),
      level: level as Us,
      down: round(level + sign * down, 10) as Us,
    };
    return { bench, reach: { unit: "part", low: up > 0 ? -1 : 0, high: 1 } };
  });

const surfaceNames = ["flapLeft", "flapRight", "elevator", "rudder"] as const;
const detentNames = ["stowed", "takeoff", "approach", "landing"] as const;

/**
 * A valid model: 1 to 4 surfaces with one servo each on its own channel, most with readings; 1 or 2 selectors of 1 to 4
 * detents, up to 2 sticks, and moves that each lie inside what the bench covers (their sum may not).
 */
export const arbitraryModel: fc.Arbitrary<Model> = fc
  .tuple(
    fc.array(
      fc.oneof({ weight: 3, arbitrary: arbitraryBench }, { weight: 1, arbitrary: arbitraryBareBench }),
      {
        minLength: 1,
        maxLength: 4,
      },
    ),
    fc.shuffledSubarray(
      Array.from({ length: 12 }, (_, index) => index + 1),
      { minLength: 4, maxLength: 4 },
    ),
    fc.subarray(["flap", "phase"] as const, { minLength: 1 }),
    fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 })),
    fc.subarray(["pitch", "roll"] as const),
  )
  .chain(([benches, channels, selectors, detentCounts, sticks]) => {
    const reaches = benches.map(({ reach }, index) => [surfaceNames[index] ?? "", reach] as const);
    const detents = (name: string): readonly string[] =>
      detentNames.slice(0, name === "flap" ? detentCounts[0] : detentCounts[1]);
    const surfaces = benches.map(
      ({ bench }, index): Surface => ({ servo: { channel: channels[index] ?? 0, bench } }),
    );
    const moves: Record<string, fc.Arbitrary<Moves>> = {};
    for (const name of selectors) moves[name] = arbitrarySelectorMoves(detents(name), reaches);
    const per = selectors[0];
    for (const name of sticks) {
      const plain = arbitraryStickMoves(reaches);
      moves[name] =
        per === undefined
          ? plain
          : fc.oneof(
              plain,
              recordOf(detents(per).map((detent) => [detent, plain])).map((cases) => ({ per, cases })),
            );
    }
    const failsafe = recordOf<string | number>([
      ...selectors.map((name) => [name, fc.constantFrom(...detents(name))] as const),
      ...sticks.map((name) => [name, fc.constantFrom(-1, 0, 0.5)] as const),
    ]);
    const trim = fc.option(fc.integer({ min: 0, max: 25 }), { nil: undefined });
    const controls = recordOf<Control>([
      ...selectors.map(
        (name) => [name, fc.constant({ kind: "selector", detents: detents(name) } as const)] as const,
      ),
      ...sticks.map((name) => [name, trim.map(asStick)] as const),
    ]);
    return fc
      .record(
        {
          name: fc.constantFrom("Heronswood tug", "Wrenfield 20"),
          radio: arbitraryRadio,
          controls,
          moves: recordOf(Object.entries(moves)),
          failsafe,
        },
        { requiredKeys: ["name", "radio", "controls", "moves"] },
      )
      .map(
        (rest): Model => ({
          format: "hingeline/model",
          version: 1,
          ...rest,
          surfaces: Object.fromEntries(surfaces.map((surface, index) => [surfaceNames[index], surface])),
        }),
      );
  });

type Reaches = readonly (readonly [name: string, reach: Reach])[];

function arbitrarySelectorMoves(detents: readonly string[], reaches: Reaches): fc.Arbitrary<Moves> {
  const places = recordOf(reaches.map(([name, reach]) => [name, arbitraryPlace(reach, 1)]));
  return recordOf(detents.map((detent) => [detent, fc.oneof(places, fc.constant({}))]));
}

function arbitraryStickMoves(reaches: Reaches): fc.Arbitrary<Record<string, readonly [Place, Place]>> {
  return fc
    .subarray([...reaches])
    .chain((moved) =>
      recordOf(
        moved.map(([name, reach]) => [
          name,
          fc.tuple(arbitraryPlace(reach, 0.3), arbitraryPlace(reach, 0.3)),
        ]),
      ),
    );
}

/** A place within `share` of the way to either end. */
function arbitraryPlace(reach: Reach, share: number): fc.Arbitrary<Place> {
  const unit = 1000;
  const whole = fc.integer({
    min: Math.ceil(reach.low * share * unit),
    max: Math.floor(reach.high * share * unit),
  });
  return whole.map(
    (value): Place =>
      reach.unit === "degrees" ? ((value / unit) as Deg) : { kind: "part", part: value / unit },
  );
}

function recordOf<T>(
  entries: readonly (readonly [string, fc.Arbitrary<T>])[],
): fc.Arbitrary<Record<string, T>> {
  return fc.record(Object.fromEntries(entries) as Record<string, fc.Arbitrary<T>>, { noNullPrototype: true });
}

function asStick(trim: number | undefined): Control {
  return trim === undefined ? { kind: "stick" } : { kind: "stick", trim: trim as Percent };
}

function round(value: number, unit: number): number {
  return Math.round(value * unit) / unit;
}
