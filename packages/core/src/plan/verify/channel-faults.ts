import { toPercent, toPulse } from "../../signal/percent.ts";
import { pulseToShare } from "../../signal/share.ts";
import { pct, us } from "../../units/quantity.ts";
import { nameChannel } from "../name-channel.ts";
import { columnFaults } from "./column-faults.ts";
import { type Entered, send } from "./entered.ts";
import {
  fitted,
  type Hypothesis,
  mapValues,
  medianOf,
  type Suspect,
  stateLines,
  typed,
  withValue,
} from "./hypothesis.ts";
import { predictedUs } from "./observed.ts";
import { differingKeys, stateNames } from "./value-slips.ts";

/** What may be wrong with one channel as a whole. */
export function channelFaults(suspect: Suspect): readonly Hypothesis[] {
  const { plan, entered } = suspect;
  const fault = (
    kind: Hypothesis["kind"],
    prediction: Hypothesis["prediction"],
    facts: Omit<Hypothesis, "kind" | "channels" | "prediction"> = {},
  ): Hypothesis => ({ kind, channels: [plan.channel], prediction, where: nameChannel(plan), ...facts });
  return [
    ...columnFaults([suspect], nameChannel(plan)),
    ...reversals(entered).map((one) => fault("directionReversed", typed(one))),
    fault(
      "limitsSwapped",
      typed({ ...entered, lowPercent: -entered.highPercent, highPercent: -entered.lowPercent }),
    ),
    ...swaps(suspect).map(([one, place, otherPlace]) =>
      fault("detentsSwapped", typed(one), { place, otherPlace }),
    ),
    ...otherLimits(suspect).map(({ changed, tighter, low, limitUs, wasUs }) =>
      fault(tighter ? "limitTooNarrow" : "limitTooWide", fitted(changed), {
        place: low ? "the low limit" : "the high limit",
        numbers: { limitUs, wasUs },
      }),
    ),
    ...shifts(suspect).map(({ changed, shiftUs }) =>
      fault("centreShifted", fitted(changed), { numbers: { shiftUs } }),
    ),
  ];
}

/** The output turned, its limits with it or not, its failsafe with it or not. */
function reversals(entered: Entered): readonly Entered[] {
  const turned = mapValues(entered, (value) => -value);
  const back = toPercentOfFailsafe(entered);
  return [
    turned,
    { ...turned, failsafe: -entered.failsafe },
    { ...entered, mirrored: true },
    ...(back === undefined ? [] : [{ ...entered, mirrored: true, failsafe: back }]),
  ];
}

/** The failsafe value that, turned with the output, gives the pulse that the plan wants. */
function toPercentOfFailsafe(entered: Entered): number | undefined {
  const { scale } = entered;
  const { failsafeUs, lowUs, highUs } = send(entered);
  const mirror = toPulse(scale, pct(-toPercent(scale, us(failsafeUs))));
  if (!entered.scaling) return toPercent(scale, us(mirror));
  return pulseToShare([lowUs, highUs], mirror);
}

function swaps(suspect: Suspect): readonly (readonly [Entered, string, string])[] {
  const { entered } = suspect;
  const names = stateNames(suspect);
  const differing = differingKeys(suspect);
  if (differing.size > 2) return [];
  const all = [...entered.values];
  return all.flatMap(([first, one], index) =>
    all
      .slice(index + 1)
      .flatMap(([second, two]) =>
        differing.has(first) || differing.has(second)
          ? [
              [
                withValue(withValue(entered, first, two), second, one),
                names.get(first) ?? "",
                names.get(second) ?? "",
              ] as const,
            ]
          : [],
      ),
  );
}

interface OtherLimit {
  readonly changed: Entered;
  readonly low: boolean;
  readonly tighter: boolean;
  readonly limitUs: number;
  readonly wasUs: number;
}

