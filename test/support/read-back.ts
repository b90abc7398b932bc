import type { AsBuilt, AsBuiltChannel } from "../../packages/core/src/plan/as-built.ts";
import { fingerprintOf } from "../../packages/core/src/plan/fingerprint.ts";
import type { PlanChannel, SetupPlan } from "../../packages/core/src/plan/setup-plan.ts";
import type { Random } from "../../packages/core/src/uncertainty/random.ts";

/** What stands in a channel of a transmitter, as a slip at the keys can change it. Shares no code with `verify`. */
export interface Typed {
  low: number;
  high: number;
  rest: number;
  failsafe: number;
  /** By position in the plan's list of settings. */
  settings: number[];
  centreUs: number;
  belowUs: number;
  aboveUs: number;
  shiftUs: number;
  reversed: boolean;
}

/** A transmitter with the plan entered without a slip. */
export function typeIn(plan: SetupPlan): Typed[] {
  const { radio } = plan;
  const scale = radio.per100Us;
  return plan.channels.map((channel) => {
    const [low, high] = [channel.limits.low, channel.limits.high];
    const dial = (percent: number, pulseUs: number) =>
      radio.endPoints === "clamp"
        ? percent
        : -100 + (200 * (pulseUs - low.pulseUs)) / (high.pulseUs - low.pulseUs);
    const first = channel.settings.find((one) => one.detent !== undefined && one.when === undefined)?.enter;
    const rest = first ?? channel.neutral;
    return {
      low: low.percent,
      high: high.percent,
      rest: dial(rest.percent, rest.pulseUs),
      failsafe: dial(channel.failsafe.percent, channel.failsafe.pulseUs),
      settings: channel.settings.map(({ enter }) => dial(enter.percent, enter.pulseUs)),
      centreUs: radio.centreUs,
      belowUs: typeof scale === "number" ? scale : scale.below,
      aboveUs: typeof scale === "number" ? scale : scale.above,
      shiftUs: 0,
      reversed: false,
    };
  });
}

/** Pulses of one channel. */
export interface Pulses {
  low: number;
  high: number;
  rest: number;
  failsafe: number;
  settings: number[];
  powerUp: number | undefined;
}

/** What a pulse meter finds on it. */
export function measure(plan: SetupPlan, channel: PlanChannel, typed: Typed): Pulses {
  const pulse = (percent: number) =>
    typed.centreUs + (percent / 100) * (percent < 0 ? typed.belowUs : typed.aboveUs);
  const mirror = (us: number) => {
    if (!typed.reversed) return us;
    const off = us - typed.centreUs;
    return pulse((-100 * off) / (off < 0 ? typed.belowUs : typed.aboveUs));
  };
  const low = Math.min(pulse(typed.low), pulse(typed.high));
  const high = Math.max(pulse(typed.low), pulse(typed.high));
  const clamped = plan.radio.endPoints === "clamp";
  const share = (value: number) =>
    pulse(typed.low) + ((value + 100) / 200) * (pulse(typed.high) - pulse(typed.low));
  const send = (value: number) =>
    mirror(Math.max(low, Math.min(high, (clamped ? pulse(value) : share(value)) + typed.shiftUs)));
  return {
    low: Math.min(mirror(low), mirror(high)),
    high: Math.max(mirror(low), mirror(high)),
    rest: send(typed.rest),
    failsafe: mirror(clamped ? pulse(typed.failsafe) : share(typed.failsafe)),
    settings: typed.settings.map(send),
    powerUp: channel.powerUp?.pulseUs,
  };
}

/** Deflection of a servo at a pulse; undefined where it was never measured. */
export type Respond = (channel: number, surface: string, pulseUs: number) => number | undefined;

/**
 * The as-built file of pulses and of deflections, each deflection undefined where none is known. `noise` draws from -1 to 1: of a
 * pulse that is microseconds, of a deflection a share of half its doubt.
 */
export function writeDown(
  plan: SetupPlan,
  pulses: readonly Pulses[],
  deflections: readonly (readonly (number | undefined)[])[],
  random: Random,
): AsBuilt {
  const noise = () => (random() * 2 - 1) * 0.9;
  return {
    format: "hingeline/as-built",
    version: 1,
    model: plan.model,
    plan: fingerprintOf(plan),
    channels: plan.channels.map((channel, index): AsBuiltChannel => {
      const found = pulses[index];
      if (found === undefined) return { channel: channel.channel };
      const all = [found.rest, ...found.settings];
      return {
        channel: channel.channel,
        limitLowUs: found.low + noise(),
        limitHighUs: found.high + noise(),
        sweptLowUs: Math.max(found.low, Math.min(...all)) + noise(),
        sweptHighUs: Math.min(found.high, Math.max(...all)) + noise(),
        neutralUs: found.rest + noise(),
        failsafeUs: found.failsafe + noise(),
        ...(found.powerUp === undefined ? {} : { powerUpUs: found.powerUp + noise() }),
        settings: channel.settings.map(({ control, detent, stick, when, surface, gives }, at) => {
          const deg = deflections[index]?.[at];
          return {
            control,
            ...(detent === undefined ? {} : { detent }),
            ...(stick === undefined ? {} : { stick }),
            ...(when === undefined ? {} : { when }),
            surface,
            pulseUs: (found.settings[at] ?? 0) + noise(),
            ...(deg === undefined
              ? {}
              : { deflectionDeg: deg + (noise() * (gives?.uncertaintyDeg ?? 0)) / 2 }),
          };
        }),
      };
    }),
  };
}
