import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { applyEdits, type TransmitterEdit } from "../../../packages/core/src/transmitter/apply-edits.ts";
import { type FactoryFacts, factoryState } from "../../../packages/core/src/transmitter/factory-state.ts";
import {
  addIntervals,
  hullOf,
  isInside,
  joinIntervals,
} from "../../../packages/core/src/transmitter/interval.ts";
import { outputOverTime, outputs, pulseAt } from "../../../packages/core/src/transmitter/outputs.ts";
import { reach } from "../../../packages/core/src/transmitter/reach.ts";
import type { ControlPositions, Transmitter } from "../../../packages/core/src/transmitter/transmitter.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { arbitraryPositions, arbitraryTransmitter, output } from "./arbitrary-transmitter.ts";

// Worked by hand at 5 us per percent about 1500.
const scale = { name: "desk set", centre: us(1500), per100: us(500), reach: pct(150), step: pct(1) } as const;

type Edit = TransmitterEdit extends infer One ? (One extends unknown ? Omit<One, "output"> : never) : never;

/** A cleared memory with these edits. */
function made(edits: readonly Edit[], facts: Partial<FactoryFacts> = {}): Transmitter {
  const fresh = factoryState({ scale, endPoints: "clamp", outputs: [output], travelPercent: 100, ...facts });
  const all: readonly Edit[] = [{ set: "clear" }, ...edits];
  return applyEdits(
    fresh,
    all.map((edit) => ({ output, ...edit }) as TransmitterEdit),
  );
}

const gives = (control: string, position: string | -1 | 1, percent: number, when = {}): Edit => ({
  set: "contribution",
  control,
  position,
  percent,
  when,
});
const pulse = (transmitter: Transmitter, positions: ControlPositions) =>
  outputs(transmitter, positions)[output];

describe("failsafe", () => {
  test("stores the pulse of its percent, wherever the limits are", () => {
    const set = made([
      { set: "limitLow", percent: -20 },
      { set: "failsafe", percent: 50 },
    ]);
    expect(set.outputs[output]?.failsafeUs).toBe(1750);
  });

  test("stores a share between the limits as they are then where limits scale, and keeps it when they move", () => {
    const stored = (percent: number) =>
      made(
        [
          { set: "limitLow", percent: -50 },
          { set: "failsafe", percent },
          { set: "limitLow", percent: -100 },
        ],
        { endPoints: "scale" },
      ).outputs[output]?.failsafeUs;
    expect([-100, 0, 50, 100].map(stored)).toEqual([1250, 1625, 1812.5, 2000]);
  });
});

describe("a contribution", () => {
  test("takes the place of the one with the same control, position and conditions, in whatever order", () => {
    const conditions = { phase: "thermal", gear: "down" };
    const turned = { gear: "down", phase: "thermal" };
    const set = made([gives("roll", 1, 10, conditions), gives("roll", 1, 30, turned)]);
    expect(set.outputs[output]?.contributions).toHaveLength(1);
    expect(pulse(set, { roll: 1, ...conditions })).toBe(1650);
  });

  test("leaves alone those of another control, another position and other conditions", () => {
    const set = made([
      gives("roll", 1, 10),
      gives("roll", -1, -20),
      gives("pitch", 1, 40),
      gives("roll", 1, 30, { phase: "thermal" }),
      gives("roll", 1, 50, { phase: "cruise" }),
      gives("roll", 1, 60, { gear: "thermal" }),
    ]);
    expect(pulse(set, { roll: 1, pitch: 1 })).toBe(1750);
    expect(pulse(set, { roll: -1 })).toBe(1400);
    expect(pulse(set, { roll: 1, phase: "thermal" })).toBe(1650);
    expect(pulse(set, { roll: 1, phase: "cruise" })).toBe(1750);
    expect(pulse(set, { roll: 1, gear: "thermal" })).toBe(1800);
  });

  test("counts before one of fewer conditions, whichever was entered first", () => {
    const edits = [gives("roll", 1, 10), gives("roll", 1, 20, { phase: "thermal" })];
    for (const some of [edits, edits.toReversed()]) {
      expect(pulse(made(some), { roll: 1 })).toBe(1550);
      expect(pulse(made(some), { roll: 1, phase: "thermal" })).toBe(1600);
    }
  });

  test("does not count beside one of more conditions, when it comes to how far sums reach", () => {
    const edits = [
      gives("roll", 1, 0, { phase: "thermal" }),
      gives("roll", 1, 30),
      gives("phase", "thermal", 20),
    ];
    for (const some of [edits, edits.toReversed()]) expect(reach(made(some), output)).toEqual([1500, 1650]);
  });

  test("of a stick goes on as far as its trim, and no further", () => {
    const trimmed = made([gives("pitch", 1, 20), gives("pitch", -1, -50)], { trims: { pitch: 10 } });
    expect(pulse(trimmed, { pitch: 1.05 })).toBe(1605);
    expect(pulse(trimmed, { pitch: 1.4 })).toBe(1610);
    expect(reach(trimmed, output)).toEqual([1225, 1610]);
    expect(reach(made([gives("pitch", 1, 20)]), output)).toEqual([1500, 1600]);
  });
});

