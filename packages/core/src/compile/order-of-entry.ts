import { hasErrors } from "../plan/has-errors.ts";
import { scaleOf } from "../plan/scale-of.ts";
import type { PlanInTheMaking, ProcedureStep, SetupPlan } from "../plan/setup-plan.ts";
import { toPulse } from "../signal/percent.ts";
import type { SignalScale } from "../signal/signal-scale.ts";
import { isInside } from "../transmitter/interval.ts";
import { reach } from "../transmitter/reach.ts";
import type { Transmitter } from "../transmitter/transmitter.ts";
import { pct } from "../units/quantity.ts";
import { type Changes, listChanges } from "./order-changes.ts";
import { checkSteps } from "./order-check-steps.ts";
import { connectSteps } from "./order-connect-steps.ts";
import { enterChannels, enteredState, factoryFor } from "./order-edits.ts";
import { entrySteps, type OrderFacts, prepareSteps } from "./order-entry-steps.ts";
import { type Bounds, walkOrder } from "./order-walk.ts";

// Assumption of experience: what a servo without a linkage takes; more where its bench went further.
const bareServoUs = [900, 2100] as const;
// Common practice, no source: a pulse meter is right to 1 us.
const meterUs = 1;

/**
 * The order in which a plan is entered and checked: from an untouched memory, or where `from` is what is entered now, only what
 * differs. At every step no powered output can leave what is safe for it, even with a value half typed: the simulated transmitter
 * has gone through all of it. Empty where the plan has an error, where nothing differs, or where the sums of entered values
 * could leave the safe pulses (see findUnsafeSums).
 */
export function orderOfEntry(plan: PlanInTheMaking, from?: SetupPlan): readonly ProcedureStep[] {
  if (hasErrors(plan)) return [];
  const signedOff = from === undefined || hasErrors(from) ? undefined : from;
  const changes = listChanges(plan, signedOff);
  if (changes.changed.length === 0 && changes.gone.length === 0) return [];
  const start = startState(plan, signedOff, changes);
  const bounds = boundsOf(plan);
  const inPlace = isInPlace(plan, changes);
  return (
    (inPlace ? walkOrder(draft(plan, changes, true), start, bounds) : undefined) ??
    walkOrder(draft(plan, changes, false), start, bounds) ??
    []
  );
}

/** Channels on which a sum of entered values could leave the safe pulses: on a radio without a clamp nothing holds them. */
export function findUnsafeSums(
  plan: PlanInTheMaking,
): readonly { readonly channel: number; readonly reachUs: readonly [number, number] }[] {
  // A clamp cuts every sum at the entered limits.
  if (plan.radio.endPoints === "clamp") return [];
  const entered = enteredState(plan);
  return plan.channels.flatMap(({ channel, safeUs }) => {
    const reachUs = reach(entered, channel);
    return reachUs === undefined || isInside(reachUs, safeUs, 1e-9) ? [] : [{ channel, reachUs }];
  });
}

function draft(plan: PlanInTheMaking, changes: Changes, inPlace: boolean) {
  const facts: OrderFacts = { radio: plan.radio, changes, inPlace };
  return [...prepareSteps(facts), ...entrySteps(facts), ...checkSteps(facts), ...connectSteps(facts)];
}

/**
 * Whether the linkages can stay on: nothing is entered from nothing, a clamp holds whatever is typed, and the failsafe that the
 * receiver keeps until it hears the new one is still safe. Where limits scale, nothing holds a mistyped value.
 */
function isInPlace({ radio }: PlanInTheMaking, { changed }: Changes): boolean {
  const scale = scaleOf(radio);
  return (
    radio.endPoints === "clamp" &&
    changed.every(({ from, to }) => {
      if (from === undefined) return false;
      const failsafeUs = toPulse(scale, pct(from.failsafePercent));
      return isInside([failsafeUs, failsafeUs], to.safeUs);
    })
  );
}

function startState(plan: PlanInTheMaking, from: SetupPlan | undefined, changes: Changes): Transmitter {
  const entered = [...changes.kept, ...changes.changed.flatMap((change) => change.from ?? [])];
  return enterChannels(factoryFor(plan, ...(from === undefined ? [] : [from])), entered);
}

function boundsOf(plan: PlanInTheMaking): ReadonlyMap<number, Bounds> {
  const readingUs = stepUs(scaleOf(plan.radio)) / 2 + meterUs;
  return new Map(
    plan.channels.map(({ channel, safeUs, extremes }) => [
      channel,
      {
        safeUs,
        askedUs: [extremes.low.pulseUs, extremes.high.pulseUs],
        servoUs: [Math.min(bareServoUs[0], safeUs[0]), Math.max(bareServoUs[1], safeUs[1])],
        readingUs,
      },
    ]),
  );
}

/** The pulse span of one step, on the coarser side. */
function stepUs(scale: SignalScale): number {
  return Math.max(toPulse(scale, scale.step) - scale.centre, scale.centre - toPulse(scale, pct(-scale.step)));
}
