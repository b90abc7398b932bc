import { expect, test } from "vitest";
import { parseAddress } from "../../../packages/core/src/address/address.ts";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import type { FindingCode } from "../../../packages/core/src/findings/make-finding.ts";
import { sentences } from "../../../packages/core/src/findings/sentences.ts";
import type { Pushrod } from "../../../packages/core/src/linkage/linkage.ts";
import type { Model, Reading, SelectorMoves, Servo } from "../../../packages/core/src/model/model.ts";
import {
  amps,
  celsius,
  deg,
  degPerS,
  degPerUs,
  mm,
  mps,
  newtons,
  nm,
  pct,
  s,
  us,
} from "../../../packages/core/src/units/quantity.ts";
import { codesOf, findingOf } from "../../support/expect-finding.ts";
import {
  readings,
  smallModel,
  smallMoves,
  smallServo,
  smallSurface,
  straightReadings,
} from "../../support/small-model.ts";

/** A model that has this finding, and where it stands; numbers are checked where they are the point of the finding. */
interface Case {
  readonly model: Model;
  readonly at: string;
  readonly numbers?: Readonly<Record<string, number>>;
}

const { controls, radio, surfaces } = smallModel();
const moves = smallMoves;
const bench = (over: Parameters<typeof smallSurface>[0]) =>
  smallModel({ surfaces: { flap: smallSurface(over) } });
const lever = (landing: SelectorMoves[string]) =>
  smallModel({ moves: { lever: { ...moves.lever, landing } } });
const two = (second: Parameters<typeof smallServo>[0], first: Parameters<typeof smallServo>[0] = {}) =>
  smallModel({
    surfaces: { flap: smallSurface({}, first), other: smallSurface({}, { channel: 2, ...second }) },
  });
const mirroredReadings = straightReadings.map(([pulse, at]): Reading => [us(3000 - pulse), at]);
const yLead = (second: Parameters<typeof smallServo>[0]) =>
  smallModel({
    surfaces: {
      flap: smallSurface({}, { yLead: true }),
      other: { servo: smallServo({ channel: 1, yLead: true, ...second }) },
    },
    groups: { both: { kind: "together", surfaces: ["flap", "other"] } },
    moves: { lever: { stowed: { both: deg(0) }, takeoff: { both: deg(12) }, landing: { both: deg(25) } } },
  });
const { readings: _measured, ...bareBench } = smallServo().bench;
/** A square pushrod: ratio 1, straight as far as it goes. */
const pushrod = {
  kind: "pushrod",
  arm: mm(10),
  horn: mm(10),
  base: mm(60),
  rise: mm(0),
  armAt: deg(90),
  hornAt: deg(90),
} as const;
const track = {
  kind: "track",
  arm: mm(20),
  armAt: deg(120),
  base: mm(60),
  rise: mm(10),
  trackAt: deg(0),
  travel: mm(15),
  cam: { kind: "powers", length: mm(15), terms: [{ deflection: deg(30), power: 1 }] },
} as const;
/** The small flap known by a linkage alone, or by the readings that `over` brings. */
const linked = (rod: Partial<Pushrod>, over: Partial<Servo> = {}) =>
  smallModel({
    surfaces: {
      flap: {
        servo: {
          channel: 1,
          bench: bareBench,
          turns: "clockwise",
          type: { rotation: degPerUs(0.1) },
          linkage: { ...pushrod, ...rod },
          ...over,
        },
      },
    },
  });
/** The small flap in the air: 600 mm by 50 mm, b2 = -0.012 per degree, a servo of 0.3 N m and a ratio of 1. */
const loaded = (airspeed: number) =>
  smallModel({
    surfaces: {
      flap: {
        ...smallSurface({}, { type: { torque: nm(0.3), rotation: degPerUs(0.1) } }),
        span: mm(600),
        chord: mm(50),
        hingeMoment: { byIncidence: 0, byDeflection: -0.012 },
      },
    },
    airspeed: { otherwise: mps(airspeed) },
  });
const withoutFailsafe = () => {
  const { failsafe: _, ...rest } = smallModel();
  return rest;
};
const bare = (over = {}) => {
  const { readings: _, ...rest } = smallServo().bench;
  return smallModel({ surfaces: { flap: { servo: smallServo({ bench: { ...rest, ...over } }) } } });
};

