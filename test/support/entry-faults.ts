import type { PlanChannel, Position, SetupPlan } from "../../packages/core/src/plan/setup-plan.ts";
import type { CauseKind } from "../../packages/core/src/plan/verify/verification.ts";
import type { Random } from "../../packages/core/src/uncertainty/random.ts";
import { measure, type Pulses, type Typed, typeIn } from "./read-back.ts";

/** A fault put into an otherwise right set of readings: what it does to the pulses, and to what channels. */
export interface Injected {
  readonly pulses: Pulses[];
  /** Those that the cause must name; none where that does not matter. */
  readonly channels: readonly number[];
  /** Whether the pulses are only read wrong, so that the surfaces stand right. */
  readonly onlyRead?: true;
}

export type Fault = (plan: SetupPlan, random: Random) => Injected | undefined;

/** Every fault of entry or of the signal, by the cause that `verify` should name. */
export const entryFaults: Readonly<Partial<Record<CauseKind, Fault>>> = {
  testerOffset: (plan, random) => {
    if (!hasPulsesApart(plan, 5)) return undefined;
    const offset = (random() < 0.5 ? -1 : 1) * (15 + random() * 20);
    return {
      onlyRead: true,
      channels: plan.channels.map(({ channel }) => channel),
      pulses: right(plan).map((one) => ({
        low: one.low + offset,
        high: one.high + offset,
        rest: one.rest + offset,
        failsafe: one.failsafe + offset,
        settings: one.settings.map((us) => us + offset),
        powerUp: one.powerUp === undefined ? undefined : one.powerUp + offset,
      })),
    };
  },
  otherScale: (plan, random) => {
    if (!hasPulsesApart(plan, 7)) return undefined;
    const ratio = random() < 0.5 ? 0.8 : 1.15;
    return changed(
      plan,
      () => true,
      (typed) => {
        typed.belowUs *= ratio;
        typed.aboveUs *= ratio;
      },
    );
  },
  limitsSwapped: (plan, random) =>
    changed(plan, pickOne(plan, random), (typed) => {
      [typed.low, typed.high] = [-typed.high, -typed.low];
    }),
  directionReversed: (plan, random) =>
    changed(plan, pickOne(plan, random), (typed) => {
      typed.reversed = true;
    }),
  limitTooNarrow: (plan, random) =>
    changed(plan, pickOne(plan, random), (typed) => {
      const cut = (typed.high - typed.low) * (0.1 + 0.2 * random());
      if (random() < 0.5) typed.low += cut;
      else typed.high -= cut;
    }),
  limitTooWide: (plan, random) =>
    changed(plan, pickOne(plan, random), (typed) => {
      if (random() < 0.5) typed.low -= 10 + random() * 10;
      else typed.high += 10 + random() * 10;
    }),
  centreShifted: (plan, random) =>
    changed(plan, pickOne(plan, random), (typed, channel) => {
      const [first, second] = new Set(statesOf(plan, channel));
      if (first !== undefined && second !== undefined) typed.shiftUs = random() < 0.5 ? 25 : -25;
    }),
  minusSign: (plan, random) => onState(plan, random, (value) => -value),
  notEntered: (plan, random) => onState(plan, random, (_, { rest }) => (random() < 0.5 ? 0 : rest)),
  decimalPoint: (plan, random) =>
    onState(plan, random, (value) => {
      const reach = reachOf(plan);
      return Math.max(-reach, Math.min(reach, value * 10));
    }),
  digitsSwapped: (plan, random) =>
    onState(plan, random, (value) => {
      const decimals = String(plan.radio.stepPercent).split(".")[1]?.length ?? 0;
      const text = Math.abs(value).toFixed(decimals);
      const swapped = Math.sign(value) * Number(text.replace(/^(\d)(\d)/, "$2$1"));
      return Math.abs(swapped) > reachOf(plan) ? value : swapped;
    }),
  otherEndPoints: (plan) => {
    const { radio, channels } = plan;
    const endPoints = radio.endPoints === "clamp" ? "scale" : "clamp";
    const other: SetupPlan = { ...plan, radio: { ...radio, endPoints } };
    return {
      channels: channels.map(({ channel }) => channel),
      pulses: typeIn(plan).map((typed, index) => measure(other, at(channels, index), typed)),
    };
  },
  wrongColumn: (plan, random) => {
    const [isAdded, isNeutral, isFailsafe, isOne] = [0, 1, 2, 3].map(() => random() < 0.5);
    const column = (one: Position) => (plan.radio.endPoints === "clamp" ? one.sharePercent : one.percent);
    return changed(
      plan,
      isOne === true || isAdded === true ? pickOne(plan, random) : () => true,
      (typed, channel) => {
        const { settings, neutral, failsafe } = channel;
        const states = statesOf(plan, channel);
        typed.settings = settings.map(({ enter }, index) =>
          isAdded ? (states[index] === "rest" ? typed.rest : enter.addPercent) : column(enter),
        );
        // What a detent gives at rest stands among the settings; of a stick it stands with the limits.
        typed.rest =
          typed.settings[states.indexOf("rest")] ?? (isNeutral && !isAdded ? column(neutral) : typed.rest);
        if (isNeutral && isFailsafe && !isAdded) typed.failsafe = column(failsafe);
      },
    );
  },
  wrongChannel: (plan, random) => {
    const other = plan.channels[Math.floor(random() * plan.channels.length)];
    const theirs = other === undefined ? [] : statesOf(plan, other);
    const values = typeIn(plan).find((_, index) => plan.channels[index] === other)?.settings ?? [];
    return changed(plan, pickOne(plan, random), (typed, channel) => {
      const states = statesOf(plan, channel);
      const shared = states.find((state) => state !== "rest" && theirs.includes(state));
      if (shared === undefined) return;
      const value = values[theirs.indexOf(shared)] ?? 0;
      typed.settings = typed.settings.map((own, index) => (states[index] === shared ? value : own));
    });
  },
  otherDetent: (plan, random) =>
    onState(plan, random, (value, { settings }) => settings[Math.floor(random() * settings.length)] ?? value),
  detentsSwapped: (plan, random) =>
    changed(plan, pickOne(plan, random), (typed, channel) => {
      const states = statesOf(plan, channel);
      const moved = [...new Set(states)].filter((state) => state !== "rest");
      const [first, second] = [moved[0], moved.at(-1)];
      if (first === undefined || second === undefined || first === second) return;
      const a = typed.settings[states.indexOf(first)] ?? 0;
      const b = typed.settings[states.indexOf(second)] ?? 0;
      for (const [index, state] of states.entries())
        if (state === first) typed.settings[index] = b;
        else if (state === second) typed.settings[index] = a;
    }),
  failsafeNotSet: (plan, random) =>
    changed(plan, pickOne(plan, random), (typed) => {
      typed.failsafe = 0;
    }),
  channelsSwapped: (plan, random) => exchanged(plan, random, false),
  sidesSwapped: (plan, random) => exchanged(plan, random, true),
  trimLeftIn: (plan, random) => {
    const sticks = plan.channels
      .flatMap(({ settings }) => settings)
      .filter(({ stick, when }) => stick === 1 && when === undefined);
    const control = sticks[Math.floor(random() * sticks.length)]?.control;
    const injected = changed(
      plan,
      () => control !== undefined,
      (typed, channel) => {
        const at = channel.settings.findIndex(
          (one) => one.control === control && one.stick === 1 && one.when === undefined,
        );
        if (at < 0) return;
        const add = 0.25 * ((typed.settings[at] ?? 0) - typed.rest);
        typed.rest += add;
        typed.settings = typed.settings.map((value) => value + add);
      },
    );
    return { ...injected, channels: [] };
  },
};

