import type { PercentPulse, SetupPlan } from "../../packages/core/src/plan/setup-plan.ts";

/** Every pulse of a plan that lies outside its channel's safe pulses, with where it stands; none for a right plan. */
export function unsafePulses({ channels, radio }: Pick<SetupPlan, "channels" | "radio">): string[] {
  return channels.flatMap((channel) => {
    const [low, high] = channel.safeUs;
    const values: [string, PercentPulse][] = [
      ["limit low", channel.limits.low],
      ["limit high", channel.limits.high],
      ["neutral", channel.neutral],
      ["failsafe", channel.failsafe],
      ["extreme low", channel.extremes.low],
      ["extreme high", channel.extremes.high],
      ...channel.settings.map(({ control, enter }): [string, PercentPulse] => [control, enter]),
      ...(channel.curve ?? []).map((point): [string, PercentPulse] => ["curve", point]),
    ];
    return values
      .filter(
        ([, { pulseUs, percent }]) =>
          !(pulseUs >= low && pulseUs <= high && Math.abs(percent) <= radio.reachPercent + 1e-9),
      )
      .map(
        ([what, { pulseUs }]) => `channel ${channel.channel} ${what}: ${pulseUs} outside ${low} to ${high}`,
      );
  });
}