const cases: Record<Exclude<FindingCode, "model-malformed">, Case> = {
  "unknown-name": { model: lever({ flop: deg(1) }), at: "moves.lever.landing.flop" },
  "name-twice": {
    model: smallModel({ groups: { flap: { kind: "together", surfaces: ["flap"] } } }),
    at: "groups.flap",
  },
  "detent-missing": {
    model: smallModel({ moves: { lever: { stowed: {}, takeoff: {} } } }),
    at: "moves.lever",
  },
  "moves-mismatch": { model: smallModel({ controls: { lever: { kind: "stick" } } }), at: "moves.lever" },
  "moved-twice": {
    model: smallModel({
      groups: { all: { kind: "together", surfaces: ["flap"] } },
      moves: { lever: { ...moves.lever, landing: { flap: deg(25), all: deg(20) } } },
    }),
    at: "moves.lever.landing.flap",
  },
  "per-circle": {
    model: smallModel({
      controls: { ...controls, mode: { kind: "selector", detents: ["a"] } },
      moves: {
        lever: { per: "mode", cases: { a: moves.lever } },
        mode: {
          per: "lever",
          cases: { stowed: { a: { flap: deg(1) } }, takeoff: { a: {} }, landing: { a: {} } },
        },
      },
    }),
    at: "moves.lever",
  },
  "channel-twice": {
    model: two({ channel: 1 }),
    at: "surfaces.other.servo.channel",
    numbers: { channel: 1 },
  },
  "label-twice": { model: two({ label: "W-1" }, { label: "W-1" }), at: "surfaces.other.servo.label" },
  "stops-equal": { model: bench({ down: us(1500) }), at: "surfaces.flap.servo.bench.down" },
  "stops-reversed": {
    model: bench({ up: us(1700) }),
    at: "surfaces.flap.servo.bench",
    numbers: { upUs: 1700, levelUs: 1500, downUs: 1800 },
  },
  "guard-too-wide": { model: bench({ guard: us(400) }), at: "surfaces.flap.servo.bench.guard" },
  "guard-thin": {
    model: bench({ guard: us(1) }),
    at: "surfaces.flap.servo.bench.guard",
    // max of one step (5 us) and 2 * sqrt((1^2 + 2.5^2) / 3) = 3.11 us.
    numbers: { guardUs: 1, neededUs: 5 },
  },
  "added-past-level": {
    model: smallModel({
      surfaces: {
        flap: {
          servo: {
            channel: 1,
            added: us(20),
            bench: { level: us(1500), down: us(1800), guard: us(5), readings: straightReadings.slice(2) },
          },
        },
      },
    }),
    at: "surfaces.flap.servo.added",
    numbers: { addedUs: 20, levelUs: 1500 },
  },
  "guard-thick": { model: bench({ guard: us(31) }), at: "surfaces.flap.servo.bench.guard" },
  "grid-empty": {
    model: smallModel({ radio: { ...radio, step: pct(100) } }),
    at: "surfaces.flap.servo.bench",
  },
  "step-too-coarse": {
    // Steps of 100 us; of 1400, 1500 and 1600 us none lies between the readings.
    model: smallModel({
      radio: { ...radio, step: pct(20) },
      surfaces: {
        flap: smallSurface({
          guard: us(100),
          level: us(1530),
          readings: readings([1510, -2], [1530, 0], [1590, 6]),
        }),
      },
      moves: { lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(0) }, landing: { flap: deg(0) } } },
    }),
    at: "moves.lever.landing.flap",
    numbers: { exactUs: 1530, lowUs: 1510, highUs: 1590 },
  },
  "signal-range": {
    model: smallModel({ radio: { ...radio, reach: pct(40) } }),
    at: "moves.lever.landing.flap",
    numbers: { pulseUs: 1750, reachUs: 1700, reachPercent: 40 },
  },
  "limit-too-tight": {
    // The safe pulses, 1210 to 1790 us, are -56 % and +60 % of this radio.
    model: smallModel({ radio: { ...radio, centre: us(1490), leastLimit: pct(58) } }),
    at: "surfaces.flap.servo.bench",
    numbers: { percent: -56, pulseUs: 1210, leastPercent: 58, leastUs: 1200 },
  },
  "adds-past-reach": {
    // At rest 1300 us, -40 %; landing 1750 us, +50 %.
    model: smallModel({
      radio: { ...radio, reach: pct(80) },
      moves: { lever: { stowed: { flap: deg(-20) }, takeoff: { flap: deg(0) }, landing: { flap: deg(25) } } },
    }),
    at: "surfaces.flap.servo",
    numbers: { addPercent: 90, reachPercent: 80 },
  },
  "limit-short": {
    model: smallModel({ radio: { ...radio, reach: pct(55) } }),
    at: "surfaces.flap.servo.bench.down",
    numbers: { safeUs: 1790, reachUs: 1775, reachPercent: 55 },
  },
  "limit-would-pass": {
    // 1799 us is 59.8 %; the nearest value, 60 %, is 1800 us, past a stop at 1799.
    model: bench({ down: us(1799), guard: us(0), readings: straightReadings.slice(0, 4) }),
    at: "surfaces.flap.servo.bench.down",
    numbers: { percent: 59, nearestPercent: 60, nearestUs: 1800, stopUs: 1799 },
  },
  "no-response": { model: bare(), at: "surfaces.flap.servo.bench", numbers: { readings: 0 } },
  "shape-unknown": {
    model: bench({ readings: readings([1500, 0], [1800, 30]) }),
    at: "surfaces.flap.servo.bench.readings",
    numbers: { firstUs: 1500, secondUs: 1800, middleUs: 1650 },
  },
  "reading-twice": {
    model: bench({ readings: [...straightReadings, ...readings([1650, 16])] }),
    at: "surfaces.flap.servo.bench.readings[5]",
    numbers: { pulseUs: 1650, firstDeg: 15, secondDeg: 16 },
  },
  "not-monotone": {
    model: bench({ readings: readings([1200, -30], [1350, -15], [1500, 0], [1650, -3], [1800, 30]) }),
    at: "surfaces.flap.servo.bench.readings[3]",
    numbers: { lowUs: 1500, highUs: 1650, lowDeg: 0, highDeg: -3 },
  },
  "reading-pulse": {
    model: bench({ readings: readings([1200, -30], [1350, -15], [1500, 0], [165, 15], [1800, 30]) }),
    at: "surfaces.flap.servo.bench.readings[3]",
    numbers: { pulseUs: 165 },
  },
  "suspicious-reading": {
    model: bench({
      readings: readings(
        [1200, -30],
        [1300, -20],
        [1400, -10],
        [1500, 0],
        [1600, 12.5],
        [1700, 20],
        [1800, 30],
      ),
    }),
    at: "surfaces.flap.servo.bench.readings[4]",
    numbers: { pulseUs: 1600, readDeg: 12.5 },
  },
  hysteresis: {
    model: bench({
      readings: [
        ...straightReadings.slice(0, 3),
        [us(1650), deg(14.5), "out"],
        [us(1650), deg(15.5), "back"],
        straightReadings[4] as never,
      ],
    }),
    at: "surfaces.flap.servo.bench.readings[3]",
    numbers: { pulseUs: 1650, differenceDeg: 1 },
  },
  "read-more": {
    model: bench({ readings: readings([1200, -20], [1500, 0], [1800, 36]) }),
    at: "surfaces.flap.servo.bench.readings",
  },
  "reading-past-stop": {
    model: bench({ down: us(1790) }),
    at: "surfaces.flap.servo.bench.readings[4]",
    numbers: { pulseUs: 1800, stopUs: 1790 },
  },
  "direction-disagrees": {
    model: bench({ readings: readings([1200, 30], [1500, 0], [1800, -30]) }),
    at: "surfaces.flap.servo.bench.readings",
  },
  "level-disagrees": {
    model: bench({ readings: readings([1200, -29], [1350, -14], [1500, 1], [1650, 16], [1800, 31]) }),
    at: "surfaces.flap.servo.bench.level",
    numbers: { deflectionDeg: 1 },
  },
  "level-not-measured": {
    model: smallModel({
      surfaces: { flap: smallSurface({ readings: readings([1600, 10], [1700, 20], [1800, 30]) }) },
      moves: { lever: { stowed: { flap: deg(11) }, takeoff: { flap: deg(12) }, landing: { flap: deg(25) } } },
    }),
    at: "surfaces.flap.servo.bench.level",
  },
  "throw-without-chord": {
    model: lever({ flap: { kind: "throw", mm: mm(20) } }),
    at: "moves.lever.landing.flap",
  },
  "throw-too-long": {
    model: smallModel({
      surfaces: { flap: { ...smallSurface(), chord: mm(20) } },
      moves: {
        lever: { ...(moves.lever as object), landing: { flap: { kind: "throw", mm: mm(50) } } } as never,
      },
    }),
    at: "moves.lever.landing.flap",
    numbers: { throwMm: 50, chordMm: 20 },
  },
  "meter-unfit": {
    model: smallModel({
      instruments: { meter: "gravity" },
      surfaces: { flap: { ...smallSurface(), hinge: { tilt: deg(90) } } },
    }),
    at: "surfaces.flap.hinge",
    numbers: { hingeDeg: 90 },
  },
  "angle-impossible": {
    model: smallModel({
      instruments: { meter: "gravity" },
      // On a hinge tilted by 62 degrees sin(shown) cannot pass cos(62 deg) = 0.4695, which is 28 degrees.
      surfaces: {
        flap: { ...smallSurface({ readings: straightReadings.slice(1) }), hinge: { tilt: deg(62) } },
      },
    }),
    at: "surfaces.flap.servo.bench.readings[3]",
    numbers: { shownDeg: 30 },
  },
  "part-without-up": {
    model: smallModel({
      ...bare({ up: undefined }),
      moves: { lever: { stowed: {}, takeoff: {}, landing: { flap: { kind: "part", part: -0.5 } } } },
    }),
    at: "moves.lever.landing.flap",
  },
  "adds-in-pulse": {
    model: smallModel({
      ...bare(),
      controls: { ...controls, pitch: { kind: "stick" } },
      moves: {
        lever: { stowed: {}, takeoff: {}, landing: { flap: { kind: "part", part: 0.5 } } },
        pitch: {
          flap: [
            { kind: "part", part: -0.2 },
            { kind: "part", part: 0.2 },
          ],
        },
      },
    }),
    at: "surfaces.flap",
  },
  "not-measured": {
    model: lever({ flap: deg(35) }),
    at: "moves.lever.landing.flap",
    numbers: { wantedDeg: 35, measuredDeg: 30, measuredUs: 1800 },
  },
  "pulse-not-measured": {
    model: smallModel({
      surfaces: { flap: smallSurface({ readings: straightReadings.slice(0, 4) }) },
      moves: { lever: { stowed: {}, takeoff: {}, landing: { flap: { kind: "pulse", us: us(1700) } } } },
    }),
    at: "moves.lever.landing.flap",
    numbers: { pulseUs: 1700, lowUs: 1200, highUs: 1650 },
  },
  "limit-passed": {
    model: lever({ flap: deg(29.5) }),
    at: "moves.lever.landing.flap",
    numbers: { pulseUs: 1795, limitUs: 1790, stopUs: 1800, guardUs: 10 },
  },
  "combination-cut": {
    model: smallModel({
      controls: { ...controls, pitch: { kind: "stick" } },
      moves: { ...moves, pitch: { flap: [deg(-8), deg(8)] } },
    }),
    at: "surfaces.flap",
    numbers: { asked: 33, end: 29, lost: 4 },
  },
  "y-lead-moves-differ": {
    model: two({ channel: 1, yLead: true }, { yLead: true }),
    at: "surfaces.other.servo.channel",
  },
  "y-lead-opposed": {
    model: yLead({ bench: { up: us(1800), level: us(1500), down: us(1200), readings: mirroredReadings } }),
    at: "surfaces.other.servo.channel",
  },
  "y-lead-not-measured": {
    model: smallModel({
      ...yLead({ bench: { up: us(1200), level: us(1500), down: us(1800) } }),
      moves: { lever: { stowed: {}, takeoff: {}, landing: {} } },
    }),
    at: "surfaces.other.servo.channel",
  },
  "y-lead-apart": {
    model: yLead({
      bench: {
        up: us(1850),
        level: us(2000),
        down: us(2150),
        guard: us(10),
        readings: readings([1850, -15], [2000, 0], [2150, 15]),
      },
    }),
    at: "surfaces.other.servo.channel",
    numbers: { channel: 1, endsUs: 1790, beginsUs: 1860 },
  },
  "servos-not-measured": {
    model: smallModel({
      surfaces: { flap: { servos: { a: smallServo(), b: smallServo({ channel: 2, bench: bareBench }) } } },
    }),
    at: "surfaces.flap.servos.b.bench",
  },
  "y-lead-off": {
    // 3 degrees more at full travel on the second surface: half of it each way at 25 degrees of 30.
    model: yLead({
      bench: {
        ...smallServo().bench,
        readings: readings([1200, -33], [1350, -16.5], [1500, 0], [1650, 16.5], [1800, 33]),
      },
    }),
    at: "surfaces.flap.servo.channel",
  },
  "stop-pushed": {
    model: bench({
      down: { kind: "stop", pulse: us(1800), reason: "contact", current: amps(0.62) },
      freeCurrent: amps(0.18),
    }),
    at: "surfaces.flap.servo.bench.down",
    numbers: { stopAmps: 0.62, freeAmps: 0.18 },
  },
  "nothing-measured-inside": {
    model: bench({
      up: us(1500),
      level: us(1510),
      down: us(1550),
      readings: readings([1600, 10], [1700, 20], [1800, 30]),
    }),
    at: "surfaces.flap.servo.bench",
    numbers: { lowUs: 1600, highUs: 1800 },
  },
  "gave-way": {
    model: smallModel({
      controls: { ...controls, pitch: { kind: "stick" } },
      moves: { ...moves, pitch: { flap: [deg(-8), deg(8)] } },
      yields: { flap: ["pitch"] },
    }),
    at: "yields.flap",
    // 25 + 8 degrees, of which the guarded 29 are there.
    numbers: { from: 8, to: 4 },
  },
  "sides-differ": {
    model: smallModel({
      surfaces: {
        flap: smallSurface(),
        other: smallSurface(
          { readings: readings([1200, -30], [1350, -13], [1500, 0], [1650, 12], [1800, 30]) },
          { channel: 2 },
        ),
      },
      moves: { lever: { stowed: { both: deg(0) }, takeoff: {}, landing: { both: deg(25) } } },
      groups: { both: { kind: "matched", surfaces: ["flap", "other"], within: deg(1) } },
    }),
    at: "groups.both",
  },
  "match-unproven": {
    model: smallModel({
      surfaces: { flap: smallSurface(), other: smallSurface({}, { channel: 2 }) },
      moves: { lever: { stowed: { both: deg(0) }, takeoff: {}, landing: { both: deg(25) } } },
      groups: { both: { kind: "matched", surfaces: ["flap", "other"], within: deg(0.5) } },
    }),
    at: "groups.both",
    numbers: { withinDeg: 0.5 },
  },
  "servos-fight": {
    model: smallModel({
      surfaces: {
        flap: {
          servos: {
            upper: smallServo(),
            lower: smallServo({
              channel: 2,
              bench: {
                ...smallServo().bench,
                readings: readings([1200, -30], [1350, -13], [1500, 0], [1650, 12], [1800, 30]),
              },
            }),
          },
        },
      },
    }),
    at: "surfaces.flap.servos",
  },
  "transit-depends": {
    model: smallModel({
      controls: { ...controls, phase: { kind: "selector", detents: ["cruise", "thermal"] } },
      moves: { lever: { per: "phase", cases: { cruise: moves.lever, thermal: moves.lever } } },
      transit: { lever: s(2) },
    }),
    at: "transit.lever",
  },
  "transit-too-fast": {
    model: smallModel({
      surfaces: { flap: smallSurface({}, { type: { rotation: degPerUs(0.1), speed: degPerS(250) } }) },
      transit: { lever: s(0.05) },
    }),
    at: "transit.lever",
    // 250 us at 0.1 degrees per microsecond are 25 degrees, at 250 degrees a second.
    numbers: { askedSeconds: 0.05, fastestSeconds: 0.1 },
  },
  "percents-summed": {
    model: smallModel({
      surfaces: {
        flap: smallSurface({
          readings: readings([1200, -20], [1350, -11], [1500, 0], [1650, 14], [1800, 32]),
        }),
      },
      controls: { ...controls, pitch: { kind: "stick" } },
      moves: { ...moves, pitch: { flap: [deg(-5), deg(5)] } },
    }),
    at: "surfaces.flap",
  },
  "one-side-short": {
    model: smallModel({
      surfaces: { flap: smallSurface(), other: smallSurface({ down: us(1740) }, { channel: 2 }) },
      moves: { lever: { stowed: { both: deg(0) }, takeoff: {}, landing: { both: deg(25) } } },
      groups: { both: { kind: "matched", surfaces: ["flap", "other"], within: deg(1) } },
    }),
    at: "groups.both",
    numbers: { highestDeg: 23 },
  },
  "mirror-differs": {
    model: smallModel({
      surfaces: {
        flap: smallSurface(),
        other: smallSurface(
          {
            up: us(1820),
            level: us(1520),
            down: us(1220),
            readings: mirroredReadings.map(([pulse, at]) => [us(pulse + 20), at]),
          },
          { channel: 2 },
        ),
      },
      moves: { lever: { stowed: { both: deg(0) }, takeoff: {}, landing: { both: deg(25) } } },
      groups: { both: { kind: "matched", surfaces: ["flap", "other"], within: deg(1) } },
    }),
    at: "surfaces.other.servo",
    // Level of the second side is 20 us higher, which is 2 degrees.
    numbers: { givesDeg: 2, wantedDeg: 0, mirroredUs: 1500 },
  },
  "failsafe-missing": { model: withoutFailsafe(), at: "" },
  "power-up-unsafe": {
    model: smallModel({ radio: { ...radio, powerUp: us(1795) } }),
    at: "surfaces.flap.servo",
    numbers: { powerUpUs: 1795, lowUs: 1210, highUs: 1790 },
  },
  "power-up-moves": {
    model: smallModel({ radio: { ...radio, powerUp: us(1700) } }),
    at: "surfaces.flap.servo",
    numbers: { powerUpUs: 1700, givesDeg: 20 },
  },
  "not-held": {
    model: loaded(30),
    at: "moves.lever.landing.flap",
    // q = 551.25 Pa, M = q * 0.6 m * 0.05 m^2 * 0.012 * 25 = 0.248 N m; ratio 1; of 0.3 N m stall.
    numbers: { airspeedMps: 30 },
  },
  "load-high": {
    model: loaded(24),
    at: "moves.lever.landing.flap",
    numbers: { airspeedMps: 24 },
  },
  "supply-short": {
    model: smallModel({
      surfaces: { flap: smallSurface({}, { type: { stallCurrent: amps(3) } }) },
      supply: { current: amps(3) },
    }),
    at: "supply.current",
    // 0.25 A holding and 3 A for the one that is stalled.
    numbers: { neededAmps: 3.25, supplyAmps: 3 },
  },
  "play-large": {
    model: smallModel({ surfaces: { flap: { ...smallSurface(), freePlay: deg(0.8) } } }),
    at: "surfaces.flap.freePlay",
    numbers: { playDeg: 1.6, mostDeg: 1 },
  },
  "linkage-impossible": {
    model: linked({ rod: mm(200) }),
    at: "surfaces.flap.servo.linkage",
  },
  "linkage-needs-rotation": {
    model: smallModel({ surfaces: { flap: { servo: { channel: 1, bench: bareBench, linkage: pushrod } } } }),
    at: "surfaces.flap.servo.linkage",
  },
  "linkage-never-read": {
    model: linked({}),
    at: "surfaces.flap.servo.linkage",
    numbers: { needed: 4 },
  },
  "linkage-not-fitted": {
    model: smallModel({
      surfaces: {
        flap: smallSurface({ readings: readings([1200, -30], [1500, 0], [1800, 30]) }, { linkage: pushrod }),
      },
    }),
    at: "surfaces.flap.servo.linkage",
    numbers: { pulses: 3 },
  },
  "turns-other-way": { model: linked({}, { turns: "anticlockwise" }), at: "surfaces.flap.servo.turns" },
  "reading-out-of-reach": {
    model: linked({ arm: mm(20) }, { bench: { ...smallServo().bench, readings: straightReadings } }),
    at: "surfaces.flap.servo.linkage",
  },
  "linkage-misfit": {
    // The readings are straight; a long horn that leans far bends what the linkage gives.
    model: linked(
      { horn: mm(30), hornAt: deg(60), arm: mm(8) },
      { bench: { ...smallServo().bench, readings: straightReadings } },
    ),
    at: "surfaces.flap.servo.linkage",
  },
  "linkage-fits-nothing": {
    // A track lets its surface down, and these readings go up only.
    model: smallModel({
      surfaces: {
        flap: smallSurface(
          { readings: readings([1500, 0], [1400, -10], [1300, -20], [1200, -30]) },
          {
            linkage: {
              kind: "track",
              arm: mm(17),
              armAt: deg(40),
              base: mm(100),
              rise: mm(2),
              trackAt: deg(-6),
              travel: mm(34),
              cam: { kind: "powers", length: mm(34), terms: [{ deflection: deg(40), power: 1 }] },
            },
          },
        ),
      },
      moves: { lever: { stowed: {}, takeoff: {}, landing: {} } },
    }),
    at: "surfaces.flap.servo.linkage",
  },
  "linkage-ends": {
    model: linked(
      { arm: mm(18) },
      { type: { rotation: degPerUs(0.25) }, bench: { ...bareBench, down: us(1550) } },
    ),
    at: "surfaces.flap.servo.linkage",
  },
  "near-dead-centre": {
    model: linked({ arm: mm(6), hornAt: deg(42) }, { type: { rotation: degPerUs(0.1) } }),
    at: "surfaces.flap.servo.linkage",
  },
  "leverage-falls": {
    model: linked({ arm: mm(11), horn: mm(10), hornAt: deg(65) }, { type: { rotation: degPerUs(0.09) } }),
    at: "surfaces.flap.servo.linkage",
  },
  "rod-buckles": {
    // 1 mm steel, 100 mm, pinned: pi^2 * 200 000 * pi / 64 / 10 000 = 9.69 N; 1 N m at 10 mm is 100 N.
    model: linked(
      {},
      {
        type: { rotation: degPerUs(0.1), torque: nm(1) },
        rod: { material: "steel", diameter: mm(1), length: mm(100) },
      },
    ),
    at: "surfaces.flap.servo.rod",
    numbers: { bucklesN: (Math.PI ** 3 * 200_000) / 64 / 10_000 },
  },
  "part-weak": {
    model: linked(
      {},
      { type: { rotation: degPerUs(0.1), torque: nm(1) }, holds: { horn: newtons(80), clevis: newtons(90) } },
    ),
    at: "surfaces.flap.servo.holds.horn",
    numbers: { holdsN: 80 },
  },
  "no-extension": {
    model: lever({ flap: { kind: "extension", mm: mm(5) } }),
    at: "moves.lever.landing.flap",
  },
  "extension-too-far": {
    model: smallModel({
      surfaces: { flap: { servo: { ...smallServo(), linkage: track } } },
      moves: { lever: { ...moves.lever, landing: { flap: { kind: "extension", mm: mm(40) } } } },
    }),
    at: "moves.lever.landing.flap",
    numbers: { extensionMm: 40 },
  },
  "frame-short": {
    model: smallModel({
      radio: { ...radio, frame: s(0.007) },
      surfaces: { flap: smallSurface({}, { type: { analogue: true } }) },
    }),
    at: "surfaces.flap.servo.type",
    numbers: { frameMs: 7, leastMs: 15 },
  },
  "thermal-shift": {
    // 40 K at 0.3 us a kelvin are 12 us, more than the guard of 10.
    model: smallModel({ temperatures: [celsius(-20), celsius(30)] }),
    at: "surfaces.flap.servo.bench.guard",
    numbers: { kelvin: 40, shiftUs: 12, guardUs: 10 },
  },
  "rod-grows": {
    // Steel in hardwood, 7e-6 a kelvin: over 40 K 900 mm grow apart by 0.252 mm, on a horn of 10 mm 1.444 degrees.
    model: {
      ...linked({}, { rod: { material: "steel", along: "hardwood", diameter: mm(2), length: mm(900) } }),
      temperatures: [celsius(-20), celsius(30)],
    },
    at: "surfaces.flap.servo.rod.along",
    numbers: { kelvin: 40, growthMm: 0.252, rodDeg: (0.0252 * 180) / Math.PI },
  },
  "servo-pulse": {
    model: smallModel({ surfaces: { flap: smallSurface({}, { type: { accepts: [us(1250), us(2100)] } }) } }),
    at: "surfaces.flap.servo.bench",
    numbers: { lowUs: 1200, shortestUs: 1250 },
  },
  "curve-coarse": {
    model: smallModel({
      radio: { ...radio, curvePoints: 2, step: pct(0.1) },
      surfaces: {
        flap: smallSurface({
          readings: readings([1200, -20], [1350, -11], [1500, 0], [1650, 14], [1800, 32]),
        }),
      },
    }),
    at: "surfaces.flap.servo",
    numbers: { points: 2, wantedDeg: 0.5 },
  },
  "curve-never-fine": {
    // Steps of 10 % are 50 us, 5 degrees.
    model: smallModel({
      radio: { ...radio, curvePoints: 3, step: pct(10) },
      surfaces: {
        flap: smallSurface({
          readings: readings([1200, -20], [1350, -11], [1500, 0], [1650, 14], [1800, 32]),
        }),
      },
    }),
    at: "surfaces.flap.servo",
    numbers: { points: 3, needed: 17 },
  },
  "reserve-short": {
    model: smallModel({
      surfaces: { flap: { ...smallSurface(), reserve: { up: deg(12) } } },
      controls: { ...controls, pitch: { kind: "stick" } },
      moves: {
        lever: { stowed: {}, takeoff: {}, landing: { flap: deg(4) } },
        pitch: { flap: [deg(-14), deg(14)] },
      },
    }),
    at: "surfaces.flap.reserve.up",
    numbers: { leftDeg: 10, wantedDeg: 12 },
  },
  "sum-unsafe": {
    model: smallModel({
      radio: { ...radio, endPoints: "scale" },
      surfaces: {
        flap: smallSurface({
          readings: readings([1200, -20], [1350, -11], [1500, 0], [1650, 14], [1800, 32]),
        }),
      },
      controls: { ...controls, pitch: { kind: "stick" } },
      moves: { lever: { ...moves.lever, landing: { flap: deg(26) } }, pitch: { flap: [deg(-4), deg(4)] } },
    }),
    // 30 degrees is there, but 4 degrees at level are more pulse than from 26 to 30 degrees.
    at: "surfaces.flap",
    numbers: { safeUs: 1790 },
  },
  "combination-passes": {
    model: smallModel({
      radio: { ...radio, endPoints: "scale" },
      controls: { ...controls, pitch: { kind: "stick" } },
      moves: { ...moves, pitch: { flap: [deg(-8), deg(8)] } },
    }),
    at: "surfaces.flap",
    numbers: { asked: 33, end: 29, lost: 4 },
  },
  "not-allowed": {
    model: smallModel({ surfaces: { flap: { ...smallSurface(), allowed: [deg(-5), deg(20)] } } }),
    at: "moves.lever.landing.flap",
    numbers: { wantedDeg: 25, allowedDeg: 20 },
  },
  "allowed-not-held": {
    model: smallModel({
      surfaces: { flap: { servo: { channel: 1, bench: bareBench }, allowed: [deg(-5), deg(5)] } },
      moves: { lever: { stowed: {}, takeoff: {}, landing: { flap: { kind: "part", part: 0.9 } } } },
    }),
    at: "surfaces.flap.allowed",
    numbers: { lowestDeg: -5, highestDeg: 5 },
  },
  "range-reversed": {
    model: smallModel({ surfaces: { flap: { ...smallSurface(), allowed: [deg(20), deg(-5)] } } }),
    at: "surfaces.flap.allowed",
    numbers: { first: 20, second: -5 },
  },
  "section-short": {
    model: smallModel({ surfaces: { flap: { ...smallSurface(), chord: mm(50), section: mm(40) } } }),
    at: "surfaces.flap.section",
    numbers: { sectionMm: 40, chordMm: 50 },
  },
  "bore-wide": {
    model: smallModel({
      surfaces: {
        flap: smallSurface({}, { rod: { material: "steel", diameter: mm(2), bore: mm(3), length: mm(80) } }),
      },
    }),
    at: "surfaces.flap.servo.rod.bore",
    numbers: { boreMm: 3, diameterMm: 2 },
  },
  "half-the-pulses": {
    model: bench({ readings: readings([1200, -20], [1350, -11], [1500, 0], [1650, 14], [1800, 32]) }),
    at: "surfaces.flap.servo",
  },
  "not-mirrored": {
    model: smallModel({
      ...two({ turns: "anticlockwise" }, { turns: "clockwise" }),
      groups: { both: { kind: "matched", surfaces: ["flap", "other"], within: deg(1) } },
    }),
    at: "surfaces.other.servo.turns",
  },
  implausible: {
    model: smallModel({ surfaces: { flap: { ...smallSurface(), chord: mm(2) } } }),
    at: "surfaces.flap.chord",
    numbers: { value: 2 },
  },
};

