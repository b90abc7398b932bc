import bramblehook from "@hingeline/examples/bramblehook";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { findUnsafeSums, orderOfEntry } from "../../../packages/core/src/compile/order-of-entry.ts";
import type { Model, Radio } from "../../../packages/core/src/model/model.ts";
import { planSchema } from "../../../packages/core/src/plan/plan-schema.ts";
import type { ProcedureStep, SetupPlan } from "../../../packages/core/src/plan/setup-plan.ts";
import { deg, pct, s, us } from "../../../packages/core/src/units/quantity.ts";
import { arbitraryModel } from "../../support/arbitrary-model.ts";
import {
  findUnsafe,
  type NaiveStep,
  type NaiveTransmitter,
  naiveTransmitter,
} from "../../support/naive-transmitter.ts";
import { readingsOnly } from "../../support/readings-only.ts";
import { smallModel, smallMoves, smallSurface } from "../../support/small-model.ts";

const kinds = ["clamp", "scale"] as const;

describe.each(kinds)("for random models whose end points %s", (endPoints) => {
  const planOf = (model: Model) => compile({ ...model, radio: { ...model.radio, endPoints } as Radio });

  test("no step lets a powered channel leave its bounds, and all of them together give every pulse of the plan", () => {
    let entered = 0;
    fc.assert(
      fc.property(arbitraryModel, (model) => {
        const plan = planOf(model);
        const steps = orderOfEntry(plan);
        if (steps.length === 0) return;
        const transmitter = untouched(plan);
        expect(findUnsafe(transmitter, steps, safePulses(plan))).toBeUndefined();
        expectEntered(transmitter, plan);
        entered += 1;
      }),
      { numRuns: 50 },
    );
    // A generator of refused plans would prove nothing.
    expect(entered).toBeGreaterThan(5);
  });

  test("a changed model is reached from the old one, and the steps between them are safe for the new bench", () => {
    let changed = 0;
    const variation = fc.record({
      share: fc.constantFrom(0.5, 0.8, 1),
      guardUs: fc.constantFrom(6, 14, 30),
      failsafeKept: fc.boolean(),
      swap: fc.boolean(),
    });
    fc.assert(
      fc.property(arbitraryModel, variation, (model, { share, guardUs, failsafeKept, swap }) => {
        const { failsafe = {}, ...resting } = model;
        const other = failsafeKept ? { ...resting, failsafe } : resting;
        const pair = [planOf(vary(model, 1, 12)), planOf(vary(other, share, guardUs))];
        const [from, to] = swap ? pair.reverse() : pair;
        if (from === undefined || to === undefined) return;
        const first = orderOfEntry(from);
        const second = orderOfEntry(to, { ...from, procedure: first });
        if (first.length === 0 || second.length === 0) return;
        const transmitter = untouched(from);
        expect(findUnsafe(transmitter, first, safePulses(from))).toBeUndefined();
        expect(findUnsafe(transmitter, second, safePulses(to))).toBeUndefined();
        expectEntered(transmitter, to);
        changed += 1;
        // A clamp holds what is typed, so the linkages may stay on where the old failsafe, which nothing holds, is safe too.
        expect(second.every(({ linkage }) => linkage === "on")).toBe(
          endPoints === "clamp" && keepsSafe(from, to),
        );
      }),
      { numRuns: 50 },
    );
    expect(changed).toBeGreaterThan(3);
  });

  test("whatever stop and failsafe an old plan had, the old failsafe included no linkage that is on is sent past the new stop", () => {
    const seen = { on: 0, unsafeFailsafe: 0 };
    const flap = fc.record({
      downUs: fc.integer({ min: 1560, max: 1800 }),
      share: fc.constantFrom(0.2, 0.5, 1),
      failsafe: fc.constantFrom("stowed", "landing"),
    });
    const draft = fc.tuple(flap, flap).map(([old, now]) =>
      [old, now].map(({ downUs, share, failsafe }) => {
        const landing = deg(((downUs - 10 - 1500) / 10) * share);
        return planOf(
          smallModel({
            surfaces: { flap: smallSurface({ down: us(downUs) }) },
            moves: {
              lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(0) }, landing: { flap: landing } },
            },
            failsafe: { lever: failsafe },
          }),
        );
      }),
    );
    fc.assert(
      fc.property(draft, ([from, to]) => {
        if (from === undefined || to === undefined) return;
        const transmitter = untouched(from);
        expect(findUnsafe(transmitter, from.procedure, safePulses(from))).toBeUndefined();
        const steps = orderOfEntry(to, from);
        expect(findUnsafe(transmitter, steps, safePulses(to))).toBeUndefined();
        expectEntered(transmitter, to);
        if (steps.length === 0) return;
        seen[keepsSafe(from, to) ? "on" : "unsafeFailsafe"] += 1;
      }),
    );
    expect(seen.on).toBeGreaterThan(3);
    expect(seen.unsafeFailsafe).toBeGreaterThan(3);
  });

  test("the reach after a step is what the simulated channel can send, wherever its controls are put", () => {
    fc.assert(
      fc.property(arbitraryModel, (model) => {
        const plan = planOf(model);
        const transmitter = untouched(plan);
        const now = new Map<number, readonly [number, number]>();
        for (const step of orderOfEntry(plan)) {
          findUnsafe(transmitter, [step], new Map());
          for (const { channel, pulseUs } of step.reach) now.set(channel, pulseUs);
          for (const [channel, [low, high]] of now) {
            const pulses = transmitter.allPulses(channel);
            expect(Math.min(...pulses)).toBeGreaterThanOrEqual(low - 1e-9);
            expect(Math.max(...pulses)).toBeLessThanOrEqual(high + 1e-9);
          }
        }
      }),
      { numRuns: 20 },
    );
  });
});