// Worked by hand: from +1, where it rests and adds nothing, the lever goes 2 to -1 for its 40 percent; a trim of 10 is 0.1 more, 2 percent.
describe("a lever that rests at an end", () => {
  const lever = (trim: number) =>
    made([gives("lever", -1, 40)], { trims: { lever: trim }, rests: { lever: 1 } });

  test("goes straight from one end to the other, and stands at its end where it is not named", () => {
    expect([1, 0.5, 0, -1].map((position) => pulse(lever(0), { lever: position }))).toEqual([
      1500, 1550, 1600, 1700,
    ]);
    expect(pulse(lever(0), {})).toBe(1500);
    expect(pulse(lever(0), { lever: -1.5 })).toBe(1700);
  });

  test("goes on past either end as far as its trim: past the one where it rests, the other way", () => {
    expect(pulse(lever(10), { lever: -1.1 })).toBeCloseTo(1710, 9);
    expect(pulse(lever(10), { lever: 1.1 })).toBeCloseTo(1490, 9);
    expect(reach(lever(10), output)?.map((pulseUs) => Number(pulseUs.toFixed(9)))).toEqual([1490, 1710]);
  });

  test("adds what stands at the end where it rests too", () => {
    const both = made([gives("lever", -1, 40), gives("lever", 1, 10)], { rests: { lever: 1 } });
    expect(pulse(both, {})).toBe(1550);
    // The failsafe is the centre, 1500 us.
    expect(reach(both, output)).toEqual([1500, 1700]);
  });
});

describe("a curve", () => {
  const shape = [
    { inputPercent: -100, percent: -80 },
    { inputPercent: 0, percent: 0 },
    { inputPercent: 100, percent: 20 },
  ];
  const roll = (percent: number): readonly Edit[] => [gives("roll", 1, percent), gives("roll", -1, -percent)];

  test("without points is none", () => {
    const straight = made([
      { set: "curve", points: shape },
      { set: "curve", points: [] },
    ]);
    expect(straight.outputs[output]).not.toHaveProperty("curve");
    expect(straight).toEqual(made([]));
  });

  test("lets no pulse be reached that lies past the sums that there are", () => {
    expect(reach(made([{ set: "curve", points: shape }, ...roll(10)]), output)).toEqual([1460, 1510]);
  });

  test("reaches furthest at a bend where it turns back there", () => {
    const hat = [
      { inputPercent: -100, percent: -10 },
      { inputPercent: 0, percent: 50 },
      { inputPercent: 100, percent: -20 },
    ];
    expect(reach(made([{ set: "curve", points: hat }, ...roll(100)]), output)).toEqual([1400, 1750]);
  });

  test("gives its points' percents at their inputs, and those of its ends past them", () => {
    const set = made([{ set: "curve", points: shape }, ...roll(150)]);
    const at = [-150, -100, 0, 100, 150].map((sum) => pulse(set, { roll: sum / 150 }));
    expect(at).toEqual([1100, 1100, 1500, 1600, 1600]);
  });
});

describe("the centre shift where limits scale", () => {
  test("moves both limits", () => {
    const set = made(
      [
        { set: "limitLow", percent: -74 },
        { set: "limitHigh", percent: 74 },
        { set: "shift", percent: 10 },
        gives("roll", 1, 100),
        gives("roll", -1, -100),
      ],
      { endPoints: "scale" },
    );
    expect([-1, 0, 1].map((roll) => pulse(set, { roll }))).toEqual([1180, 1550, 1920]);
  });
});

