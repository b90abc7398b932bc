import type { PlanChannel } from "../setup-plan.ts";
import { type Entered, restKey, type Sent, send } from "./entered.ts";
import type { Observed, Prediction } from "./observed.ts";
import type { CauseKind, PulseVerdict } from "./verification.ts";

/** A cause that may be, before it is held against the readings. */
export interface Hypothesis extends CauseFacts {
  readonly kind: CauseKind;
  readonly channels: readonly number[];
  readonly prediction: Prediction;
}

/** What its sentence needs. */
export interface CauseFacts {
  /** "channel 5 (flapLeft)", or several. */
  readonly where?: string;
  readonly other?: string;
  /** "flap at landing". */
  readonly place?: string;
  readonly otherPlace?: string;
  readonly numbers?: Readonly<Record<string, number>>;
  /** Whether what was typed is a share between the limits, not a percent. */
  readonly byShare?: boolean;
}

/** A channel with what is typed for it, and what of it was read. */
export interface Suspect {
  readonly plan: PlanChannel;
  readonly entered: Entered;
  readonly observed: Observed;
}

/** What is predicted where one channel is typed otherwise. */
export function typed(...entered: readonly Entered[]): Prediction {
  return { sent: new Map(entered.map((one): [number, Sent] => [one.channel, send(one)])) };
}

/** The same, with a number that was fitted to the readings. */
export function fitted(...entered: readonly Entered[]): Prediction {
  return { ...typed(...entered), fitted: true };
}

/** One value in place of another. */
export function withValue(entered: Entered, key: string, value: number): Entered {
  return { ...entered, values: new Map([...entered.values, [key, value]]) };
}

/** Every value but the limits and what is stored, changed. */
export function mapValues(entered: Entered, change: (value: number, key: string) => number): Entered {
  return {
    ...entered,
    values: new Map([...entered.values].map(([key, value]) => [key, change(value, key)])),
  };
}

/** The readings of control states, each with its key. */
export function stateLines({
  pulses,
  keyOf,
}: Observed): readonly { readonly key: string; readonly line: PulseVerdict & { readonly readUs: number } }[] {
  return pulses.flatMap((line) =>
    line.place.kind === "setting"
      ? [{ key: keyOf(line.place), line }]
      : line.place.kind === "neutral"
        ? [{ key: restKey, line }]
        : [],
  );
}

/** The middle of a list, undefined where it is empty; of two in the middle the lower. */
export function medianOf(values: readonly number[]): number | undefined {
  return values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) / 2)];
}