// Of random models with trims, levers, and selectors and sticks that depend on each other's detents, two deep.
test.each(kinds)(
  "with every control of a nested model at any place, %s end points keep every channel safe and give the settings",
  (endPoints) => {
    const end = fc.integer({ min: -5, max: 5 });
    const stick = fc.tuple(end, end).map(([low, high]) => ({ flap: [deg(low), deg(high)] as const }));
    const places = fc.tuple(end, end).map(([a, b]) => ({ a: { flap: deg(a) }, b: { flap: deg(b) } }));
    const none = { a: {}, b: {} };
    const cases = (one: fc.Arbitrary<unknown>, nothing: unknown) =>
      fc.record({ a: fc.oneof({ weight: 3, arbitrary: one }, fc.constant(nothing)), b: one });
    const lever = fc.record({
      trim: fc.constantFrom(pct(0), pct(20)),
      rests: fc.constantFrom(-1 as const, 0 as const, 1 as const),
    });
    const model = fc
      .record({
        outer: fc.oneof(places, fc.constant(none)),
        inner: cases(places, none),
        first: cases(stick, {}),
        second: cases(stick, {}),
        levers: fc.tuple(lever, lever),
      })
      .map(({ outer, inner, first, second, levers }) =>
        smallModel({
          radio: { ...smallModel().radio, endPoints, step: pct(0.5) },
          failsafe: {},
          controls: {
            outer: { kind: "selector", detents: ["a", "b"] },
            inner: { kind: "selector", detents: ["a", "b"] },
            first: { kind: "stick", ...levers[0] },
            second: { kind: "stick", ...levers[1] },
          },
          moves: {
            outer,
            inner: { per: "outer", cases: inner },
            first: { per: "inner", cases: first },
            second: { per: "outer", cases: second },
          } as Model["moves"],
        }),
      );
    let entered = 0;
    fc.assert(
      fc.property(model, (one) => {
        const plan = compile(one);
        if (plan.procedure.length === 0) return;
        const transmitter = untouched(plan);
        expect(findUnsafe(transmitter, plan.procedure, safePulses(plan))).toBeUndefined();
        expectEntered(transmitter, plan);
        entered += 1;
      }),
      { numRuns: 40 },
    );
    expect(entered).toBeGreaterThan(5);
  },
);