describe("a transit", () => {
  const slow = (chains: FactoryFacts["chains"] = {}) =>
    made(
      [
        gives("flap", "takeoff", 20),
        gives("flap", "landing", -60),
        { set: "transit", control: "flap", seconds: 4 },
      ],
      { chains },
    );

  test("goes in a straight line from where the control was", () => {
    const at = [0, 1, 2, 3, 4].map((seconds) =>
      outputOverTime(slow(), output, { flap: "takeoff" }, { flap: "landing" }, seconds),
    );
    expect(at).toEqual([1600, 1500, 1400, 1300, 1200]);
  });

  test("is that of a chain that adds nothing", () => {
    const chained = slow({ [output]: [{ kind: "adds", spanUs: [-50, 50] }] });
    expect(outputOverTime(chained, output, { flap: "takeoff" }, { flap: "landing" }, 2)).toBe(1400);
    expect(pulse(chained, { flap: "takeoff" })).toBe(1600);
    const memory = chained.outputs[output];
    expect(memory && pulseAt(chained, memory, { flap: "takeoff" })).toBe(1600);
    expect(reach(chained, output)).toEqual([1150, 1650]);
  });

  test("ends where the controls then are, and begins where they were", () => {
    fc.assert(
      fc.property(arbitraryTransmitter, arbitraryPositions, arbitraryPositions, (transmitter, from, to) => {
        expect(outputOverTime(transmitter, output, from, to, 5)).toBe(pulse(transmitter, to));
        expect(outputOverTime(transmitter, output, from, from, 1)).toBeCloseTo(
          pulse(transmitter, from) ?? Number.NaN,
          8,
        );
      }),
    );
  });
});

describe("a memory that nobody has touched", () => {
  const fresh = (facts: Partial<FactoryFacts> = {}) =>
    factoryState({ scale, endPoints: "clamp", outputs: [1, output], ...facts });

  test("has a stick over all that the scale reaches on each of its outputs, and failsafe at the centre", () => {
    expect(Object.keys(fresh().outputs)).toEqual(["1", String(output)]);
    expect(reach(fresh(), 1)).toEqual([750, 2250]);
    expect(outputs(fresh(), { "factory stick": -1 })).toEqual({ 1: 750, [output]: 750 });
    expect(fresh().outputs[1]?.failsafeUs).toBe(1500);
  });

  test("sends its own pulse at power-up where there is one, and the failsafe's elsewhere", () => {
    expect(fresh().outputs[1]).not.toHaveProperty("powerUpUs");
    const sent = applyEdits(fresh({ powerUpUs: 900 }), [{ output: 1, set: "clear" }]);
    expect(reach(sent, 1)).toEqual([900, 1500]);
  });
});

describe("an interval", () => {
  const interval = fc.tuple(evenly(-50, 50), evenly(-50, 50)).map(([a, b]) => hullOf(a, b));

  test("is inside one that holds both its ends, and in no other", () => {
    fc.assert(
      fc.property(interval, interval, (inner, outer) => {
        expect(isInside(inner, outer)).toBe(inner.every((end) => end >= outer[0] && end <= outer[1]));
        expect(isInside(inner, joinIntervals(inner, outer))).toBe(true);
      }),
    );
    expect(isInside([0, 10], [1, 11])).toBe(false);
    expect(isInside([1, 11], [0, 10])).toBe(false);
    expect(isInside([0, 10], [1, 9], 1)).toBe(true);
    expect(isInside([0, 10], [1, 9], 0.9)).toBe(false);
  });

  test("added to another holds every sum", () => {
    fc.assert(
      fc.property(interval, interval, evenly(0, 1), evenly(0, 1), (a, b, s, t) => {
        const sum = a[0] + s * (a[1] - a[0]) + b[0] + t * (b[1] - b[0]);
        expect(isInside([sum, sum], addIntervals(a, b), 1e-9)).toBe(true);
        expect(addIntervals(a, b)[1] - addIntervals(a, b)[0]).toBeCloseTo(a[1] - a[0] + b[1] - b[0], 9);
      }),
    );
  });
});