/** What is read of a plan that was entered without a slip. */
export function right(plan: SetupPlan): Pulses[] {
  return typeIn(plan).map((typed, index) => measure(plan, at(plan.channels, index), typed));
}

/** For each setting of a channel the state of the controls in which it is read; "rest" where none is moved. */
function statesOf({ channels }: SetupPlan, { settings }: PlanChannel): string[] {
  const first: Record<string, string> = {};
  for (const { control, detent, when } of channels.flatMap((one) => one.settings))
    if (detent !== undefined && when === undefined) first[control] ??= detent;
  return settings.map(({ control, detent, stick, when }) => {
    const state: Record<string, unknown> = { ...when, [control]: detent ?? stick };
    const moved = Object.keys(state).filter((name) => state[name] !== first[name]);
    return moved.length === 0
      ? "rest"
      : moved
          .sort()
          .map((name) => `${name}=${String(state[name])}`)
          .join();
  });
}

function changed(
  plan: SetupPlan,
  isMeant: (channel: PlanChannel) => boolean,
  change: (typed: Typed, channel: PlanChannel) => void,
): Injected {
  const meant = plan.channels.filter(isMeant);
  const pulses = typeIn(plan).map((typed, index) => {
    const channel = at(plan.channels, index);
    if (meant.includes(channel)) change(typed, channel);
    return measure(plan, channel, typed);
  });
  return { pulses, channels: meant.map(({ channel }) => channel) };
}

