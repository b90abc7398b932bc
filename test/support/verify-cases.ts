import fc from "fast-check";
import { compile } from "../../packages/core/src/compile/compile.ts";
import { describeServos } from "../../packages/core/src/compile/describe-servos.ts";
import type { Model } from "../../packages/core/src/model/model.ts";
import type { SetupPlan } from "../../packages/core/src/plan/setup-plan.ts";
import { seededRandom } from "../../packages/core/src/uncertainty/random.ts";
import { us } from "../../packages/core/src/units/quantity.ts";
import bramblehook from "../../packages/examples/src/bramblehook.ts";
import ostrevale from "../../packages/examples/src/ostrevale.ts";
import slatewing from "../../packages/examples/src/slatewing.ts";
import { arbitraryModel } from "./arbitrary-model.ts";
import { right } from "./entry-faults.ts";
import { randomModel } from "./random-model.ts";
import type { Pulses, Respond } from "./read-back.ts";

/** A plan, and how its servos respond. */
export interface Case {
  readonly plan: SetupPlan;
  readonly respond: Respond;
}

/** Plans without errors, of the examples and of random models; compiled once. */
const models: Model[] = [
  bramblehook,
  ostrevale,
  slatewing,
  ...Array.from({ length: 60 }, (_, seed) => randomModel(seededRandom(seed))),
  ...fc.sample(arbitraryModel, { seed: 6, numRuns: 120 }),
];
export const cases: readonly Case[] = models.flatMap((model): Case[] => {
  const plan = compile(model);
  const isSound = plan.findings.every(({ severity }) => severity !== "error") && plan.channels.length > 0;
  return isSound ? [{ plan, respond: responseOf(model) }] : [];
});

/** Whether some pulse is so wrong that no noise hides it. */
export function isSeen(plan: SetupPlan, pulses: readonly Pulses[] = right(plan)): boolean {
  const { per100Us, stepPercent } = plan.radio;
  const spanUs = typeof per100Us === "number" ? per100Us : Math.max(per100Us.below, per100Us.above);
  const toleranceUs = (spanUs * stepPercent) / 200 + 1;
  const flat = (list: readonly Pulses[]) =>
    list.flatMap(({ low, high, rest, failsafe, settings }) => [low, high, rest, failsafe, ...settings]);
  const expected = flat(right(plan));
  return flat(pulses).some((pulseUs, index) => Math.abs(pulseUs - (expected[index] ?? 0)) > toleranceUs + 1);
}

/** One of them, by its place. */
export function caseAt(index: number): Case {
  const found = cases[index];
  if (found === undefined) throw new Error(`no case ${index}`);
  return found;
}

/** What the surfaces of a plan do at these pulses. */
export function deflect(plan: SetupPlan, pulses: readonly Pulses[], respond: Respond) {
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