/** One limit elsewhere: where it was read, or where the positions that it cuts or stretches say that it is. */
function otherLimits(suspect: Suspect): readonly OtherLimit[] {
  const { entered, observed } = suspect;
  const { lowUs, highUs } = send(entered);
  return [true, false].flatMap((low) => {
    const wasUs = low ? lowUs : highUs;
    const kind = low ? "limitLow" : "limitHigh";
    const read = observed.pulses.find(({ place }) => place.kind === kind)?.readUs;
    const swept = observed.pulses.find(
      ({ place, outcome }) => place.kind === (low ? "sweptLow" : "sweptHigh") && outcome === "differs",
    )?.readUs;
    const pulses = read === undefined ? limitsFromStates(suspect, low) : [read];
    return [...pulses, ...(read === undefined && swept !== undefined ? [swept] : [])].map((limitUs) => {
      const percent = toPercent(entered.scale, us(limitUs));
      return {
        changed: { ...entered, ...(low ? { lowPercent: percent } : { highPercent: percent }) },
        low,
        tighter: low ? limitUs > wasUs : limitUs < wasUs,
        limitUs,
        wasUs,
      };
    });
  });
}

function limitsFromStates({ entered, observed }: Suspect, low: boolean): readonly number[] {
  const differing = stateLines(observed).filter(({ line }) => line.outcome === "differs");
  if (!entered.scaling) return [...new Set(differing.map(({ line }) => line.readUs))];
  const { lowUs, highUs } = send(entered);
  // The position nearest to the limit says best where the limit is.
  const [best] = differing
    .map(({ key, line }) => ({ share: entered.values.get(key) ?? 0, readUs: line.readUs }))
    .toSorted((a, b) => (low ? a.share - b.share : b.share - a.share));
  if (best === undefined) return [];
  const toHigh = 0.5 + best.share / 200;
  const [own, other] = low ? [1 - toHigh, toHigh * highUs] : [toHigh, (1 - toHigh) * lowUs];
  return own < 0.05 ? [] : [(best.readUs - other) / own];
}

/** All positions moved by as much, the limits with them or not. Asks for two positions at least. */
function shifts({
  entered,
  observed,
}: Suspect): readonly { readonly changed: Entered; readonly shiftUs: number }[] {
  const sent = send(entered);
  const lines = stateLines(observed);
  if (new Set(lines.map(({ key }) => key)).size < 2) return [];
  const spans = lines.flatMap(({ line }) => {
    const pulseUs = predictedUs(line, sent, observed.keyOf);
    return pulseUs === undefined ? [] : [line.readUs - pulseUs];
  });
  const largest = spans.toSorted((a, b) => Math.abs(b) - Math.abs(a))[0];
  const { scale, lowPercent, highPercent } = entered;
  const moved = (percent: number, shiftUs: number) =>
    toPercent(scale, us(toPulse(scale, pct(percent)) + shiftUs));
  return [medianOf(spans), largest].flatMap((shiftUs) => {
    if (shiftUs === undefined || shiftUs === 0) return [];
    const limits = { lowPercent: moved(lowPercent, shiftUs), highPercent: moved(highPercent, shiftUs) };
    // Where limits scale, positions follow the limits and need no shift of their own.
    const withLimits = { ...entered, ...limits, shiftUs: entered.scaling ? 0 : shiftUs };
    return [
      { changed: { ...entered, shiftUs }, shiftUs },
      { changed: withLimits, shiftUs },
      { changed: { ...withLimits, failsafe: failsafeThere(entered, withLimits) }, shiftUs },
    ];
  });
}

/** The failsafe value that still gives the plan's pulse after the limits moved. */
function failsafeThere(entered: Entered, changed: Entered): number {
  const { failsafeUs } = send(entered);
  const { lowUs, highUs } = send(changed);
  return (entered.scaling ? pulseToShare([lowUs, highUs], failsafeUs) : undefined) ?? entered.failsafe;
}
