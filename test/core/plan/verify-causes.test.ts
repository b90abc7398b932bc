import fc from "fast-check";
import { expect, test } from "vitest";
import type { Position, SetupPlan } from "../../../packages/core/src/plan/setup-plan.ts";
import { verify } from "../../../packages/core/src/plan/verify/verify.ts";
import { seededRandom } from "../../../packages/core/src/uncertainty/random.ts";
import { entryFaults, right } from "../../support/entry-faults.ts";
import { measure, type Pulses, typeIn, writeDown } from "../../support/read-back.ts";
import { type Case, caseAt, cases, deflect, isSeen } from "../../support/verify-cases.ts";

test("limits that clamp are named too where they and the failsafe were read at positions, which go from -100 to +100", () => {
  const isWide = ({ plan: { radio, channels } }: Case) =>
    radio.endPoints === "scale" &&
    channels.some(({ limits }) => limits.low.percent < -100 || limits.high.percent > 100);
  const wide = cases.filter(isWide);
  expect(wide.length).toBeGreaterThan(2);
  for (const { plan } of wide) {
    const other: SetupPlan = { ...plan, radio: { ...plan.radio, endPoints: "clamp" } };
    const typed = typeIn(plan);
    const pulses = plan.channels.map((channel, index): Pulses => {
      const own = typed[index];
      if (own === undefined) throw new Error("no channel");
      const at = (rest: number) => measure(other, channel, { ...own, rest }).rest;
      return { ...measure(other, channel, own), low: at(-100), high: at(100), failsafe: at(own.failsafe) };
    });
    if (!isSeen(plan, pulses)) continue;
    const { causes } = verify(plan, writeDown(plan, pulses, [], seededRandom(4)));
    expect(causes).toContainEqual(expect.objectContaining({ kind: "otherEndPoints", all: true }));
    expect(causes.find(({ kind }) => kind === "otherEndPoints")).toMatchObject({
      message: "The radio's limits clamp, and the plan is made for limits that scale.",
      do: expect.stringContaining('Write endPoints: "clamp" into'),
    });
  }
});

test("a column that was typed in place of the right one is named", () => {
  for (const { plan } of cases.slice(0, 20)) {
    const scaling = plan.radio.endPoints === "scale";
    const pulses = typeIn(plan).map((typed, index) => {
      const channel = plan.channels[index];
      if (channel === undefined) throw new Error("no channel");
      const other = ({ percent, sharePercent }: Position) => (scaling ? percent : sharePercent);
      const settings = channel.settings.map(({ enter }) => other(enter));
      const failsafe = other(channel.failsafe);
      // A selector's first detent is where it rests.
      const first = channel.settings.find(({ detent, when }) => detent !== undefined && when === undefined);
      const rest = other(first?.enter ?? channel.neutral);
      return measure(plan, channel, { ...typed, settings, failsafe, rest });
    });
    if (!isSeen(plan, pulses)) continue;
    const { causes } = verify(plan, writeDown(plan, pulses, [], seededRandom(8)));
    expect(causes.map(({ message }) => message)).toContainEqual(
      `In every channel, ${scaling ? "the percent" : "the share"} was typed for every position.`,
    );
  }
});

test.each([
  ["clamp", "%"],
  ["scale", "share"],
] as const)("a position typed wrong where limits %s is told in %s, as the plan has it", (endPoints, unit) => {
  const messages = cases
    .filter(({ plan }) => plan.radio.endPoints === endPoints)
    .slice(0, 12)
    .flatMap(({ plan }) => {
      const injected = entryFaults.minusSign?.(plan, seededRandom(5));
      if (injected === undefined || !isSeen(plan, injected.pulses)) return [];
      const { causes } = verify(plan, writeDown(plan, injected.pulses, [], seededRandom(6)));
      return causes.flatMap(({ kind, message }) => (kind === "minusSign" ? [message] : []));
    });
  expect(messages.length).toBeGreaterThan(1);
  for (const message of messages)
    expect(message).toMatch(new RegExp(`: [-+]?[\\d.]+ ${unit} in place of [-+]?[\\d.]+ ${unit}\\.$`));
});

test("one deflection that lost its sign, with every pulse right, is named as a reading", () => {
  fc.assert(
    fc.property(fc.nat(cases.length - 1), fc.nat(), fc.integer(), (index, pick, seed) => {
      const { plan, respond } = caseAt(index);
      const expected = deflect(plan, right(plan), respond);
      // Where it stands alone a linkage turned about looks the same; where it is small the doubt hides it.
      const fit = expected.flatMap((own, at) =>
        own.flatMap((deg, place) =>
          Math.abs(deg ?? 0) > 4 && own.some((one) => Math.abs((one ?? 0) - (deg ?? 0)) > 4)
            ? [{ at, place }]
            : [],
        ),
      );
      const chosen = fit[pick % fit.length];
      if (chosen === undefined) return;
      const turned = expected.map((own, at) =>
        own.map((deg, place) => (at === chosen.at && place === chosen.place ? -(deg ?? 0) : deg)),
      );
      const { causes, verdicts } = verify(plan, writeDown(plan, right(plan), turned, seededRandom(seed)), {
        deflectionAt: respond,
      });
      if (!verdicts.some(({ quantity, outcome }) => quantity === "deflection" && outcome === "differs"))
        return;
      expect(causes).toContainEqual(
        expect.objectContaining({
          kind: "readingSign",
          all: true,
          channels: [plan.channels[chosen.at]?.channel],
        }),
      );
    }),
    { numRuns: 60 },
  );
});

test("no cause is offered whose fitted number is nothing: it would explain a reading by its slack alone", () => {
  fc.assert(
    fc.property(
      fc.nat(cases.length - 1),
      fc.nat(),
      fc.boolean(),
      fc.integer(),
      (index, pick, isLow, seed) => {
        const { plan } = caseAt(index);
        const { per100Us, stepPercent } = plan.radio;
        const spanUs = typeof per100Us === "number" ? per100Us : Math.max(per100Us.below, per100Us.above);
        // One reading just past what is allowed.
        const offUs = (isLow ? -1 : 1) * ((spanUs * stepPercent) / 200 + 1.95);
        const pulses = right(plan).map((one, at) =>
          at === pick % plan.channels.length
            ? { ...one, settings: one.settings.map((us, place) => (place === 0 ? us + offUs : us)) }
            : one,
        );
        const { causes } = verify(plan, writeDown(plan, pulses, [], seededRandom(seed)));
        for (const { numbers, message } of causes) {
          const { shiftUs, offsetUs, limitUs, wasUs } = numbers;
          if (limitUs !== undefined && wasUs !== undefined)
            expect([message, Math.abs(limitUs - wasUs) > 0.99]).toEqual([message, true]);
          for (const fitted of [shiftUs, offsetUs])
            if (fitted !== undefined) expect([message, Math.abs(fitted) > 0.99]).toEqual([message, true]);
        }
      },
    ),
    { numRuns: 60 },
  );
});
