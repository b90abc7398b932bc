import type { SetupPlan } from "../setup-plan.ts";
import { restKey, type Sent, type StateKey } from "./entered.ts";
import type { DeflectionVerdict, LineVerdict, PulseVerdict } from "./verification.ts";

/** Servo pulse -> deflection of its surface, degrees; undefined where that was never measured. */
export type DeflectionAt = (channel: number, surface: string, pulseUs: number) => number | undefined;

/** What a hypothesis is held against. */
export interface Observed {
  readonly plan: SetupPlan;
  readonly pulses: readonly (PulseVerdict & { readonly readUs: number })[];
  readonly deflections: readonly (DeflectionVerdict & { readonly readDeg: number })[];
  /** What each channel sends where the plan was entered without a slip. */
  readonly planned: ReadonlyMap<number, Sent>;
  readonly keyOf: StateKey;
  readonly deflectionAt: DeflectionAt | undefined;
  /** How much worse than usual the pulse meter is, microseconds. */
  readonly extraUs: number;
}

/** The pulses that a hypothesis says each channel sends; a channel left out sends what the plan says. */
export interface Prediction {
  readonly sent: ReadonlyMap<number, Sent>;
  /** A number in it was fitted to readings that have a doubt of their own. */
  readonly fitted?: boolean;
  /** What the pulse meter shows too much, microseconds. */
  readonly meterUs?: number;
  /** The channels are read at another output of the receiver, whose power-up is not known. */
  readonly otherOutput?: boolean;
}

/** What was read, as far as these channels go. */
export function readingsOf(
  verdicts: readonly LineVerdict[],
  channels: ReadonlySet<number>,
  rest: Omit<Observed, "pulses" | "deflections">,
): Observed {
  return {
    ...rest,
    pulses: verdicts.flatMap((one) =>
      one.quantity === "pulse" && one.readUs !== undefined && channels.has(one.channel)
        ? [{ ...one, readUs: one.readUs }]
        : [],
    ),
    deflections: verdicts.flatMap((one) =>
      one.quantity === "deflection" && one.readDeg !== undefined && channels.has(one.channel)
        ? [{ ...one, readDeg: one.readDeg }]
        : [],
    ),
  };
}

/** Whether every reading, those that agree with the plan too, is what the prediction gives. */
export function isExplained(observed: Observed, prediction: Prediction): boolean {
  return (
    observed.pulses.every((line) => pulseFits(line, observed, prediction)) &&
    observed.deflections.every((line) => deflectionFits(line, observed, prediction))
  );
}

/**
 * Whether a prediction has some pulse that was read elsewhere than the plan, by more than a number fitted to readings may be off: one
 * that has not says nothing, and would fit by its slack alone.
 */
export function isMoved(observed: Observed, { sent, meterUs = 0 }: Prediction): boolean {
  const { pulses, planned, keyOf } = observed;
  return pulses.some((line) => {
    const range = (all: ReadonlyMap<number, Sent>) => {
      const own = all.get(line.channel);
      return own === undefined ? undefined : rangeOf(line, own, keyOf);
    };
    const was = range(planned);
    const is = range(sent) ?? was;
    return was?.some((us, end) => Math.abs((is?.[end] ?? us) + meterUs - us) > fitSlackUs(observed)) === true;
  });
}

/** The pulse of a line where the channel sends this; undefined for what is no single pulse or not the transmitter's. */
export function predictedUs(
  { place }: Pick<PulseVerdict, "place">,
  sent: Sent,
  keyOf: StateKey,
): number | undefined {
  switch (place.kind) {
    case "limitLow":
      return sent.lowUs;
    case "limitHigh":
      return sent.highUs;
    case "neutral":
      return sent.byState.get(restKey);
    case "failsafe":
      return sent.failsafeUs;
    case "setting":
      return sent.byState.get(keyOf(place));
    default:
      return undefined;
  }
}

function pulseFits(
  line: Observed["pulses"][number],
  observed: Observed,
  { sent, fitted = false, meterUs = 0, otherOutput = false }: Prediction,
): boolean {
  const { keyOf, extraUs } = observed;
  const own = sent.get(line.channel);
  const isReceivers = line.place.kind === "powerUp";
  if (own !== undefined && isReceivers && otherOutput) return true;
  const expected = own === undefined || isReceivers ? line.expectedUs : rangeOf(line, own, keyOf);
  if (expected === undefined) return true;
  const [lowUs, highUs] = expected;
  const slackUs = line.withinUs + extraUs + (fitted ? fitSlackUs(observed) : 0);
  const trueUs = line.readUs - meterUs;
  return trueUs >= lowUs - slackUs && trueUs <= highUs + slackUs;
}

/** How far a number fitted to readings may be off, microseconds: as far as one reading. */
function fitSlackUs({ extraUs }: Observed): number {
  return 1 + extraUs;
}

function rangeOf(line: PulseVerdict, sent: Sent, keyOf: StateKey): readonly [number, number] | undefined {
  const pulses = [...sent.byState.values()];
  if (line.place.kind === "sweptLow") return [sent.lowUs, Math.min(...pulses)];
  if (line.place.kind === "sweptHigh") return [Math.max(...pulses), sent.highUs];
  const pulseUs = predictedUs(line, sent, keyOf);
  return pulseUs === undefined ? undefined : [pulseUs, pulseUs];
}

/** By the response where it is known, by another setting's value where the pulse is that setting's, else by direction alone. */
function deflectionFits(
  line: Observed["deflections"][number],
  observed: Observed,
  { sent }: Prediction,
): boolean {
  const { plan, keyOf, deflectionAt } = observed;
  const { channel: number, place, byDeg = 0 } = line;
  const channel = plan.channels.find((one) => one.channel === number);
  const pulseUs = sent.get(number)?.byState.get(keyOf(place));
  const own = channel?.settings.find((one) => one.surface === place.surface && keyOf(one) === keyOf(place));
  if (channel === undefined || own === undefined || pulseUs === undefined) return line.outcome !== "differs";
  const changeUs = pulseUs - own.enter.pulseUs;
  const stepUs = 0.5;
  if (Math.abs(changeUs) <= stepUs) return line.outcome !== "differs";
  const same = channel.settings.find(
    ({ surface, enter }) => surface === place.surface && Math.abs(enter.pulseUs - pulseUs) <= stepUs,
  );
  const expectedDeg = deflectionAt?.(number, place.surface, pulseUs) ?? same?.gives?.deflectionDeg;
  if (expectedDeg !== undefined) return Math.abs(line.readDeg - expectedDeg) <= (line.withinDeg ?? Infinity);
  const grows = changeUs > 0 === (channel.direction === "rising");
  return line.outcome !== "differs" || byDeg > 0 === grows;
}
