import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { describeServos } from "../../../packages/core/src/compile/describe-servos.ts";
import type { Model } from "../../../packages/core/src/model/model.ts";
import type { SetupPlan } from "../../../packages/core/src/plan/setup-plan.ts";
import type { CauseKind } from "../../../packages/core/src/plan/verify/verification.ts";
import { verify } from "../../../packages/core/src/plan/verify/verify.ts";
import { seededRandom } from "../../../packages/core/src/uncertainty/random.ts";
import { us } from "../../../packages/core/src/units/quantity.ts";
import bramblehook from "../../../packages/examples/src/bramblehook.ts";
import ostrevale from "../../../packages/examples/src/ostrevale.ts";
import slatewing from "../../../packages/examples/src/slatewing.ts";
import { arbitraryModel } from "../../support/arbitrary-model.ts";
import { entryFaults, right } from "../../support/entry-faults.ts";
import { randomModel } from "../../support/random-model.ts";
import { type Pulses, type Respond, writeDown } from "../../support/read-back.ts";

interface Case {
  readonly plan: SetupPlan;
  readonly respond: Respond;
}

/** Plans without errors, of the examples and of random models; compiled once. */
const models: Model[] = [
  bramblehook,
  ostrevale,
  slatewing,
  ...Array.from({ length: 300 }, (_, seed) => randomModel(seededRandom(seed))),
  ...fc.sample(arbitraryModel, { seed: 77, numRuns: 400 }),
];
const cases = models.flatMap((model): Case[] => {
  const plan = compile(model);
  const isSound = plan.findings.every(({ severity }) => severity !== "error") && plan.channels.length > 0;
  return isSound ? [{ plan, respond: responseOf(model) }] : [];
});

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
    { numRuns: 150 },
  );
});

describe("a single fault", () => {
  test.each(Object.entries(entryFaults))("%s is detected and named", (kind, inject) => {
    let tried = 0; const stats = { n: 0, total: 0, first: 0, only: 0, with: {} as Record<string, number> };
    fc.assert(
      fc.property(fc.nat(cases.length - 1), fc.integer(), (index, seed) => {
        const { plan, respond } = caseAt(index);
        const random = seededRandom(seed);
        const injected = inject(plan, random);
        if (injected === undefined || !isSeen(plan, injected.pulses)) return;
        tried++;
        const { pulses, channels, onlyRead = false } = injected;
        const deflections = deflect(plan, onlyRead ? right(plan) : pulses, respond);
        const asBuilt = writeDown(plan, pulses, deflections, random);
        const { causes, passed } = verify(plan, asBuilt, { deflectionAt: respond });
        stats.n++; stats.total += causes.length; if (causes[0]?.kind === kind) stats.first++;
        if (causes.every((c) => c.kind === kind)) stats.only++;
        for (const k of new Set(causes.map((c) => c.kind))) stats.with[k] = (stats.with[k] ?? 0) + 1;
        expect(passed).toBe(false);
        expect(causes.every(({ all }) => all)).toBe(true);
        expect(causes).toContainEqual(
          expect.objectContaining({ kind, channels: expect.arrayContaining([...channels]) }),
        );
      }),
      { numRuns: 150 },
    );
    console.log(kind, JSON.stringify(stats));
  });
});

describe("a single fault behind the receiver, with every pulse right,", () => {
  const faults: readonly (readonly [CauseKind, (line: Line, respond: Respond) => number | undefined])[] = [
    ["linkageReversed", ({ deg }) => -deg],
    ["zeroOff", ({ deg }) => deg + 2.5],
    ["leverOther", ({ deg }) => deg * 1.25],
    ["armToothOut", ({ channel, surface, pulseUs }, respond) => respond(channel, surface, pulseUs + 166)],
    ["armToothOut", ({ channel, surface, pulseUs }, respond) => respond(channel, surface, pulseUs - 150)],
  ];
  test.each(faults)("%s is detected and named", (kind, fault) => {
    let tried = 0;
    fc.assert(
      fc.property(fc.nat(cases.length - 1), fc.nat(7), fc.integer(), (index, which, seed) => {
        const { plan, respond } = caseAt(index);
        const pulses = right(plan);
        const expected = deflect(plan, pulses, respond);
        const at = which % plan.channels.length;
        const deflections = expected.map((list, channelAt) => {
          const { channel, settings } = plan.channels[channelAt] ?? { channel: 0, settings: [] };
          if (channelAt !== at || new Set(settings.map(({ surface }) => surface)).size > 1) return list;
          return settings.map(({ surface, enter: { pulseUs } }, place) => {
            const deg = list[place];
            return deg === undefined ? undefined : fault({ channel, surface, pulseUs, deg }, respond);
          });
        });
        const seen = deflections[at]?.filter((deg) => deg !== undefined) ?? [];
        const isPlain = deflections[at]?.some(
          (deg, place) => deg !== undefined && Math.abs(deg - (expected[at]?.[place] ?? deg)) > 2,
        );
        const places = plan.channels[at]?.settings.map(({ enter }) => enter.pulseUs) ?? [];
        if (!isPlain || seen.length < 2 || new Set(places).size < 2) return;
        tried++;
        const asBuilt = writeDown(plan, pulses, deflections, seededRandom(seed));
        const { causes, passed } = verify(plan, asBuilt, { deflectionAt: respond });
        expect(passed).toBe(false);
        expect(causes).toContainEqual(
          expect.objectContaining({ kind, all: true, channels: [plan.channels[at]?.channel] }),
        );
      }),
      { numRuns: 150 },
    );
    expect(tried).toBeGreaterThan(5);
  });
});

interface Line {
  readonly channel: number;
  readonly surface: string;
  readonly pulseUs: number;
  readonly deg: number;
}

/** Whether some pulse is so wrong that no noise hides it. */
function isSeen(plan: SetupPlan, pulses: readonly Pulses[]): boolean {
  const { per100Us, stepPercent } = plan.radio;
  const spanUs = typeof per100Us === "number" ? per100Us : Math.max(per100Us.below, per100Us.above);
  const toleranceUs = (spanUs * stepPercent) / 200 + 1;
  const flat = (list: readonly Pulses[]) =>
    list.flatMap(({ low, high, rest, failsafe, settings }) => [low, high, rest, failsafe, ...settings]);
  const expected = flat(right(plan));
  return flat(pulses).some((pulseUs, index) => Math.abs(pulseUs - (expected[index] ?? 0)) > toleranceUs + 1);
}

function caseAt(index: number): Case {
  const found = cases[index];
  if (found === undefined) throw new Error(`no case ${index}`);
  return found;
}

function deflect(plan: SetupPlan, pulses: readonly Pulses[], respond: Respond) {
  return plan.channels.map(({ channel, settings }, index) =>
    settings.map(({ surface, gives }, at) =>
      gives === undefined ? undefined : respond(channel, surface, pulses[index]?.settings[at] ?? 0),
    ),
  );
}

function responseOf(model: Model): Respond {
  const servos = describeServos(model);
  return (channel, surface, pulseUs) =>
    servos
      .find((one) => one.channel === channel && one.surface === surface)
      ?.measured?.response.deflectionAt(us(pulseUs));
}
