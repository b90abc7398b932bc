import { hypotOf } from "../../numeric/hypotenuse.ts";
import { judgeTolerance, type ToleranceVerdict } from "../../uncertainty/agreement.ts";
import { expand } from "../../uncertainty/expand.ts";
import { doubtFromExpanded, doubtFromRectangular } from "../../uncertainty/standard-doubt.ts";
import type { AsBuilt, AsBuiltChannel, AsBuiltSetting, AsRead } from "../as-built.ts";
import type { PlanChannel, PlanRadio, Setting, SetupPlan } from "../setup-plan.ts";
import { settingKey } from "./place-words.ts";
import { restUs } from "./rest-pulse.ts";
import type {
  ChannelPlace,
  DeflectionVerdict,
  LinePlace,
  PulseVerdict,
  SettingPlace,
} from "./verification.ts";

/** Half-width of a pulse meter's doubt that the tolerance of a pulse already holds, microseconds. (trade's rule: step/2 + 1) */
export const usualTesterUs = 1;
/** Causes of a plan's budget that a second reading on the same bench has too. */
const meterCauses = new Set(["meter", "rule", "zero"]);
const placeCauses = new Set(["alignment", "freePlay", "display", "scatter"]);

/** Every pulse and deflection of one channel that can be measured, in the order of the plan, with what was read. */
export function judgeChannel(
  channel: PlanChannel,
  { radio, procedure }: SetupPlan,
  { instruments = {}, channels }: AsBuilt,
): readonly (PulseVerdict | DeflectionVerdict)[] {
  const built = channels.find((one) => one.channel === channel.channel);
  const testerUs = instruments.pulseUs ?? usualTesterUs;
  const pulse = (place: LinePlace, expectedUs: readonly [number, number], read: AsRead | undefined) =>
    judgePulse({ channel, place, expectedUs, withinUs: toleranceUs(radio), testerUs }, read);
  const settings = channel.settings.flatMap((setting) => {
    const read = findRead(setting, built);
    const place = placeOf(setting);
    const deflection = judgeDeflection(channel, setting, place, read, instruments.deflectionDeg);
    return [
      pulse(place, one(setting.enter.pulseUs), read?.pulseUs),
      ...(deflection === undefined ? [] : [deflection]),
    ];
  });
  const swept = sweptRanges(channel, procedure);
  const at = (kind: ChannelPlace["kind"], expectedUs: readonly [number, number], read: AsRead | undefined) =>
    pulse({ kind }, expectedUs, read);
  return [
    at("limitLow", one(channel.limits.low.pulseUs), built?.limitLowUs),
    at("limitHigh", one(channel.limits.high.pulseUs), built?.limitHighUs),
    at("neutral", one(restUs(channel)), built?.neutralUs),
    ...settings,
    at("sweptLow", swept.low, built?.sweptLowUs),
    at("sweptHigh", swept.high, built?.sweptHighUs),
    at("failsafe", one(channel.failsafe.pulseUs), built?.failsafeUs),
    powerUp(at, channel, built?.powerUpUs),
  ];
}

/** How far a pulse may be read from what was entered: half a step of the radio, on its coarser side, and 1 us. (trade's rule) */
function toleranceUs({ per100Us, stepPercent }: PlanRadio): number {
  const spanUs = typeof per100Us === "number" ? per100Us : Math.max(per100Us.below, per100Us.above);
  return (spanUs * stepPercent) / 200 + usualTesterUs;
}

/** Standard doubt of a deflection read on this channel: of the plan's bench, the meter's own replaced where the as-built file states it. */
export function meterDoubt({ doubt }: PlanChannel, meterDeg: number | undefined): number | undefined {
  if (doubt === undefined) return undefined;
  const causes = meterDeg === undefined ? new Set([...meterCauses, ...placeCauses]) : placeCauses;
  const own = doubt.budget.filter(({ cause }) => causes.has(cause)).map(({ standardDeg }) => standardDeg);
  // The meter's scale and its zero, each of that half-width.
  const stated =
    meterDeg === undefined ? [] : [doubtFromRectangular(meterDeg), doubtFromRectangular(meterDeg)];
  return hypotOf(...own, ...stated);
}

/** What the plan's setting is called in a verdict. */
function placeOf({ control, detent, stick, when, surface }: Setting): SettingPlace {
  return {
    kind: "setting",
    control,
    ...(detent === undefined ? {} : { detent }),
    ...(stick === undefined ? {} : { stick }),
    ...(when === undefined ? {} : { when }),
    surface,
  };
}