/** One state that is not rest, typed otherwise. */
function onState(
  plan: SetupPlan,
  random: Random,
  change: (value: number, typed: Typed) => number,
): Injected | undefined {
  return changed(plan, pickOne(plan, random), (typed, channel) => {
    const states = statesOf(plan, channel);
    const moved = [...new Set(states)].filter((state) => state !== "rest");
    const state = moved[Math.floor(random() * moved.length)];
    if (state === undefined) return;
    const value = change(typed.settings[states.indexOf(state)] ?? 0, typed);
    typed.settings = typed.settings.map((old, index) => (states[index] === state ? value : old));
  });
}

function exchanged(plan: SetupPlan, random: Random, asPair: boolean): Injected | undefined {
  const numberOf = (surface: string) =>
    plan.channels.findIndex(({ settings }) => settings.some((one) => one.surface === surface));
  const [pair] = plan.matches;
  const others = plan.channels.map((_, index) => index).sort(() => random() - 0.5);
  const [a = -1, b = -1] = asPair ? (pair?.surfaces ?? []).map(numberOf) : others;
  const first = plan.channels[a];
  const second = plan.channels[b];
  if (first === undefined || second === undefined || first === second) return undefined;
  const isPair = plan.matches.some(({ surfaces }) =>
    surfaces.every((name) =>
      [first, second].some(({ settings }) => settings.some((one) => one.surface === name)),
    ),
  );
  const pulses = right(plan);
  const [one, two] = [at(pulses, a), at(pulses, b)];
  // Which position of the other channel belongs to a setting is plain only where both list the same.
  const same = JSON.stringify(statesOf(plan, first)) === JSON.stringify(statesOf(plan, second));
  if (isPair !== asPair || !same) return undefined;
  pulses[a] = { ...two, powerUp: one.powerUp };
  pulses[b] = { ...one, powerUp: two.powerUp };
  return { pulses, channels: [first.channel, second.channel] };
}

/** The largest number that can be typed for a position. */
function reachOf({ radio }: SetupPlan): number {
  return radio.endPoints === "clamp" ? radio.reachPercent : 100;
}

/** Whether a plan has pulses enough, clearly apart, to tell a wrong scale from a wrong value. */
function hasPulsesApart(plan: SetupPlan, least: number): boolean {
  const pulses = right(plan).flatMap(({ low, high, rest, failsafe, settings }) => [
    low,
    high,
    rest,
    failsafe,
    ...settings,
  ]);
  return new Set(pulses.map((us) => Math.round(us / 40))).size > least;
}

function pickOne({ channels }: SetupPlan, random: Random): (channel: PlanChannel) => boolean {
  const chosen = channels[Math.floor(random() * channels.length)];
  return (channel) => channel === chosen;
}

function at<T>(list: readonly T[], index: number): T {
  const item = list[index];
  if (item === undefined) throw new Error(`nothing at ${index}`);
  return item;
}
