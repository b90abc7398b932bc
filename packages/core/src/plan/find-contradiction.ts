import { type Address, formatAddress } from "../address/address.ts";
import { toPulse } from "../signal/percent.ts";
import type { SignalScale } from "../signal/signal-scale.ts";
import { formatTrimmed } from "../units/format.ts";
import { pct } from "../units/quantity.ts";
import { hasErrors } from "./has-errors.ts";
import { scaleOf } from "./scale-of.ts";
import type { PercentPulse, PlanChannel, SetupPlan } from "./setup-plan.ts";

/** Percents and pulses of a plan are computed from each other; more than their last digits is another value. */
const sameUs = 1e-6;

/**
 * The first place at which a plan that may be entered contradicts itself, as a sentence; undefined where there is none. A plan with an
 * error holds what is wrong with it and is not looked at.
 */
export function findContradiction(plan: SetupPlan): string | undefined {
  if (hasErrors(plan)) return undefined;
  const { radio, channels } = plan;
  const scale = scaleOf(radio);
  for (const [index, channel] of channels.entries()) {
    const problem = channels.slice(0, index).some((one) => one.channel === channel.channel)
      ? { at: ["channel"], says: `channel ${channel.channel} stands there before` }
      : problemOf(channel, scale);
    if (problem !== undefined)
      return `${formatAddress(["channels", index, ...problem.at])}: ${problem.says}.`;
  }
  return undefined;
}

interface Problem {
  readonly at: Address;
  readonly says: string;
}

function problemOf(channel: PlanChannel, scale: SignalScale): Problem | undefined {
  const { safeUs, limits, settings } = channel;
  if (safeUs[0] >= safeUs[1]) return { at: ["safeUs"], says: "the first is the lower" };
  if (limits.low.pulseUs >= limits.high.pulseUs)
    return { at: ["limits"], says: "the low limit is not below the high limit" };
  const limited = [limits.low.pulseUs, limits.high.pulseUs] as const;
  const values: readonly (readonly [Address, PercentPulse, readonly [number, number]])[] = [
    [["limits", "low"], limits.low, safeUs],
    [["limits", "high"], limits.high, safeUs],
    [["neutral"], channel.neutral, limited],
    [["failsafe"], channel.failsafe, limited],
    ...(channel.curve ?? []).map((point, index) => [["curve", index], point, limited] as const),
    ...settings.map(({ enter }, index) => [["settings", index, "enter"], enter, limited] as const),
  ];
  for (const [at, value, [lowUs, highUs]] of values) {
    if (Math.abs(toPulse(scale, pct(value.percent)) - value.pulseUs) > sameUs)
      return { at, says: `${us(value.pulseUs)} is not ${formatTrimmed(value.percent, 3)} % on this radio` };
    if (value.pulseUs < lowUs - sameUs || value.pulseUs > highUs + sameUs)
      return { at, says: `${us(value.pulseUs)} lies outside ${us(lowUs)} to ${us(highUs)}` };
  }
  const both = settings.findIndex(({ detent, stick }) => (detent === undefined) === (stick === undefined));
  return both < 0
    ? undefined
    : { at: ["settings", both], says: "it has neither a detent nor a stick's end, or both" };
}

function us(pulseUs: number): string {
  return `${formatTrimmed(pulseUs, 3)} us`;
}
