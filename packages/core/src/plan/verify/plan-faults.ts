import { us } from "../../units/quantity.ts";
import { nameChannel } from "../name-channel.ts";
import type { SetupPlan } from "../setup-plan.ts";
import { columnFaults } from "./column-faults.ts";
import { endPointFaults } from "./end-point-faults.ts";
import { restKey, type Sent, send } from "./entered.ts";
import {
  fitted,
  type Hypothesis,
  mapValues,
  medianOf,
  type Suspect,
  stateLines,
  typed,
} from "./hypothesis.ts";
import type { Observed } from "./observed.ts";

/** Scales that many radios have: centre and pulse span of 100 percent, microseconds. (common practice, no source) */
const usualScales = [1500, 1520].flatMap((centreUs) =>
  [400, 500, 512].map((spanUs) => ({ centreUs, spanUs })),
);
/** A trim beyond this is none. */
const largestTrim = 0.5;

/** What may be wrong with more than one channel at once. */
export function planFaults(suspects: readonly Suspect[], observed: Observed): readonly Hypothesis[] {
  return [
    ...exchanges(suspects, observed.plan),
    ...columnFaults(suspects, "every channel"),
    ...endPointFaults(suspects),
    ...offsets(suspects, observed),
    ...scales(suspects, observed),
    ...trims(suspects, observed),
  ];
}

/** Two outputs changed over, or one that has another's values too. */
function exchanges(suspects: readonly Suspect[], plan: SetupPlan): readonly Hypothesis[] {
  const isPair = (a: Suspect, b: Suspect) =>
    plan.matches.some(({ surfaces }) => {
      const [first, second] = surfaces;
      const moves = ({ plan: { settings } }: Suspect, name: string) =>
        settings.some(({ surface }) => surface === name);
      return (moves(a, first) && moves(b, second)) || (moves(a, second) && moves(b, first));
    });
  return suspects.flatMap((a, index) =>
    suspects.flatMap((b, other): Hypothesis[] => {
      if (index === other) return [];
      const facts = {
        channels: [a.plan.channel, b.plan.channel],
        where: nameChannel(a.plan),
        other: nameChannel(b.plan),
      };
      const one = (to: Suspect, from: Suspect): [number, Sent] => [
        to.plan.channel,
        sentAs(send(from.entered), [...to.entered.values.keys()]),
      ];
      const copied: Hypothesis = {
        kind: "wrongChannel",
        ...facts,
        channels: [a.plan.channel],
        prediction: { sent: new Map([one(a, b)]), otherOutput: true },
      };
      if (index > other) return [copied];
      const kind = isPair(a, b) ? "sidesSwapped" : "channelsSwapped";
      return [
        { kind, ...facts, prediction: { sent: new Map([one(a, b), one(b, a)]), otherOutput: true } },
        copied,
      ];
    }),
  );
}

/** What a channel sends in the states of another; a state in which several of its own controls are moved is left out. */
function sentAs(sent: Sent, keys: readonly string[]): Sent {
  const states = [...sent.byState].filter(([key]) => key !== restKey);
  const byState = new Map(sent.byState);
  for (const key of keys) {
    if (byState.has(key)) continue;
    const inside = states.filter(([state]) => isPart(state, key));
    const pulseUs =
      inside.length === 0 ? sent.byState.get(restKey) : inside.length === 1 ? inside[0]?.[1] : undefined;
    if (pulseUs !== undefined) byState.set(key, pulseUs);
  }
  return { ...sent, byState };
}

/** Whether a state moves only controls that the other moves to the same place. */
function isPart(state: string, other: string): boolean {
  if (other === restKey) return false;
  const moved = new Map(JSON.parse(other) as [string, string | number][]);
  return (JSON.parse(state) as [string, string | number][]).every(
    ([control, at]) => moved.get(control) === at,
  );
}

/** Another radio's scale behind the same percents: a usual one, or the straight line that fits the readings best. */
function scales(suspects: readonly Suspect[], observed: Observed): readonly Hypothesis[] {
  const { radio } = observed.plan;
  const meanUs =
    typeof radio.per100Us === "number" ? radio.per100Us : (radio.per100Us.below + radio.per100Us.above) / 2;
  const best = fitScale(observed, radio.centreUs, meanUs);
  const candidates = [
    ...usualScales.map((one) => ({ ...one, isFit: false })),
    ...(best === undefined ? [] : [{ ...best, isFit: true }]),
  ];
  return candidates.map(({ centreUs, spanUs, isFit }) => {
    const ratio = spanUs / meanUs;
    const per100 =
      typeof radio.per100Us === "number"
        ? us(spanUs)
        : { below: us(radio.per100Us.below * ratio), above: us(radio.per100Us.above * ratio) };
    const changed = suspects.map(({ entered }) => ({
      ...entered,
      scale: { ...entered.scale, centre: us(centreUs), per100 },
    }));
    return {
      kind: "otherScale",
      channels: changed.map(({ channel }) => channel),
      prediction: isFit ? fitted(...changed) : typed(...changed),
      numbers: { centreUs, per100Us: spanUs, planCentreUs: radio.centreUs, planPer100Us: meanUs },
    };
  });
}

