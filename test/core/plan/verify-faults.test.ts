import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import type { CauseKind } from "../../../packages/core/src/plan/verify/verification.ts";
import { verify } from "../../../packages/core/src/plan/verify/verify.ts";
import { seededRandom } from "../../../packages/core/src/uncertainty/random.ts";
import bramblehook from "../../../packages/examples/src/bramblehook.ts";
import { entryFaults, right } from "../../support/entry-faults.ts";
import { measure, type Respond, typeIn, writeDown } from "../../support/read-back.ts";
import { type Case, caseAt, cases, deflect, isSeen } from "../../support/verify-cases.ts";

test("there are plans enough to try", () => {
  expect(cases.length).toBeGreaterThan(30);
});

test("a right as-built with noise inside the doubts passes, and every line of it agrees or cannot be told", () => {
  fc.assert(
    fc.property(fc.nat(cases.length - 1), fc.integer(), (index, seed) => {
      const { plan, respond } = caseAt(index);
      const pulses = right(plan);
      const asBuilt = writeDown(plan, pulses, deflect(plan, pulses, respond), seededRandom(seed));
      const { verdicts, causes, strays, passed } = verify(plan, asBuilt, { deflectionAt: respond });
      expect(verdicts.filter(({ outcome }) => outcome === "differs")).toEqual([]);
      expect([causes, strays, passed]).toEqual([[], [], true]);
    }),
    { numRuns: 60 },
  );
});

describe("a single fault", () => {
  test.each(Object.entries(entryFaults))("%s is detected and named", (kind, inject) => {
    let tried = 0;
    // Not every fault can be made on every plan.
    const fit = cases.flatMap(({ plan }, index) =>
      [1, 2, 3].some((seed) => isSeen(plan, inject(plan, seededRandom(seed))?.pulses)) ? [index] : [],
    );
    fc.assert(
      fc.property(fc.constantFrom(...fit), fc.integer(), (index, seed) => {
        const { plan, respond } = caseAt(index);
        const random = seededRandom(seed);
        const injected = inject(plan, random);
        if (injected === undefined || !isSeen(plan, injected.pulses)) return;
        tried++;
        const { pulses, channels, onlyRead = false } = injected;
        const deflections = deflect(plan, onlyRead ? right(plan) : pulses, respond);
        const asBuilt = writeDown(plan, pulses, deflections, random);
        const { causes, passed } = verify(plan, asBuilt, { deflectionAt: respond });
        expect(passed).toBe(false);
        expect(causes.every(({ all }) => all)).toBe(true);
        expect(causes).toContainEqual(
          expect.objectContaining({ kind, channels: expect.arrayContaining([...channels]) }),
        );
      }),
      { numRuns: 40 },
    );
    expect([fit.length > 2, tried > 5]).toEqual([true, true]);
  });
});

describe("a single fault behind the receiver, with every pulse right,", () => {
  const tooth =
    (spanUs: number): LinkageFault =>
    ({ channel, surface, pulseUs }, respond) =>
      respond(channel, surface, pulseUs + spanUs);
  const faults: readonly (readonly [CauseKind, LinkageFault, Readonly<Record<string, number>>])[] = [
    ["linkageReversed", ({ deg }) => -deg, {}],
    ["zeroOff", ({ deg }) => deg + 2.5, { offDeg: 2.5 }],
    ["leverOther", ({ deg }) => deg * 1.25, { ratio: 1.25 }],
    ["armToothOut", tooth(166), { spanUs: 166 }],
    ["armToothOut", tooth(-150), { spanUs: -150 }],
  ];
  test.each(faults)("%s is detected and named", (kind, fault, numbers) => {
    const fit = cases.flatMap((_, index) =>
      [0, 1, 2, 3].flatMap((at) =>
        misbuilt(caseAt(index), at, fault) === undefined ? [] : [[index, at] as const],
      ),
    );
    expect(fit.length).toBeGreaterThan(5);
    fc.assert(
      fc.property(fc.constantFrom(...fit), fc.integer(), ([index, at], seed) => {
        const { plan, respond } = caseAt(index);
        const deflections = misbuilt({ plan, respond }, at, fault) ?? [];
        const asBuilt = writeDown(plan, right(plan), deflections, seededRandom(seed));
        const { causes, passed } = verify(plan, asBuilt, { deflectionAt: respond });
        expect(passed).toBe(false);
        const found = causes.find((cause) => cause.kind === kind);
        expect(found).toMatchObject({ all: true, channels: [plan.channels[at]?.channel] });
        for (const [key, value] of Object.entries(numbers))
          expect((found?.numbers[key] ?? 0) / value).toBeGreaterThan(0.5);
      }),
      { numRuns: 40 },
    );
  });
});

