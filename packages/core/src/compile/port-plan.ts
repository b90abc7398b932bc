import type { Model, Radio } from "../model/model.ts";
import { pairUp } from "../plan/pair-up.ts";
import { type PlanChange, placeOf, type SettingAt, sidesOf, type ValueName } from "../plan/plan-change.ts";
import { diffPlans } from "../plan/plan-diff.ts";
import type {
  PercentPulse,
  PlanChannel,
  PlanRadio,
  Position,
  Setting,
  SetupPlan,
} from "../plan/setup-plan.ts";
import { typedPercent } from "../plan/typed-percent.ts";
import { toPulse } from "../signal/percent.ts";
import { pct, us } from "../units/quantity.ts";
import { compile } from "./compile.ts";
import { describeServos } from "./describe-servos.ts";
import { findUnreachable, type Remedy, remediesFor, type Unreachable } from "./port-remedies.ts";

/** A model's plan on its own radio and on another. Pulses are carried over, never percents. */
export interface Port {
  /** The model with the other radio. */
  readonly model: Model;
  readonly before: SetupPlan;
  readonly plan: SetupPlan;
  /** What is entered, old and new, channel by channel. */
  readonly values: readonly PortedValue[];
  readonly changes: readonly PlanChange[];
  /** Settings of the old plan that the other radio cannot give, and what would help. */
  readonly unreachable: readonly Unreachable[];
  readonly remedies: readonly Remedy[];
}

/** One value as it is entered on either radio; one is absent where only the other plan has it. */
export interface PortedValue {
  readonly channel: number;
  readonly what: ValueName | SettingAt;
  readonly before?: EnteredValue;
  readonly after?: EnteredValue;
  /** What the old percent would give if it were typed into the other radio; absent where positions are shares. */
  readonly retyped?: { readonly pulseUs: number; readonly deflectionDeg?: number };
}

/** `percent` is a share between the limits for a position on a radio whose limits scale. */
export interface EnteredValue extends PercentPulse {
  readonly givesDeg?: number;
}

/** The plan of a model on another radio, beside the plan on its own. There and back it is the same plan. */
export function portModel(declared: Model, radio: Radio): Port {
  const model = { ...declared, radio };
  const [before, plan] = [compile(declared), compile(model)];
  const unreachable = findUnreachable(before, plan, radio);
  return {
    model,
    before,
    plan,
    values: valuesOf(before, plan, declared, radio),
    changes: diffPlans(before, plan),
    unreachable,
    remedies: remediesFor(unreachable, before, declared, radio),
  };
}

function valuesOf(before: SetupPlan, plan: SetupPlan, model: Model, radio: Radio): readonly PortedValue[] {
  const carries = before.radio.endPoints === "clamp" && radio.endPoints === "clamp";
  const servos = describeServos(model);
  return pairUp(before.channels, plan.channels, ({ channel }) => channel).flatMap(
    ({ before: old, after }) => {
      const channel = after?.channel ?? old?.channel ?? 0;
      const entries = pairUp(
        old === undefined ? [] : entriesOf(old, before.radio),
        after === undefined ? [] : entriesOf(after, plan.radio),
        ({ what }) => what,
      );
      return entries.map((pair): PortedValue => {
        const what = (pair.after ?? pair.before)?.what ?? "neutral";
        const value = { channel, what, ...sidesOf(pair.before?.value, pair.after?.value) };
        if (!carries || pair.before === undefined) return value;
        const pulseUs = toPulse(radio, pct(pair.before.value.percent));
        const surface = typeof what === "string" ? old?.settings[0]?.surface : what.surface;
        const servo = servos.find((one) => one.channel === channel && one.surface === surface);
        const deflectionDeg = servo?.measured?.response.deflectionAt(us(pulseUs));
        return { ...value, retyped: { pulseUs, ...(deflectionDeg === undefined ? {} : { deflectionDeg }) } };
      });
    },
  );
}

interface Entry {
  readonly what: PortedValue["what"];
  readonly value: EnteredValue;
}

function entriesOf(
  { channel, limits, neutral, failsafe, settings }: PlanChannel,
  radio: PlanRadio,
): readonly Entry[] {
  const ofPosition = (position: Position): EnteredValue => ({
    percent: typedPercent(position, radio),
    pulseUs: position.pulseUs,
  });
  const ofSetting = (setting: Setting): Entry => {
    const { enter, gives } = setting;
    return {
      what: placeOf(channel, setting),
      value: {
        ...ofPosition(enter),
        ...(gives === undefined ? {} : { givesDeg: gives.deflectionDeg }),
      },
    };
  };
  return [
    { what: "lowLimit", value: limits.low },
    { what: "highLimit", value: limits.high },
    { what: "neutral", value: ofPosition(neutral) },
    ...settings.map(ofSetting),
    { what: "failsafe", value: ofPosition(failsafe) },
  ];
}