/** Least squares of what was read over what is expected; undefined where the readings cannot tell a scale from something else. */
function fitScale(observed: Observed, centreUs: number, meanUs: number) {
  const points = transmitted(observed).map(
    ([expectedUs, readUs]) => [expectedUs - centreUs, readUs] as const,
  );
  if (countApart(points) < 4) return undefined;
  const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length;
  const x = mean(points.map(([one]) => one));
  const y = mean(points.map(([, one]) => one));
  const across = mean(points.map(([one]) => (one - x) ** 2));
  const ratio = mean(points.map(([one, two]) => (one - x) * (two - y))) / across;
  if (ratio < 0.5 || ratio > 2) return undefined;
  return { centreUs: y - ratio * x, spanUs: ratio * meanUs };
}

/** A pulse meter that shows every pulse too long or too short by as much. */
function offsets(suspects: readonly Suspect[], observed: Observed): readonly Hypothesis[] {
  const points = transmitted(observed);
  const meterUs = medianOf(points.map(([expectedUs, readUs]) => readUs - expectedUs));
  if (meterUs === undefined || meterUs === 0 || countApart(points) < 3) return [];
  return [
    {
      kind: "testerOffset",
      channels: suspects.map(({ plan }) => plan.channel),
      prediction: { sent: new Map(), fitted: true, meterUs },
      numbers: { offsetUs: meterUs },
    },
  ];
}

/** What is expected and what was read, of every single pulse that the transmitter sends. */
function transmitted({ pulses }: Observed): readonly (readonly [number, number])[] {
  return pulses.flatMap(({ place, expectedUs: [lowUs, highUs], readUs }) =>
    lowUs === highUs && place.kind !== "powerUp" ? [[lowUs, readUs] as const] : [],
  );
}

/** How many expected pulses stand clearly apart: a line through two proves nothing. */
function countApart(points: readonly (readonly [number, number])[]): number {
  const apartUs = 20;
  let [count, last] = [0, Number.NEGATIVE_INFINITY];
  for (const [pulseUs] of points.toSorted(([a], [b]) => a - b)) {
    if (pulseUs - last < apartUs) continue;
    count++;
    last = pulseUs;
  }
  return count;
}

/** A stick's trim away from its centre: every channel that the stick moves is off by that share of its travel. */
function trims(suspects: readonly Suspect[], observed: Observed): readonly Hypothesis[] {
  const sticks = new Set(
    suspects.flatMap(({ plan }) =>
      plan.settings.flatMap(({ control, stick }) => (stick === undefined ? [] : [control])),
    ),
  );
  return [...sticks].flatMap((control) =>
    ([-1, 1] as const).flatMap((end) => {
      const adds = suspects.map((suspect) => addOf(suspect, control, end, observed));
      const sizes = adds.map((add) => Math.abs(add));
      const leading = suspects[sizes.indexOf(Math.max(...sizes))];
      const leadingAdd = adds[sizes.indexOf(Math.max(...sizes))] ?? 0;
      if (leading === undefined || leadingAdd === 0) return [];
      const moved = (trim: number) =>
        suspects.flatMap(({ entered }, index) => {
          const add = adds[index] ?? 0;
          return add === 0 ? [] : [mapValues(entered, (value) => value + trim * add)];
        });
      return trimsSeen(leading, leadingAdd, observed).map((trim) => {
        const changed = moved(trim);
        return {
          kind: "trimLeftIn",
          channels: changed.map(({ channel }) => channel),
          prediction: fitted(...changed),
          place: control,
          numbers: { trimPercent: end * trim * 100 },
        } as const;
      });
    }),
  );
}

/** What the stick's end adds to the value of a channel at rest; 0 where it does not move it. */
function addOf({ plan, entered }: Suspect, control: string, end: -1 | 1, { keyOf }: Observed): number {
  const setting = plan.settings.find(
    (one) => one.control === control && one.stick === end && one.when === undefined,
  );
  const value = setting === undefined ? undefined : entered.values.get(keyOf(setting));
  return value === undefined ? 0 : value - (entered.values.get(restKey) ?? value);
}

/** The shares of full travel that readings of this channel may stand for, the middle one and the largest. */
function trimsSeen({ plan, entered }: Suspect, add: number, observed: Observed): readonly number[] {
  const mapped = send(mapValues(entered, (value) => value + Math.sign(add) * 1));
  const sent = send(entered);
  const trims = stateLines(observed).flatMap(({ key, line }) => {
    if (line.channel !== plan.channel) return [];
    const fromUs = sent.byState.get(key);
    const toUs = mapped.byState.get(key);
    if (fromUs === undefined || toUs === undefined || fromUs === toUs) return [];
    const trim = (line.readUs - fromUs) / ((toUs - fromUs) * Math.abs(add));
    return trim > 0 && trim <= largestTrim ? [trim] : [];
  });
  const middle = medianOf(trims);
  return middle === undefined ? [] : [...new Set([middle, Math.max(...trims)])];
}