describe("the trim of a stick that acts only in a phase where nothing is extreme", () => {
  // 10 degrees of roll from 1500 us, 1625 of them at full travel, are 1799.9 us with a fifth more; safe is 1785.
  const bench = {
    up: us(1200),
    down: us(1790),
    guard: us(5),
    readings: (
      [
        [1200, -20],
        [1350, -10],
        [1500, 0],
        [1625, 5],
        [1750, 10],
        [1770, 12.5],
        [1790, 15],
      ] as const
    ).map(([pulseUs, angle]) => [us(pulseUs), deg(angle)] as const),
  };
  const planOf = (endPoints: "clamp" | "scale") =>
    compile(
      smallModel({
        radio: { ...smallModel().radio, endPoints, step: pct(0.1), per100: us(512), reach: pct(125) },
        surfaces: { flap: smallSurface(bench) },
        failsafe: {},
        controls: {
          phase: { kind: "selector", detents: ["cruise", "thermal", "landing", "speed"] },
          roll: { kind: "stick", trim: pct(20) },
        },
        moves: {
          phase: {
            cruise: { flap: deg(0) },
            thermal: { flap: deg(0) },
            landing: { flap: deg(12.5) },
            speed: { flap: deg(-12) },
          },
          roll: {
            per: "phase",
            cases: { cruise: {}, thermal: { flap: [deg(-5), deg(10)] }, landing: {}, speed: {} },
          },
        },
      }),
    );

  test("is counted where nothing cuts sums: the plan is refused", () => {
    const plan = planOf("scale");
    expect(findUnsafeSums(plan)[0]?.reachUs[1]).toBeCloseTo(1800, 0);
    expect(plan.findings.map(({ code }) => code)).toContain("sum-unsafe");
    expect(plan.procedure).toEqual([]);
  });

  test("is counted in what may be read at the ends where a clamp cuts it: up to the last safe pulse", () => {
    const ends = planOf("clamp").procedure.find(({ text }) => text.includes("all its ends"));
    expect(ends?.expect[0]?.pulseUs[1]).toBeGreaterThan(1784.5);
    expect(ends?.expect[0]?.pulseUs[1]).toBeLessThanOrEqual(1785);
  });
});

test("with the limits in, a clamp holds any value that is mistyped: the channel stays safe", () => {
  const percent = fc.integer({ min: -150, max: 150 });
  fc.assert(
    fc.property(arbitraryModel, fc.array(percent, { minLength: 40, maxLength: 40 }), (model, typed) => {
      const plan = compile({ ...model, radio: { ...model.radio, endPoints: "clamp" } });
      const steps = orderOfEntry(plan).filter(({ phase }) => phase !== "failsafe" && phase !== "read back");
      if (steps.length === 0) return;
      const transmitter = untouched(plan);
      const limitsIn = steps.findLastIndex(({ phase }) => phase === "limits") + 1;
      findUnsafe(transmitter, steps.slice(0, limitsIn), new Map());
      const wrong = steps.slice(limitsIn).map((step) => ({
        supply: "on" as const,
        linkage: "on" as const,
        edits: step.edits.map((edit, index) => ({
          ...edit,
          percent: typed[index] ?? 0,
          addPercent: typed[39 - index] ?? 0,
        })),
      }));
      // The failsafe is still the centre, which need not be safe: here it is left out of what is looked at.
      const withCentre = new Map(
        [...safePulses(plan)].map(([channel, [low, high]]) => [
          channel,
          [Math.min(low, plan.radio.centreUs), Math.max(high, plan.radio.centreUs)] as const,
        ]),
      );
      expect(findUnsafe(transmitter, wrong, withCentre)).toBeUndefined();
    }),
    { numRuns: 30 },
  );
});

// The tow plane's left flap at 5 us per percent, worked by hand: limits -63/+74 give [1185, 1870], positions 72, 59, 40 and
// -53 a reach of [1235, 1860].
test("the left flap of the tow plane, known by its readings, is entered as worked by hand", () => {
  const plan = compile(readingsOnly(bramblehook));
  const left = { ...plan, channels: plan.channels.filter(({ servos }) => servos.includes("flapLeft")) };
  const steps = orderOfEntry(left);
  const typed = steps.flatMap(({ edits }) => edits).filter(({ set }) => set !== "failsafe");
  expect(typed.map(({ set, percent }) => [set, percent])).toEqual([
    ["clear", undefined],
    ["limitLow", 0],
    ["limitHigh", 0],
    ["direction", undefined],
    ["limitLow", -63],
    ["limitHigh", 74],
    ["neutral", 72],
    ["detent", 59],
    ["detent", 40],
    ["detent", -53],
    ...typed.filter(({ set }) => set === "transit").map(({ set }) => [set, undefined]),
  ]);
  expect(lastReach(steps)).toEqual([1235, 1860]);
  const mistyped = untouched(left);
  findUnsafe(mistyped, steps, new Map());
  mistyped.edit({ channel: 5, set: "neutral" }, -500);
  expect(Math.min(...mistyped.allPulses(5))).toBe(1185);
  mistyped.edit({ channel: 5, set: "neutral" }, 500);
  expect(Math.max(...mistyped.allPulses(5))).toBe(1870);
});

