import type { Model, Radio } from "../model/model.ts";
import { pairUp } from "../plan/pair-up.ts";
import { placeOf, type SettingAt } from "../plan/plan-change.ts";
import type { SetupPlan } from "../plan/setup-plan.ts";
import { toPercent, toPulse } from "../signal/percent.ts";
import { timesStep } from "../units/decimals.ts";
import { pct, us } from "../units/quantity.ts";
import { compile } from "./compile.ts";
import { resolveNames } from "./resolve-names.ts";
import { sortKeys } from "./sort-keys.ts";

/** A setting that one radio gives and another does not. */
export interface Unreachable {
  readonly place: SettingAt;
  /** The exact pulse that it needs. */
  readonly pulseUs: number;
  /**
   * `past-reach`: the other radio ends before it; `with-channel`: it could be sent, but the channel's other pulses could not;
   * `no-step`: none of the other radio's steps lies where it is safe.
   */
  readonly kind: "past-reach" | "with-channel" | "no-step";
  /** The end of the other radio on that side. */
  readonly reachUs: number;
}

/** What would make settings reachable; any one of those for a channel. */
export type Remedy =
  /** All pulses of the channel moved by as much, as by the arm on its shaft; with the servo's rotation known, in degrees of it. */
  | { readonly kind: "shift"; readonly channel: number; readonly byUs: number; readonly shaftDeg?: number }
  | { readonly kind: "reach"; readonly channel: number; readonly reachPercent: number }
  | { readonly kind: "step"; readonly channel: number; readonly stepPercent: number };

/** Settings of `before` that `plan`, on `radio`, does not have. */
export function findUnreachable(before: SetupPlan, plan: SetupPlan, radio: Radio): readonly Unreachable[] {
  const [lowUs, highUs] = endsOf(radio);
  const isPast = (pulseUs: number) => pulseUs < lowUs || pulseUs > highUs;
  return pairUp(settingsOf(before), settingsOf(plan), ({ place }) => place).flatMap(
    ({ before: old, after }) => {
      if (old === undefined || after !== undefined) return [];
      const { place, pulseUs } = old;
      const reachUs = Math.abs(pulseUs - lowUs) < Math.abs(pulseUs - highUs) ? lowUs : highUs;
      const kind = isPast(pulseUs)
        ? "past-reach"
        : pulsesOf(before, place.channel).some(isPast)
          ? "with-channel"
          : "no-step";
      return [{ place, pulseUs, kind, reachUs }];
    },
  );
}

/** What would help each channel that has something unreachable. */
export function remediesFor(
  unreachable: readonly Unreachable[],
  before: SetupPlan,
  model: Model,
  radio: Radio,
): readonly Remedy[] {
  const channels = [...new Set(unreachable.map(({ place }) => place.channel))];
  return channels.flatMap((channel): readonly Remedy[] => {
    const missing = unreachable.filter(({ place }) => place.channel === channel);
    const pulses = pulsesOf(before, channel);
    return missing.some(({ kind }) => kind !== "no-step")
      ? [...shiftFor(channel, pulses, model, radio), reachFor(channel, pulses, radio)]
      : stepFor(channel, missing, model, radio);
  });
}

function shiftFor(channel: number, pulses: readonly number[], model: Model, radio: Radio): readonly Remedy[] {
  const [lowUs, highUs] = endsOf(radio);
  const [neededLowUs, neededHighUs] = [Math.min(...pulses), Math.max(...pulses)];
  // To the whole microsecond, so that no end is met exactly.
  const byUs = neededHighUs > highUs ? Math.floor(highUs - neededHighUs) : Math.ceil(lowUs - neededLowUs);
  if (neededLowUs + byUs < lowUs || neededHighUs + byUs > highUs) return [];
  const servos = resolveNames(sortKeys(model), () => undefined).surfaces.flatMap((named) => named.servos);
  const rotation = servos.find(({ servo }) => servo.channel === channel)?.servo.type?.rotation;
  return [{ kind: "shift", channel, byUs, ...(rotation === undefined ? {} : { shaftDeg: byUs * rotation }) }];
}

function reachFor(channel: number, pulses: readonly number[], radio: Radio): Remedy {
  const percents = pulses.map((pulseUs) => Math.abs(toPercent(radio, us(pulseUs))));
  const steps = Math.ceil(Math.max(...percents) / radio.step);
  return {
    kind: "reach",
    channel,
    reachPercent: timesStep(steps, radio.step),
  };
}

/** The coarsest of the usual finer steps with which nothing of the channel is missing. */
function stepFor(
  channel: number,
  missing: readonly Unreachable[],
  model: Model,
  radio: Radio,
): readonly Remedy[] {
  const stepPercent = usualSteps
    .filter((step) => step < radio.step)
    .find((step) => {
      const plan = compile({ ...model, radio: { ...radio, step: pct(step) } });
      const has = new Set(settingsOf(plan).map(({ place }) => JSON.stringify(place)));
      return missing.every(({ place }) => has.has(JSON.stringify(place)));
    });
  return stepPercent === undefined ? [] : [{ kind: "step", channel, stepPercent }];
}

/** Steps that radios have, percent. Common practice, no source. */
const usualSteps = [1, 0.5, 0.2, 0.1, 0.05];

function settingsOf({ channels }: SetupPlan) {
  return channels.flatMap(({ channel, settings }) =>
    settings.map((setting) => ({ place: placeOf(channel, setting), pulseUs: setting.exact.pulseUs })),
  );
}

/** All that a channel needs: its settings exactly, and the value at rest. */
function pulsesOf({ channels }: SetupPlan, channel: number): readonly number[] {
  return channels
    .filter((one) => one.channel === channel)
    .flatMap(({ neutral, settings }) => [neutral.pulseUs, ...settings.map(({ exact }) => exact.pulseUs)]);
}

function endsOf(radio: Radio): readonly [low: number, high: number] {
  return [toPulse(radio, pct(-radio.reach)), toPulse(radio, pct(radio.reach))];
}