test("the small model itself has no finding", () => {
  expect(codesOf(smallModel())).toEqual([]);
});

test.each(Object.entries(cases))(
  "%s is found, with its address, sentence and remedy",
  (code, { model, at, numbers }) => {
    const finding = findingOf(model, code as FindingCode, at);
    expect(finding.severity).toBe(sentences[code as FindingCode].severity);
    if (numbers !== undefined) expect(finding.numbers).toMatchObject(numbers);
    expect(finding.message).toMatch(/^[A-Z0-9"a-z][\s\S]*\.$/);
    if (finding.severity !== "note" || finding.do !== "") expect(finding.do).toMatch(/\S[.?]$/);
    expect(`${finding.message} ${finding.do}`).not.toMatch(/undefined|NaN|\[object/);
    expect(parseAddress(finding.at)).toBeDefined();
  },
);

test("what ends a linkage is said in the words of its kind", () => {
  const endOf = (linkage: Servo["linkage"], bench: Servo["bench"], code: FindingCode = "linkage-ends") => {
    const turns = bench.up !== undefined && bench.up > bench.down ? "anticlockwise" : "clockwise";
    const type = { rotation: degPerUs(0.2) };
    const servo = { channel: 1, bench, turns, type, ...(linkage === undefined ? {} : { linkage }) } as const;
    const { findings } = compile(smallModel({ surfaces: { flap: { servo } } }));
    return findings.find((one) => one.code === code)?.message ?? JSON.stringify(findings);
  };
  const wide = { up: us(900), level: us(1500), down: us(2100), guard: us(10) };
  expect(endOf({ kind: "bentRod", bend: deg(40), tipTo: "port" }, wide)).toContain(
    "the bent tip stands furthest out and the surface turns back",
  );
  const cables = endOf({ kind: "cables", arm: mm(10), horn: mm(10), base: mm(200), armAft: mm(2) }, wide);
  expect(cables).toContain("the pulling cable");
  expect(cables).not.toContain("rod");
  const rod = { ...pushrod, horn: mm(20) };
  expect(endOf(rod, wide)).toContain("arm and rod come into line and the surface turns back");
  expect(endOf({ kind: "chain", links: [rod] }, wide)).toContain("one of its links turns back");
});

test("a reach that no radio has is what to look at first, another is not", () => {
  const doOf = (reach: number) =>
    findingOf(
      smallModel({
        radio: { ...radio, reach: pct(reach) },
        moves: { lever: { ...moves.lever, landing: { flap: deg(29) } } },
      }),
      "signal-range",
      "moves.lever.landing.flap",
    ).do;
  expect(doOf(13)).toMatch(/^Look whether reach of the radio is right: .* If it is, move the arm by a tooth/);
  const shifted = { ...radio, centre: us(1200), reach: pct(100) };
  expect(findingOf(smallModel({ radio: shifted }), "signal-range", "moves.lever.landing.flap").do).toMatch(
    /^Move the arm by a tooth/,
  );
});

test("an error takes its setting out of the plan and leaves the others", () => {
  const { channels } = compile(cases["limit-passed"].model);
  expect(channels[0]?.settings.map(({ detent }) => detent)).toEqual(["stowed", "takeoff"]);
});

test("all errors are collected, none hides another", () => {
  const model = smallModel({
    surfaces: {
      flap: smallSurface({ down: us(1500) }),
      other: smallSurface({ up: us(1700) }, { channel: 2 }),
    },
    moves: { lever: { stowed: { nothing: deg(1) }, takeoff: {}, landing: {} } },
  });
  expect(codesOf(model)).toEqual(["unknown-name", "stops-equal", "stops-reversed"]);
});

test("a misspelt name is told the one that was meant, another is not", () => {
  const doOf = (name: string) =>
    findingOf(lever({ [name]: deg(1) }), "unknown-name", `moves.lever.landing.${name}`).do;
  expect(doOf("flop")).toBe('Did you mean "flap"? If not, declare the surface or group.');
  expect(doOf("canopy")).toBe("Correct the name, or declare the surface or group.");
});

test("unordered readings are sorted, not refused", () => {
  const shuffled = [3, 0, 4, 1, 2].map(
    (index) => straightReadings[index] as (typeof straightReadings)[number],
  );
  expect(compile(bench({ readings: shuffled }))).toEqual(compile(smallModel()));
});

test("what was measured when and how changes nothing", () => {
  const measured = { on: "2026-05-02", temperature: celsius(21) };
  expect(compile(bench({ measured }))).toEqual(compile(smallModel()));
});

test("the small model is left as it was", () => {
  expect(surfaces.flap).toEqual(smallSurface());
});

test("a channel that two servos claim has no place in the plan, but its other mistakes are found too", () => {
  const model = two({ channel: 1 });
  const asking = {
    ...model,
    moves: { lever: { ...smallMoves.lever, landing: { flap: deg(25), other: deg(60) } } },
  };
  expect(codesOf(asking)).toEqual(["channel-twice", "not-measured"]);
  expect(compile(asking).channels).toEqual([]);
});
