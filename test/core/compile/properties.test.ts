import fc from "fast-check";
import { expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { parseModel } from "../../../packages/core/src/model/parse-model.ts";
import { canonicalJson } from "../../../packages/core/src/plan/canonical-json.ts";
import type { PercentPulse } from "../../../packages/core/src/plan/setup-plan.ts";
import { seededRandom } from "../../../packages/core/src/uncertainty/random.ts";
import { arbitraryModel } from "../../support/arbitrary-model.ts";
import { randomModel } from "../../support/random-model.ts";

test("nothing to enter lies outside the safe pulses, whatever the scale, step and bench", () => {
  let entered = 0;
  fc.assert(
    fc.property(arbitraryModel, (model) => {
      for (const channel of compile(model).channels) {
        const values: PercentPulse[] = [
          channel.limits.low,
          channel.limits.high,
          channel.neutral,
          channel.failsafe,
          channel.extremes.low,
          channel.extremes.high,
          ...channel.settings.flatMap(({ exact, enter }) => [exact, enter]),
        ];
        for (const { pulseUs } of values) {
          expect(pulseUs).toBeGreaterThanOrEqual(channel.safeUs[0]);
          expect(pulseUs).toBeLessThanOrEqual(channel.safeUs[1]);
        }
        for (const { enter } of channel.settings) {
          expect(Math.abs(enter.percent)).toBeLessThanOrEqual(model.radio.reach);
          expect(enter.pulseUs).toBeGreaterThanOrEqual(channel.limits.low.pulseUs);
          expect(enter.pulseUs).toBeLessThanOrEqual(channel.limits.high.pulseUs);
        }
        entered += values.length;
      }
    }),
    { numRuns: 400 },
  );
  // A generator that made only refused models would prove nothing.
  expect(entered).toBeGreaterThan(100);
});

test("the percent of every value gives its pulse by hand: centre + percent * span / 100", () => {
  fc.assert(
    fc.property(arbitraryModel, (model) => {
      const { centre, per100 } = model.radio;
      for (const { limits, neutral, settings } of compile(model).channels)
        for (const { percent, pulseUs } of [
          limits.low,
          limits.high,
          neutral,
          ...settings.map(({ enter }) => enter),
        ]) {
          const span = typeof per100 === "number" ? per100 : percent < 0 ? per100.below : per100.above;
          expect(pulseUs).toBeCloseTo(centre + (percent * span) / 100, 8);
        }
    }),
  );
});

test("on a clamping radio every value is a whole number of steps, and no neighbour inside is nearer", () => {
  fc.assert(
    fc.property(arbitraryModel, (model) => {
      fc.pre(model.radio.endPoints === "clamp");
      for (const { settings, limits } of compile(model).channels)
        for (const { enter, exact } of settings) {
          const steps = enter.percent / model.radio.step;
          expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-9);
          const inside = exact.percent >= limits.low.percent && exact.percent <= limits.high.percent;
          const missed = Math.abs(enter.percent - exact.percent);
          // Away from the limits half a step is the worst; beside one, rounding goes inside.
          expect(missed).toBeLessThan((inside ? 1 : 2) * model.radio.step + 1e-9);
        }
    }),
  );
});

test("the order of keys in a model changes no byte of its plan", () => {
  fc.assert(
    fc.property(arbitraryModel, (model) => {
      expect(canonicalJson(compile(reversed(model)))).toBe(canonicalJson(compile(model)));
    }),
    { numRuns: 60 },
  );
});

test("a model taken through JSON gives the same plan", () => {
  fc.assert(
    fc.property(arbitraryModel, (model) => {
      const read = parseModel(JSON.parse(JSON.stringify(model)));
      expect("model" in read && canonicalJson(compile(read.model))).toBe(canonicalJson(compile(model)));
    }),
    { numRuns: 60 },
  );
});

test("compile never throws, however a model's parts contradict each other", () => {
  const number = fc.oneof(fc.integer({ min: -3000, max: 3000 }), fc.constantFrom(0, 1, 1500, 0.1));
  fc.assert(
    fc.property(
      arbitraryModel,
      fc.nat(),
      number,
      fc.constantFrom("flap", "nothing", "stowed"),
      (model, at, value, text) => {
        const spoilt = spoil(model, at, value, text);
        const read = parseModel(spoilt);
        if ("problems" in read) expect(read.problems.length).toBeGreaterThan(0);
        else expect(() => canonicalJson(compile(read.model))).not.toThrow();
      },
    ),
    { numRuns: 1000 },
  );
});

function reversed<T>(value: T): T {
  if (Array.isArray(value)) return value.map(reversed) as T;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, item]) => [key, reversed(item)]),
  ) as T;
}

/** A copy of the model in which the leaf number `at` (counted round) is replaced. */
function spoil(model: unknown, at: number, value: number, text: string): unknown {
  const copy = JSON.parse(JSON.stringify(model));
  const leaves: (() => void)[] = [];
  const walk = (node: Record<string, unknown>) => {
    for (const [key, item] of Object.entries(node)) {
      if (typeof item === "object" && item !== null) walk(item as Record<string, unknown>);
      else
        leaves.push(() => {
          node[key] = typeof item === "number" ? value : text;
        });
    }
  };
  walk(copy);
  leaves[at % leaves.length]?.();
  return copy;
}

test("an added percent leads from the channel at rest to the value entered, for moves per selector too", () => {
  const random = seededRandom(7);
  let checked = 0;
  for (let index = 0; index < 400; index++) {
    const model = randomModel(random);
    if (model.radio.endPoints !== "clamp") continue;
    for (const { neutral, settings } of compile(model).channels)
      for (const { enter, when = {} } of settings) {
        const resting = Object.entries(when).every(([name, detent]) => {
          const control = model.controls[name];
          return control?.kind === "selector" && control.detents[0] === detent;
        });
        if (!resting) continue;
        expect(neutral.percent + enter.addPercent).toBeCloseTo(enter.percent, 9);
        if (Object.keys(when).length > 0) checked++;
      }
  }
  expect(checked).toBeGreaterThan(50);
});
