import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { applyEdits, type TransmitterEdit } from "../../../packages/core/src/transmitter/apply-edits.ts";
import { factoryControl, factoryState } from "../../../packages/core/src/transmitter/factory-state.ts";
import { isInside } from "../../../packages/core/src/transmitter/interval.ts";
import { outputOverTime, outputs } from "../../../packages/core/src/transmitter/outputs.ts";
import { reach } from "../../../packages/core/src/transmitter/reach.ts";
import type { Device, EndPoints, Transmitter } from "../../../packages/core/src/transmitter/transmitter.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { arbitraryEdit, arbitraryPositions, arbitraryTransmitter, output } from "./arbitrary-transmitter.ts";

const applyEdit = (transmitter: Transmitter, edit: TransmitterEdit) => applyEdits(transmitter, [edit]);

// What is summed in two orders differs by rounding errors.
const slackUs = 1e-9;

describe("reach(transmitter, output)", () => {
  test("holds every pulse that any place of the controls and any span added by the chain gives", () => {
    fc.assert(
      fc.property(
        arbitraryTransmitter,
        fc.array(arbitraryPositions, { minLength: 8, maxLength: 8 }),
        fc.array(evenly(-100, 100), { minLength: 3, maxLength: 3 }),
        (transmitter, places, addedUs) => {
          for (const place of places) {
            const pulseUs = outputs(transmitter, place, addedUs)[output] ?? Number.NaN;
            expect(isInside([pulseUs, pulseUs], reachOf(transmitter), slackUs)).toBe(true);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  test("holds every pulse on the way of a transit", () => {
    fc.assert(
      fc.property(
        arbitraryTransmitter,
        arbitraryPositions,
        arbitraryPositions,
        evenly(-1, 6),
        (transmitter, from, to, seconds) => {
          const pulseUs = outputOverTime(withoutChain(transmitter), output, from, to, seconds) ?? Number.NaN;
          expect(isInside([pulseUs, pulseUs], reachOf(withoutChain(transmitter)), slackUs)).toBe(true);
        },
      ),
      { numRuns: 400 },
    );
  });

  test("holds failsafe and power-up, as far as the chain lets them pass", () => {
    fc.assert(
      fc.property(arbitraryTransmitter, (transmitter) => {
        const bare = withoutChain(transmitter);
        const { failsafeUs = Number.NaN, powerUpUs = failsafeUs } = bare.outputs[output] ?? {};
        for (const pulseUs of [failsafeUs, powerUpUs])
          expect(isInside([pulseUs, pulseUs], reachOf(bare))).toBe(true);
      }),
    );
  });

  test("is not wider than what can be: some place of the controls, or failsafe or power-up, gives either end", () => {
    fc.assert(
      fc.property(arbitraryTransmitter, (transmitter) => {
        const memory = transmitter.outputs[output];
        // With a curve an end may lie at a bend, and on its way a share may meet any other: the corners do not show those.
        fc.pre(memory?.curve === undefined && Object.keys(memory?.transits ?? {}).length === 0);
        const bare = withoutChain(transmitter);
        const { failsafeUs = Number.NaN, powerUpUs = failsafeUs } = bare.outputs[output] ?? {};
        const pulses = [
          failsafeUs,
          powerUpUs,
          ...corners(bare).map((place) => outputs(bare, place)[output] ?? Number.NaN),
        ];
        const [lowUs, highUs] = reachOf(bare);
        expect(Math.min(...pulses)).toBeCloseTo(lowUs, 8);
        expect(Math.max(...pulses)).toBeCloseTo(highUs, 8);
      }),
      { numRuns: 200 },
    );
  });

  test("holds a share that a condition, since changed, had put elsewhere and that is still on its way", () => {
    const landing = (phase: string, percent: number) =>
      ({
        output,
        set: "contribution",
        control: "flap",
        position: "landing",
        when: { phase },
        percent,
      }) as const;
    const slow = [
      { output, set: "clear" } as const,
      landing("cruise", -40),
      landing("thermal", 30),
      // In thermal another control takes the flap further down, at once.
      { output, set: "contribution", control: "phase", position: "thermal", when: {}, percent: -20 } as const,
      { output, set: "transit", control: "flap", seconds: 3 } as const,
    ].reduce(applyEdit, factory("clamp"));
    const cruise = { flap: "landing", phase: "cruise" };
    expect(outputOverTime(slow, output, cruise, { ...cruise, phase: "thermal" }, 0)).toBe(1200);
    expect(reachOf(slow)[0]).toBe(1200);
  });

  test("of an output that the memory has not is undefined", () => {
    expect(reach(factory("clamp"), 9)).toBeUndefined();
    expect(outputOverTime(factory("clamp"), 9, {}, {}, 0)).toBeUndefined();
  });

  test("is inside the stops of a last device, whatever comes before it", () => {
    const stops: Device = { kind: "stops", pulseUs: [1185, 1870] };
    fc.assert(
      fc.property(arbitraryTransmitter, (transmitter) => {
        const memory = transmitter.outputs[output];
        if (memory === undefined) return;
        const guarded = {
          ...transmitter,
          outputs: { [output]: { ...memory, chain: [...memory.chain, stops] } },
        };
        expect(isInside(reachOf(guarded), stops.pulseUs)).toBe(true);
      }),
    );
  });
});

// The tow plane's left flap, worked by hand at 5 us per percent about 1500.
describe("the left flap of the tow plane", () => {
  const set = (transmitter: Transmitter, edits: readonly Edit[]) =>
    edits.map((edit) => ({ output, ...edit }) as TransmitterEdit).reduce(applyEdit, transmitter);
  // Not made here, where a failure would leave no test to fail.
  const cleared = () => set(factory("clamp"), [{ set: "clear" }]);
  const limits: readonly Edit[] = [
    { set: "limitLow", percent: -63 },
    { set: "limitHigh", percent: 74 },
  ];
  const detent = (position: string, percent: number): Edit => ({
    set: "contribution",
    control: "flap",
    position,
    when: {},
    percent: percent - 72,
  });
  const places = [detent("tow", 59), detent("takeoff", 40), detent("landing", -53)];

  test("reaches [1000, 2000] as it comes, [750, 2250] with extended travel", () => {
    expect(reachOf(factory("clamp"))).toEqual([1000, 2000]);
    expect(reachOf(factory("clamp", 150))).toEqual([750, 2250]);
    expect(reachOf(factory("scale"))).toEqual([1000, 2000]);
    expect(reachOf(factory("scale", 150))).toEqual([750, 2250]);
  });

  test("stands at {1500} with nothing mixed in, and is held to [1185, 1870] by its limits whatever is typed", () => {
    expect(reachOf(cleared())).toEqual([1500, 1500]);
    const held = set(cleared(), [...limits, { set: "rest", percent: 720 }, detent("landing", -900)]);
    // Failsafe is the receiver's own and stays at 1500.
    expect(reachOf(held)).toEqual([1185, 1870]);
  });

  test("with positions 72, 59, 40 and -53 reaches [1235, 1860], and a trim of 4 % is cut at [1215, 1870]", () => {
    const entered = set(cleared(), [...limits, { set: "rest", percent: 72 }, ...places]);
    expect(reachOf(entered)).toEqual([1235, 1860]);
    expect(["level", "tow", "takeoff", "landing"].map((flap) => outputs(entered, { flap })[output])).toEqual([
      1860, 1795, 1700, 1235,
    ]);
    const trim = ([-1, 1] as const).map(
      (end): Edit => ({
        set: "contribution",
        control: "trim",
        position: end,
        when: {},
        percent: 4 * end,
      }),
    );
    expect(reachOf(set(entered, trim))).toEqual([1215, 1870]);
  });

  test("with its centre shifted by 72 first and limits that move with the shift reaches [1360, 2360]", () => {
    const shifted = set(factory("clampAboutShift"), [
      { set: "shift", percent: 72 },
      { set: "failsafe", percent: 72 },
    ]);
    expect(reachOf(shifted)).toEqual([1360, 2360]);
  });

  test("is held by an absolute clamp whatever its centre is shifted by", () => {
    expect(reachOf(set(factory("clamp"), [...limits, { set: "shift", percent: 72 }]))).toEqual([1360, 1870]);
  });

  test("with its direction changed last may be sent to [1130, 1815]", () => {
    const turned = set(factory("clamp"), [...limits, { set: "direction", reversed: true }]);
    expect(reachOf(turned)).toEqual([1130, 1815]);
  });

  // Common practice, no source: a position between end points moves with them. Worked by hand: 53 of the way from 1500 to 1870.
  test("where limits scale, moves every position when a limit is changed", () => {
    const scaled = set(factory("scale"), [
      { set: "clear" },
      { set: "limitLow", percent: -74 },
      { set: "limitHigh", percent: 74 },
      { set: "rest", percent: 53 },
    ]);
    expect(outputs(scaled, {})[output]).toBeCloseTo(1696.1, 9);
    const wider = set(scaled, [
      { set: "limitLow", percent: -76 },
      { set: "limitHigh", percent: 76 },
    ]);
    expect(outputs(wider, {})[output]).toBeCloseTo(1701.4, 9);
  });
});

describe("outputs", () => {
  test("of a stabiliser that may add 80 us pass the transmitter's limits", () => {
    const device: Device = { kind: "adds", spanUs: [-80, 80] };
    const { outputs: memories, ...rest } = factory("clamp");
    const memory = memories[output];
    const chained = {
      ...rest,
      outputs: memory === undefined ? {} : { [output]: { ...memory, chain: [device] } },
    };
    expect(reachOf(chained)).toEqual([920, 2080]);
    expect(outputs(chained, {}, [500])[output]).toBe(1580);
  });

  test("of a contribution under a condition stand in for the one without", () => {
    const rolled = ([1, 2] as const).reduce(
      (transmitter, which) =>
        applyEdit(transmitter, {
          output,
          set: "contribution",
          control: "roll",
          position: 1,
          when: which === 1 ? {} : { phase: "thermal" },
          percent: which * 10,
        }),
      applyEdit(factory("clamp"), { output, set: "clear" }),
    );
    expect(outputs(rolled, { roll: 1 })[output]).toBe(1550);
    expect(outputs(rolled, { roll: 1, phase: "thermal" })[output]).toBe(1600);
  });

  test("follow a curve of three points, straight between them and level outside", () => {
    const curved = [
      { output, set: "clear" as const },
      {
        output,
        set: "curve" as const,
        points: [
          { inputPercent: 100, percent: 20 },
          { inputPercent: -100, percent: -80 },
          { inputPercent: 0, percent: 0 },
        ],
      },
      { output, set: "contribution" as const, control: "roll", position: 1 as const, when: {}, percent: 200 },
      {
        output,
        set: "contribution" as const,
        control: "roll",
        position: -1 as const,
        when: {},
        percent: -50,
      },
    ].reduce(applyEdit, factory("clamp"));
    expect([-1, 0, 0.25, 1].map((roll) => outputs(curved, { roll })[output])).toEqual([
      1300, 1500, 1550, 1600,
    ]);
  });

  test("over time go in a straight line for the seconds of the transit, others at once", () => {
    const slow = [
      { output, set: "clear" as const },
      { output, set: "contribution" as const, control: "flap", position: "landing", when: {}, percent: -60 },
      { output, set: "contribution" as const, control: "roll", position: 1 as const, when: {}, percent: 10 },
      { output, set: "transit" as const, control: "flap", seconds: 3 },
    ].reduce(applyEdit, factory("clamp"));
    const at = (seconds: number) =>
      outputOverTime(slow, output, { flap: "level" }, { flap: "landing", roll: 1 }, seconds);
    expect([-1, 0, 1, 2, 3, 9].map(at)).toEqual([1550, 1550, 1450, 1350, 1250, 1250]);
  });
});

test("applyEdits never changes the state that it is given, nor another output", () => {
  fc.assert(
    fc.property(arbitraryTransmitter, arbitraryEdit, (transmitter, edit) => {
      const before = JSON.stringify(transmitter);
      const other = applyEdit(transmitter, { ...edit, output: 9 });
      expect(other).toEqual(transmitter);
      const after = applyEdit(transmitter, edit);
      expect(JSON.stringify(transmitter)).toBe(before);
      // Typed again, an edit changes nothing more.
      expect(outputs(applyEdit(after, edit), { roll: 1 })[output]).toBeCloseTo(
        outputs(after, { roll: 1 })[output] ?? Number.NaN,
        9,
      );
    }),
  );
});

test("applyEdits makes one edit after the other", () => {
  fc.assert(
    fc.property(arbitraryTransmitter, fc.array(arbitraryEdit, { maxLength: 8 }), (transmitter, edits) => {
      const before = JSON.stringify(transmitter);
      const strangers = edits.map((edit) => ({ ...edit, output: 9 }));
      expect(applyEdits(transmitter, [...edits, ...strangers])).toEqual(edits.reduce(applyEdit, transmitter));
      expect(JSON.stringify(transmitter)).toBe(before);
    }),
  );
});

type Edit = TransmitterEdit extends infer One ? (One extends unknown ? Omit<One, "output"> : never) : never;

function factory(endPoints: EndPoints, travelPercent = 100): Transmitter {
  return factoryState({
    scale: { name: "desk set", centre: us(1500), per100: us(500), reach: pct(150), step: pct(1) },
    endPoints,
    outputs: [output],
    travelPercent,
  });
}

function reachOf(transmitter: Transmitter): readonly [number, number] {
  return reach(transmitter, output) ?? [Number.NaN, Number.NaN];
}

function withoutChain(transmitter: Transmitter): Transmitter {
  const memory = transmitter.outputs[output];
  return memory === undefined
    ? transmitter
    : { ...transmitter, outputs: { [output]: { ...memory, chain: [] } } };
}

/** Every detent, and every stick at either end and centred. */
function corners({ trims }: Transmitter): Record<string, string | number>[] {
  const furthest = 1 + (trims.pitch ?? 0) / 100;
  const places = {
    flap: ["stowed", "takeoff", "landing", "elsewhere"],
    phase: ["cruise", "thermal", "elsewhere"],
    pitch: [-furthest, 0, furthest],
    roll: [-furthest, 0, furthest],
    [factoryControl]: [-1, 0, 1],
  };
  return Object.entries(places).reduce<Record<string, string | number>[]>(
    (all, [control, positions]) =>
      all.flatMap((place) => positions.map((position) => ({ ...place, [control]: position }))),
    [{}],
  );
}