type LinkageFault = (line: Line, respond: Respond) => number | undefined;

/** Deflections of a plan with one channel's linkage wrong; undefined where that is not seen on two lines of it that stand apart. */
function misbuilt({ plan, respond }: Case, at: number, fault: LinkageFault) {
  const expected = deflect(plan, right(plan), respond);
  const { channel, settings } = plan.channels[at] ?? { channel: 0, settings: [] };
  const own = settings.map(({ surface, enter: { pulseUs } }, place) => {
    const deg = expected[at]?.[place];
    return deg === undefined ? undefined : fault({ channel, surface, pulseUs, deg }, respond);
  });
  const known = own.flatMap((deg, place) => (deg === undefined ? [] : [{ deg, place }]));
  const isSeen = known.some(({ deg, place }) => Math.abs(deg - (expected[at]?.[place] ?? deg)) > 2);
  const surfaces = new Set(settings.map(({ surface }) => surface));
  const pulses = new Set(known.map(({ place }) => settings[place]?.enter.pulseUs));
  return isSeen && surfaces.size === 1 && pulses.size > 1 ? expected.with(at, own) : undefined;
}

test("two faults on two channels are named each on its own", () => {
  const plan = compile(bramblehook);
  const [first, second] = plan.channels;
  const pulses = typeIn(plan).map((typed, index) => {
    const channel = plan.channels[index];
    if (channel === undefined) throw new Error("no channel");
    if (channel === first) typed.reversed = true;
    if (channel === second) typed.settings = typed.settings.with(-1, -(typed.settings.at(-1) ?? 0));
    return measure(plan, channel, typed);
  });
  const { causes } = verify(plan, writeDown(plan, pulses, [], seededRandom(1)));
  expect(causes.every(({ all }) => !all)).toBe(true);
  expect(causes.map(({ kind, channels }) => [kind, ...channels])).toEqual(
    expect.arrayContaining([
      ["directionReversed", first?.channel],
      ["minusSign", second?.channel],
    ]),
  );
});

test("deflections of two settings in each other's place are named", () => {
  const plan = compile(bramblehook);
  const gives = plan.channels.map(({ settings }) => settings.map((one) => one.gives?.deflectionDeg ?? 0));
  const causesOf = (deflections: number[][]) =>
    verify(plan, writeDown(plan, right(plan), deflections, seededRandom(2))).causes;
  const flap = plan.channels.findIndex(({ servos }) => servos.includes("flapLeft"));
  const own = gives[flap] ?? [];
  const [first = 0, last = 0] = [own[0], own.at(-1)];
  expect(causesOf(gives)).toEqual([]);
  expect(causesOf(gives.with(flap, own.with(0, last).with(-1, first)))).toEqual([
    expect.objectContaining({ kind: "readingsSwapped", all: true, channels: [5] }),
  ]);
});

test("an entry that is none of these is named by the value that stands there", () => {
  const plan = compile(bramblehook);
  const pulses = right(plan).map((one, index) =>
    index === 0 ? { ...one, settings: one.settings.map((us, at) => (at === 0 ? us - 65 : us)) } : one,
  );
  const { causes } = verify(plan, writeDown(plan, pulses, [], seededRandom(3)));
  expect(causes).toEqual([expect.objectContaining({ kind: "otherValue", all: true, channels: [1] })]);
  expect(causes[0]?.message).toMatch(
    /^In channel 1 \(aileronLeft\), roll at -1 stands at another value: \+4[78]/,
  );
});

interface Line {
  readonly channel: number;
  readonly surface: string;
  readonly pulseUs: number;
  readonly deg: number;
}