describe("the usual habit, worked by hand for the same flap, is found unsafe", () => {
  const safe = new Map([[5, [1182, 1870] as const]]);
  const on = (edits: NaiveStep["edits"]): NaiveStep => ({ supply: "on", linkage: "on", edits });
  const bare = { centreUs: 1500, per100Us: 500 };

  test("centre shift first, with limits that move with it: [1360, 2360], 490 us past the end", () => {
    const transmitter = naiveTransmitter({ ...bare, endPoints: "about shift" }, [5], 100);
    expect(
      findUnsafe(transmitter, [{ ...on([{ channel: 5, set: "shift", percent: 72 }]), supply: "off" }], safe),
    ).toBeUndefined();
    const pulses = transmitter.allPulses(5).filter((pulse) => pulse !== 1500);
    expect([Math.min(...pulses), Math.max(...pulses)]).toEqual([1360, 2360]);
    expect(findUnsafe(transmitter, [on([])], safe)).toContain("sends 2360");
  });

  test("direction last: [1130, 1815], 52 us past the down end", () => {
    const transmitter = naiveTransmitter({ ...bare, endPoints: "clamp" }, [5], 100);
    const limits = [
      { channel: 5, set: "limitLow", percent: -63 },
      { channel: 5, set: "limitHigh", percent: 74 },
    ] as const;
    expect(findUnsafe(transmitter, [{ ...on(limits), supply: "off" }, on([])], safe)).toBeUndefined();
    expect(findUnsafe(transmitter, [on([{ channel: 5, set: "reverse" }])], safe)).toContain("sends 1130");
    expect(Math.max(...transmitter.allPulses(5))).toBe(1815);
  });

  test("a procedure whose limits are entered last, powered and with the linkage on", () => {
    const plan = compile(bramblehook);
    const steps = orderOfEntry(plan);
    const limits = steps.filter(({ phase }) => phase === "limits");
    const others = steps.filter(({ phase }) => phase !== "limits" && phase !== "collapse");
    const habit = [...others, ...limits].map((step) => ({
      ...step,
      supply: "on" as const,
      linkage: "on" as const,
    }));
    expect(findUnsafe(untouched(plan), habit, safePulses(plan))).toBeDefined();
  });
});