/**
 * Where the ends of a sweep belong: past every single setting, and no further than all that is entered reaches together, by percents or
 * by degrees; where no procedure tells, never past a limit.
 */
function sweptRanges(
  channel: PlanChannel,
  procedure: SetupPlan["procedure"],
): {
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
} {
  const { limits, extremes } = channel;
  const pulses = [restUs(channel), ...channel.settings.map(({ enter }) => enter.pulseUs)];
  const reach = procedure.flatMap((step) => step.reach).findLast((one) => one.channel === channel.channel);
  const [lowUs, highUs] = reach?.pulseUs ?? [limits.low.pulseUs, limits.high.pulseUs];
  return {
    low: [Math.min(lowUs, extremes.low.pulseUs, ...pulses), Math.min(...pulses)],
    high: [Math.max(...pulses), Math.max(highUs, extremes.high.pulseUs, ...pulses)],
  };
}

interface PulseLine {
  readonly channel: PlanChannel;
  readonly place: LinePlace;
  readonly expectedUs: readonly [number, number];
  readonly withinUs: number;
  readonly testerUs: number;
}

function judgePulse(
  { channel, place, expectedUs, withinUs, testerUs }: PulseLine,
  read: AsRead | undefined,
): PulseVerdict {
  const line = { quantity: "pulse", channel: channel.channel, place, expectedUs, withinUs } as const;
  if (read === undefined || read === "not measured") return { ...line, outcome: "notMeasured" };
  const [lowUs, highUs] = expectedUs;
  const byUs = read < lowUs ? read - lowUs : Math.max(0, read - highUs);
  // The tolerance holds the usual tester; only what one is worse by is a doubt on top.
  const judged = judgeTolerance(byUs, Math.max(0, testerUs - usualTesterUs), withinUs, 1);
  const [lowSafeUs, highSafeUs] = channel.safeUs;
  const unsafe = read < lowSafeUs - testerUs || read > highSafeUs + testerUs;
  return {
    ...line,
    readUs: read,
    byUs,
    ...(unsafe ? { unsafe } : {}),
    outcome: unsafe ? "differs" : judged,
  };
}

function powerUp(
  at: (kind: "powerUp", expectedUs: readonly [number, number], read: AsRead | undefined) => PulseVerdict,
  { powerUp: planned, safeUs }: PlanChannel,
  read: AsRead | "none" | undefined,
): PulseVerdict {
  const expectedUs = planned === undefined ? safeUs : one(planned.pulseUs);
  if (read !== "none") return at("powerUp", expectedUs, read);
  return { ...at("powerUp", expectedUs, undefined), silent: true, outcome: "agrees" };
}

function judgeDeflection(
  channel: PlanChannel,
  { gives }: Setting,
  place: SettingPlace,
  read: AsBuiltSetting | undefined,
  meterDeg: number | undefined,
): DeflectionVerdict | undefined {
  if (gives === undefined) return undefined;
  const readDoubt = meterDoubt(channel, meterDeg);
  const { deflectionDeg: expectedDeg, uncertaintyDeg } = gives;
  const withinDeg =
    readDoubt === undefined || uncertaintyDeg === undefined
      ? undefined
      : expand(hypotOf(readDoubt, doubtFromExpanded(uncertaintyDeg)));
  const line = {
    quantity: "deflection",
    channel: channel.channel,
    place,
    expectedDeg,
    ...(withinDeg === undefined ? {} : { withinDeg }),
  } as const;
  const readDeg = read?.deflectionDeg;
  if (readDeg === undefined || readDeg === "not measured") return { ...line, outcome: "notMeasured" };
  const byDeg = readDeg - expectedDeg;
  const outcome: ToleranceVerdict =
    withinDeg === undefined ? "cannotTell" : Math.abs(byDeg) <= withinDeg ? "agrees" : "differs";
  return { ...line, readDeg, byDeg, outcome };
}

function findRead(setting: Setting, built: AsBuiltChannel | undefined): AsBuiltSetting | undefined {
  const key = settingKey(setting);
  return built?.settings?.find((one) => settingKey(one) === key);
}

function one(pulseUs: number): readonly [number, number] {
  return [pulseUs, pulseUs];
}
