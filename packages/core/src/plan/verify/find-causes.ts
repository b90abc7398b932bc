import type { SetupPlan } from "../setup-plan.ts";
import { causeSentences } from "./cause-sentences.ts";
import { channelFaults } from "./channel-faults.ts";
import { enteredOf, send, stateKeys } from "./entered.ts";
import type { CauseFacts, Hypothesis, Suspect } from "./hypothesis.ts";
import { linkageFaults } from "./linkage-faults.ts";
import { type DeflectionAt, isExplained, isMoved, type Observed, readingsOf } from "./observed.ts";
import { planFaults } from "./plan-faults.ts";
import { valueSlips } from "./value-slips.ts";
import type { Cause, CauseKind, LineVerdict } from "./verification.ts";

/**
 * Every single cause that would give all readings, those that agree too. Where none does, what would give all readings of each channel
 * on its own. Empty where nothing differs. Of each kind of fault, exact causes go before those with a number fitted to the readings.
 */
export function findCauses(
  plan: SetupPlan,
  verdicts: readonly LineVerdict[],
  { deflectionAt, extraUs }: { readonly deflectionAt: DeflectionAt | undefined; readonly extraUs: number },
): readonly Cause[] {
  const differing = new Set(
    verdicts.flatMap((one) => (one.quantity !== "match" && one.outcome === "differs" ? [one.channel] : [])),
  );
  if (differing.size === 0) return [];
  const entered = enteredOf(plan);
  const planned = new Map(entered.map((one) => [one.channel, send(one)]));
  const rest = { plan, planned, keyOf: stateKeys(plan), deflectionAt, extraUs };
  const readings = (channels: readonly number[]) => readingsOf(verdicts, new Set(channels), rest);
  const suspects = plan.channels.flatMap((channel, index): Suspect[] => {
    const own = entered[index];
    return own === undefined ? [] : [{ plan: channel, entered: own, observed: readings([channel.channel]) }];
  });
  const observed = readings(plan.channels.map(({ channel }) => channel));
  const whole = held(planFaults(suspects, observed), observed, true);
  const single = suspects
    .filter(({ plan: { channel } }) => differing.has(channel))
    .flatMap((suspect) => {
      const all = differing.size === 1;
      return [
        ...held([...channelFaults(suspect), ...valueSlips(suspect, suspects)], suspect.observed, all),
        ...linkageFaults(suspect).map((fault) => causeOf(fault, all)),
      ];
    });
  // Where one of several channels is wrong, the fault is more likely in it than in what they share.
  const isLone = differing.size === 1 && plan.channels.length > 1;
  const found = isLone ? [...single, ...whole] : [...whole, ...single];
  const complete = found.filter(({ all }) => all);
  const causes = firstOf(complete.length > 0 ? complete : found, ({ message }) => message);
  // That a value is another says no more than the reading, unless nothing else can be said of its channel.
  return causes.filter(
    ({ kind, channels: [channel] }) =>
      kind !== "otherValue" ||
      causes.every((one) => one.kind === "otherValue" || !one.channels.includes(channel ?? 0)),
  );
}

/** A cause without readings of its own: the file says which plan it was measured on. */
export function revisionCause(channels: readonly number[]): Cause {
  return causeOf({ kind: "otherRevision", channels }, true);
}

/** Those that fit, exact ones first; of several numbers fitted for the same thing the first that fits. */
function held(hypotheses: readonly Hypothesis[], observed: Observed, all: boolean): readonly Cause[] {
  const fits = hypotheses.filter(({ prediction }) => isExplained(observed, prediction));
  const fitted = fits.filter(({ prediction }) => prediction.fitted && isMoved(observed, prediction));
  return [
    ...fits.filter(({ prediction }) => !prediction.fitted),
    ...firstOf(fitted, ({ kind, channels, place = "" }) => `${kind} ${channels.join()} ${place}`),
  ].map((one) => causeOf(one, all));
}

function causeOf(
  facts: CauseFacts & { readonly kind: CauseKind; readonly channels: readonly number[] },
  all: boolean,
): Cause {
  const { kind, channels, numbers = {} } = facts;
  return { kind, channels, all, ...causeSentences[kind](facts), numbers };
}

function firstOf<T>(list: readonly T[], keyOf: (item: T) => string): readonly T[] {
  return [...new Map(list.toReversed().map((item) => [keyOf(item), item])).values()].toReversed();
}