describe("a small change of a signed-off plan", () => {
  const old = () => compile(smallModel());
  const change = (over: Partial<Model>) => orderOfEntry(compile(smallModel(over)), old());
  const landing = (degrees: number) =>
    ({
      moves: {
        lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(12) }, landing: { flap: deg(degrees) } },
      },
    }) as const;

  test("of nothing has no steps", () => {
    expect(orderOfEntry(compile(smallModel()), old())).toEqual([]);
  });

  test("of one detent types that detent only, the linkage on", () => {
    const steps = change(landing(20));
    expect(steps.flatMap(({ edits }) => edits)).toEqual([
      { channel: 1, set: "detent", control: "lever", detent: "landing", percent: 40, addPercent: 40 },
    ]);
    expect(steps.every(({ linkage }) => linkage === "on")).toBe(true);
  });

  test("of the ends narrows limits with the receiver off, moves the positions, then widens", () => {
    const bench = { up: us(1300), down: us(1750) };
    const wide = compile(
      smallModel({ surfaces: { flap: smallSurface({ up: us(1200), down: us(1700) }) }, ...landing(15) }),
    );
    const steps = orderOfEntry(
      compile(smallModel({ surfaces: { flap: smallSurface(bench) }, ...landing(20) })),
      wide,
    );
    expect(
      steps.flatMap(({ supply, edits }) => edits.map(({ set, percent }) => [supply, set, percent])),
    ).toEqual([
      ["off", "limitLow", -38],
      ["on", "detent", 40],
      ["on", "limitHigh", 48],
    ]);
    expect(lastReach(steps)).toEqual([1500, 1700]);
  });

  test("of a detent that no longer moves the flap takes its value away, and nothing else", () => {
    const moves = {
      lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(0) }, landing: { flap: deg(25) } },
    };
    expect(change({ moves }).flatMap(({ edits }) => edits)).toEqual([
      { channel: 1, set: "detent", control: "lever", detent: "takeoff", percent: 0, addPercent: 0 },
    ]);
  });

  test("of the transit types its new time, and 0 where there is none any more", () => {
    const transit = (...seconds: number[]) =>
      compile(smallModel(seconds.length === 0 ? {} : { transit: { lever: s(seconds[0] ?? 0) } }));
    const edits = (from: SetupPlan, to: SetupPlan) => orderOfEntry(to, from).flatMap((step) => step.edits);
    const typed = { channel: 1, set: "transit", control: "lever" };
    expect(edits(transit(2), transit(3))).toEqual([{ ...typed, seconds: 3 }]);
    expect(edits(transit(2), transit())).toEqual([{ ...typed, seconds: 0 }]);
    expect(edits(transit(2), transit(2))).toEqual([]);
  });

  test("of the ends to pulses that the old ones had nothing of starts from nothing", () => {
    const apart = smallSurface({ up: us(1600), level: us(1640), down: us(1800), readings: high });
    const wide = smallModel({
      surfaces: { flap: smallSurface({ up: us(1200), down: us(1550) }) },
      ...landing(2),
    });
    const steps = orderOfEntry(
      compile(smallModel({ surfaces: { flap: apart }, ...landing(2) })),
      compile({
        ...wide,
        moves: { lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(1) }, landing: { flap: deg(2) } } },
      }),
    );
    expect(steps.map(({ phase }) => phase)).toContain("collapse");
    expect(steps.find(({ edits }) => edits.length > 0)?.linkage).toBe("off");
  });

  test("of the servo's label starts from nothing, its linkage off", () => {
    const steps = change({ surfaces: { flap: smallSurface({}, { label: "F-L-11" }) } });
    expect(steps.flatMap(({ edits }) => edits).map(({ set }) => set)).toContain("clear");
    expect(steps.find(({ edits }) => edits.length > 0)?.linkage).toBe("off");
  });

  test("of the radio starts from nothing", () => {
    const radio = { ...smallModel().radio, per100: us(400) };
    expect(change({ radio })[0]?.linkage).toBe("off");
  });

  test("of a channel unplugs the one that is no longer used", () => {
    const steps = change({ surfaces: { flap: smallSurface({}, { channel: 7 }) } });
    expect(steps.find(({ text }) => text.startsWith("Unplug channel 1 (flap)"))?.supply).toBe("off");
  });

  test("to a failsafe, with the old one no longer safe, takes the linkage off: the receiver keeps that one until it hears another", () => {
    const high = compile(smallModel({ ...landing(25), failsafe: { lever: "landing" } }));
    const change = (downUs: number) =>
      orderOfEntry(
        compile(
          smallModel({
            surfaces: { flap: smallSurface({ down: us(downUs) }) },
            ...landing(15),
            failsafe: { lever: "stowed" },
          }),
        ),
        high,
      );
    // The old failsafe is 1750 us: past 1690, the new safe end, and inside 1760.
    const steps = change(1700);
    const entered = steps.find(({ phase }) => phase === "failsafe");
    expect([entered?.supply, entered?.linkage]).toEqual(["on", "off"]);
    const transmitter = untouched(high);
    findUnsafe(transmitter, orderOfEntry(high), new Map());
    expect(findUnsafe(transmitter, steps, new Map([[1, [1210, 1690]]]))).toBeUndefined();
    expect(steps.findIndex(({ linkage }) => linkage === "on")).toBeGreaterThan(
      steps.findIndex(({ phase }) => phase === "failsafe"),
    );
    expect(change(1770).every(({ linkage }) => linkage === "on")).toBe(true);
  });
});

test("a smaller trim lets a plan follow whose sums the old one would have made unsafe, where nothing cuts them", () => {
  const planOf = (trim: number, roll: number) =>
    compile(
      smallModel({
        radio: { ...smallModel().radio, endPoints: "scale" },
        controls: { ...smallModel().controls, roll: { kind: "stick", trim: pct(trim) } },
        moves: { ...smallMoves, roll: { flap: [deg(-roll), deg(roll)] } },
      }),
    );
  // 25 and 3.5 degrees are 1785 us; a quarter more of the 3.5 would be past 1790.
  expect(orderOfEntry(planOf(5, 3.5), planOf(25, 2))).not.toEqual([]);
});

