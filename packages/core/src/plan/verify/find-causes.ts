import type { SetupPlan } from "../setup-plan.ts";
import { causeSentences } from "./cause-sentences.ts";
import { channelFaults } from "./channel-faults.ts";
import { enteredOf, stateKeys } from "./entered.ts";
import type { CauseFacts, Hypothesis, Suspect } from "./hypothesis.ts";
import { type LinkageFault, linkageFaults, sidesMisread } from "./linkage-faults.ts";
import { type DeflectionAt, isExplained, type Observed, readingsOf } from "./observed.ts";
import { planFaults } from "./plan-faults.ts";
import { valueSlips } from "./value-slips.ts";
import type { Cause, CauseKind, Verdict } from "./verification.ts";

/**
 * Every single cause that would give all readings, those that agree too. Where none does, what would give all readings of each channel
 * on its own. Empty where nothing differs. Exact causes go before those with a number fitted to the readings.
 */
export function findCauses(
  plan: SetupPlan,
  verdicts: readonly Verdict[],
  { deflectionAt, extraUs }: { readonly deflectionAt: DeflectionAt | undefined; readonly extraUs: number },
): readonly Cause[] {
  const differing = new Set(
    verdicts.flatMap((one) => (one.quantity !== "match" && one.outcome === "differs" ? [one.channel] : [])),
  );
  if (differing.size === 0) return [];
  const rest = { plan, keyOf: stateKeys(plan), deflectionAt, extraUs };
  const readings = (channels: readonly number[]) => readingsOf(verdicts, new Set(channels), rest);
  const entered = enteredOf(plan);
  const suspects = plan.channels.flatMap((channel, index): Suspect[] => {
    const own = entered[index];
    return own === undefined ? [] : [{ plan: channel, entered: own, observed: readings([channel.channel]) }];
  });
  const observed = readings(plan.channels.map(({ channel }) => channel));
  const whole = [
    ...held(planFaults(suspects, observed), observed, true),
    ...sidesMisread(observed).map((fault) => causeOf(fault, true)),
  ];
  const single = suspects
    .filter(({ plan: { channel } }) => differing.has(channel))
    .flatMap((suspect) => {
      const all = differing.size === 1;
      return [
        ...held([...channelFaults(suspect), ...valueSlips(suspect, suspects)], suspect.observed, all),
        ...linkageFaults(suspect).map((fault) => causeOf(fault, all)),
      ];
    });
  const found = [...whole, ...single];
  const complete = found.filter(({ all }) => all);
  return distinct(complete.length > 0 ? complete : found);
}

/** A cause without readings of its own: the file says which plan it was measured on. */
export function revisionCause(channels: readonly number[]): Cause {
  return causeOf({ kind: "otherRevision", channels }, true);
}

function held(hypotheses: readonly Hypothesis[], observed: Observed, all: boolean): readonly Cause[] {
  const order = (one: Hypothesis) => Number(one.prediction.fitted ?? false);
  return hypotheses
    .filter(({ prediction }) => isExplained(observed, prediction))
    .toSorted((a, b) => order(a) - order(b))
    .map((one) => causeOf(one, all));
}

function causeOf(
  facts: CauseFacts & { readonly kind: CauseKind; readonly channels: readonly number[] } & Partial<LinkageFault>,
  all: boolean,
): Cause {
  const { kind, channels, numbers = {} } = facts;
  return { kind, channels, all, ...causeSentences[kind](facts), numbers };
}

/** The first of each message; of a fitted number the first that fits. */
function distinct(causes: readonly Cause[]): readonly Cause[] {
  const seen = new Set<string>();
  return causes.filter(({ kind, channels, message, numbers }) => {
    const isFitted = "limitUs" in numbers || "shiftUs" in numbers || "trimPercent" in numbers;
    const key = isFitted ? `${kind} ${channels.join()} ${message.split(/[\d-]/)[0]}` : message;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