test("limits that both lie above the centre never cross while they are typed", () => {
  const plan = compile(
    smallModel({
      surfaces: { flap: smallSurface({ up: us(1620), level: us(1640), readings: high }) },
      moves: { lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(5) }, landing: { flap: deg(10) } } },
    }),
  );
  const sets = orderOfEntry(plan)
    .find(({ phase }) => phase === "limits")
    ?.edits.map(({ set }) => set);
  expect(plan.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  expect(sets).toEqual(["limitHigh", "limitLow"]);
});

test("positions are entered from rest outward, whatever the order of the detents", () => {
  const moves = {
    lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(25) }, landing: { flap: deg(-12) } },
  };
  const steps = orderOfEntry(compile(smallModel({ moves }))).filter(({ phase }) => phase === "positions");
  expect(steps.map(({ edits: [edit] }) => edit?.detent)).toEqual(["landing", "takeoff"]);
});

test("a reading past a safe pulse is refused even where the plan's own pulse is that near to it", () => {
  const moves = {
    lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(29) }, landing: { flap: deg(-29) } },
  };
  const steps = orderOfEntry(compile(smallModel({ moves })));
  const readings = steps.filter(({ phase }) => phase === "positions").flatMap((step) => step.expect);
  expect(readings).toEqual([
    { channel: 1, pulseUs: [1786.5, 1790] },
    { channel: 1, pulseUs: [1210, 1213.5] },
  ]);
});

test("a plan with an error has no procedure", () => {
  const plan = compile(smallModel({ moves: { lever: { landing: { flap: deg(80) } } } }));
  expect(plan.findings.some(({ severity }) => severity === "error")).toBe(true);
  expect(orderOfEntry(plan)).toEqual([]);
});

test("sums that nothing holds are named, and their plan has no procedure", () => {
  const { findings: _, ...plan } = compile(smallModel());
  const reckless = (endPoints: "clamp" | "scale"): SetupPlan => ({
    ...plan,
    findings: [],
    radio: { ...plan.radio, endPoints },
    controls: plan.controls.flatMap((one) => [one, { ...one, control: `${one.control} again` }]),
    channels: plan.channels.map((channel) => ({
      ...channel,
      settings: channel.settings.flatMap((one) => [one, { ...one, control: `${one.control} again` }]),
    })),
  });
  expect(findUnsafeSums(reckless("clamp"))).toEqual([]);
  const [sum] = findUnsafeSums(reckless("scale"));
  expect(sum?.channel).toBe(1);
  expect(sum?.reachUs[1]).toBeGreaterThan(1790);
  expect(orderOfEntry(reckless("clamp"))).not.toEqual([]);
  expect(orderOfEntry(reckless("scale"))).toEqual([]);
});

describe("the steps", () => {
  const planOf = () => compile(bramblehook);
  const stepsOf = () => orderOfEntry(planOf());

  test("are plan data that the schema takes, and few enough to read", () => {
    const whole = JSON.parse(JSON.stringify({ ...planOf(), procedure: stepsOf() }));
    expect(planSchema.safeParse(whole).success).toBe(true);
    expect(stepsOf().length).toBeLessThanOrEqual(40);
  });

  test("ask for a reading wherever something was typed that moves a channel at rest or at the place where the controls stand", () => {
    for (const { phase, edits, expect: readings } of stepsOf())
      if (phase === "rest" || phase === "positions")
        expect(new Set(readings.map(({ channel }) => channel))).toEqual(
          new Set(
            phase === "rest"
              ? planOf().channels.map(({ channel }) => channel)
              : edits.map(({ channel }) => channel),
          ),
        );
  });

  test("expect the pulse of the plan, half a step and 1 us to either side, never a pulse that is not safe", () => {
    const landing = stepsOf().find(({ text }) => text.includes("flap to landing"));
    expect(landing?.expect).toContainEqual({ channel: 5, pulseUs: [1226.5, 1233.5] });
    const safe = safePulses(planOf());
    for (const { channel, pulseUs } of stepsOf().flatMap((step) => step.expect)) {
      expect(pulseUs[0]).toBeGreaterThanOrEqual(safe.get(channel)?.[0] ?? Number.POSITIVE_INFINITY);
      expect(pulseUs[1]).toBeLessThanOrEqual(safe.get(channel)?.[1] ?? Number.NEGATIVE_INFINITY);
    }
  });

  test("differ with the end points: a clamp is collapsed first, limits that scale are entered once and then left alone", () => {
    const scaling = orderOfEntry(
      compile({ ...bramblehook, radio: { ...bramblehook.radio, endPoints: "scale" } }),
    );
    const phases = (some: readonly ProcedureStep[]) => [...new Set(some.map(({ phase }) => phase))];
    expect(phases(stepsOf())).toContain("collapse");
    expect(phases(scaling)).not.toContain("collapse");
    expect(scaling.flatMap(({ edits }) => edits).filter(({ set }) => set === "limitLow")).toHaveLength(
      planOf().channels.length,
    );
  });

  test("leave nothing on before everything is entered and read back", () => {
    const firstOn = stepsOf().findIndex(({ linkage }) => linkage === "on");
    const last = stepsOf().findLastIndex(({ edits, expect: readings }) => edits.length + readings.length > 0);
    expect(firstOn).toBeGreaterThan(last);
    expect(stepsOf()[firstOn]?.supply).toBe("off");
  });
});

const high = ([1600, 1640, 1700, 1800] as const).map(
  (pulse) => [us(pulse), deg((pulse - 1640) / 10)] as const,
);

function untouched(plan: SetupPlan): NaiveTransmitter {
  const sticks = plan.controls.filter((control) => control.kind === "stick");
  return naiveTransmitter(
    plan.radio,
    plan.channels.map(({ channel }) => channel),
    plan.radio.reachPercent,
    sticks,
  );
}

/** Whether every failsafe of the old plan is a safe pulse of the new one. */
function keepsSafe(from: SetupPlan, to: SetupPlan): boolean {
  return from.channels.every(({ channel, failsafe }) => {
    const [low, high] = safePulses(to).get(channel) ?? [Number.NaN, Number.NaN];
    return failsafe.pulseUs >= low && failsafe.pulseUs <= high;
  });
}

function safePulses(plan: SetupPlan): Map<number, readonly [number, number]> {
  return new Map(plan.channels.map(({ channel, safeUs }) => [channel, safeUs]));
}

/** Every setting's pulse, rest and failsafe, by the naive transmitter, as the plan states them. */
function expectEntered(transmitter: NaiveTransmitter, { channels, controls }: SetupPlan): void {
  const atRest = Object.fromEntries(
    controls.flatMap((one) => (one.kind === "selector" ? [[one.control, one.detents[0] ?? ""]] : [])),
  );
  for (const { channel, settings, neutral, failsafe } of channels) {
    expect(Math.abs(transmitter.pulse(channel, atRest) - neutral.pulseUs)).toBeLessThan(1e-9);
    expect(transmitter.allPulses(channel).some((pulse) => Math.abs(pulse - failsafe.pulseUs) < 1e-9)).toBe(
      true,
    );
    for (const { control, detent, stick, when, enter } of settings) {
      const pulseUs = transmitter.pulse(channel, { ...atRest, ...when, [control]: detent ?? stick ?? 0 });
      expect(Math.abs(pulseUs - enter.pulseUs)).toBeLessThan(1e-9);
    }
  }
}

function lastReach(steps: readonly ProcedureStep[]): readonly [number, number] | undefined {
  return steps.findLast(({ reach }) => reach.length > 0)?.reach[0]?.pulseUs;
}

/** The model with a guard stated on every bench, and its detents nearer to level. */
function vary(model: Model, share: number, guardUs: number): Model {
  const copy = JSON.parse(JSON.stringify(model));
  for (const { servo } of Object.values<{ servo: { bench: Record<string, unknown> } }>(copy.surfaces))
    servo.bench.guard = guardUs;
  for (const [control, moves] of Object.entries<Record<string, Record<string, unknown>>>(copy.moves)) {
    if (copy.controls[control].kind !== "selector") continue;
    for (const places of Object.values(moves))
      for (const [surface, place] of Object.entries(places))
        places[surface] =
          typeof place === "number"
            ? place * share
            : { kind: "part", part: (place as { part: number }).part * share };
  }
  return copy;
}
