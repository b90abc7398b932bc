import {
  type ComputedPart,
  type CurvePoint,
  formatNumber,
  formatTrimmed,
  type PercentPulse,
  type PlanChange,
  type PlanRadio,
  type Position,
  type SettingAt,
  type SettingValue,
  type SetupPlan,
  type ValueName,
} from "@hingeline/core";
import { type Numbers, numbersOf, pulseText, signed, withUnit } from "./numbers.ts";
import { settingText } from "./state-text.ts";
import { visibleText } from "./visible-text.ts";

/** A channel's value in words. */
export const valueNames: Readonly<Record<ValueName, string>> = {
  lowLimit: "low limit",
  highLimit: "high limit",
  neutral: "at rest",
  failsafe: "failsafe",
};

/** "flap at landing", with its surface in front where a channel feeds several. */
export function placeText(place: SettingAt, several: boolean): string {
  return several ? `${visibleText(place.surface)}: ${settingText(place)}` : settingText(place);
}

/** One change of a channel as a line: what it is about, and what it was and is. */
export function changeWords(
  change: PlanChange,
  before: Numbers,
  after: Numbers,
  several: boolean,
): readonly [head: string, text: string] | undefined {
  const [was, is] = [before, after];
  switch (change.kind) {
    case "channel":
      return [
        "servos",
        arrow(change.before?.map(visibleText).join(" and "), change.after?.map(visibleText).join(" and ")),
      ];
    case "label":
      return [
        `label of ${visibleText(change.servo)}`,
        `${arrow(quoted(change.before), quoted(change.after))}: another servo's positions hold only after the three-point check (hingeline swap)`,
      ];
    case "direction":
      return [
        "sense",
        `the pulse ${arrow(turns(change.before), turns(change.after))} as the deflection grows`,
      ];
    case "safe":
      return ["safe", arrow(rangeText(change.before), rangeText(change.after))];
    case "value": {
      const { before: old, after: now } = change;
      const percents = arrow(old && entered(old, was), now && entered(now, is));
      return [valueNames[change.value], `ENTER ${percents}; ${pulses(old?.pulseUs, now?.pulseUs)}`];
    }
    case "setting":
      return [placeText(change.place, several), settingWords(change.before, change.after, was, is)];
    case "adds": {
      const texts = change.places.map(
        ({ place, before: old, after: now }) =>
          `${placeText(place, several)} ${arrow(withUnit(was.percent(old), "position", was), withUnit(is.percent(now), "position", is))}`,
      );
      return ["adds", `what these add to the value at rest: ${texts.join("; ")}`];
    }
    case "curve":
      return ["curve", arrow(curveText(change.before, was), curveText(change.after, is))];
    case "transit":
      return [
        `transit of ${visibleText(change.control)}`,
        arrow(seconds(change.before), seconds(change.after)),
      ];
    default:
      return undefined;
  }
}

/** What changes of a radio, and what that does to a percent. */
export function radioWords(before: PlanRadio, after: PlanRadio): string {
  const parts = [
    ...changed("", before.name, after.name, visibleText),
    ...changed("centre ", before.centreUs, after.centreUs, (us) => `${formatTrimmed(us, 3)} us`),
    ...changed("100 % is ", before.per100Us, after.per100Us, spanText),
    ...changed(
      "reach ",
      before.reachPercent,
      after.reachPercent,
      (percent) => `${formatTrimmed(percent, 6)} %`,
    ),
    ...changed("step ", before.stepPercent, after.stepPercent, (percent) => `${formatTrimmed(percent, 6)} %`),
    ...changed("limits ", before.endPoints, after.endPoints, (ends) => (ends === "clamp" ? "cut" : "scale")),
    ...changed("curve points ", before.curvePoints, after.curvePoints, String),
    ...changed("curve spacing ", before.curveSpacing ?? "equal", after.curveSpacing ?? "equal", String),
  ];
  return `${parts.join("; ")}${carryWords(before, after)}`;
}

/** Why what is typed for one radio is not what is typed for the other; empty where it is. */
function carryWords(before: PlanRadio, after: PlanRadio): string {
  if (before.endPoints !== after.endPoints)
    return ". Values do not carry over: a position is a percent on the one and a share between the limits on the other; carry the pulses";
  for (const percent of [40, -40]) {
    const [was, is] = [before, after].map((radio) => pulseText(pulseAt(radio, percent)));
    if (was !== is)
      return `. Percents do not carry over: ${signed(percent, 0)} % was ${was} and is ${is}; carry the pulses`;
  }
  return "";
}

/** Parts of the plan that are computed anew, by name: "extremes of channels 5, 6; matches". */
export function computedWords(parts: readonly ComputedPart[]): string {
  const channelsOf = new Map<string, number[]>();
  for (const one of parts) {
    const channels = channelsOf.get(one.part) ?? [];
    channelsOf.set(one.part, "channel" in one ? [...channels, one.channel] : channels);
  }
  return [...channelsOf]
    .map(([part, channels]) => {
      const words = part === "neutral" ? `value ${valueNames.neutral}` : part;
      const name = words
        .replace(/(?:Us|Deg)$/, "")
        .replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
      if (channels.length === 0) return name;
      return `${name} of channel${channels.length === 1 ? "" : "s"} ${channels.join(", ")}`;
    })
    .join("; ");
}

/** Whether a channel moves several surfaces, in either plan. */
export function movesSeveral(plans: readonly SetupPlan[], channel: number): boolean {
  const surfaces = plans.flatMap(({ channels }) =>
    channels
      .filter((one) => one.channel === channel)
      .flatMap(({ settings }) => settings.map(({ surface }) => surface)),
  );
  return new Set(surfaces).size > 1;
}

/** The numbers of two plans, each by its own radio. */
export function numbersOfBoth(before: SetupPlan, after: SetupPlan): readonly [Numbers, Numbers] {
  return [numbersOf(before.radio), numbersOf(after.radio)];
}

function settingWords(
  before: SettingValue | undefined,
  after: SettingValue | undefined,
  was: Numbers,
  is: Numbers,
): string {
  if (before === undefined || after === undefined) {
    const [value, numbers] = before === undefined ? [after, is] : [before, was];
    const gives = value?.givesDeg === undefined ? "" : `, gives ${signed(value.givesDeg, 2)} deg`;
    const text = value && `${entered(value, numbers)}, ${pulseText(value.pulseUs)}${gives}`;
    return `${before === undefined ? "new: " : "gone, was "}ENTER ${text}`;
  }
  const old = entered(before, was);
  const now = entered(after, is);
  return [
    old === now && before.pulseUs === after.pulseUs ? `ENTER stays ${old}` : `ENTER ${arrow(old, now)}`,
    ...(before.pulseUs === after.pulseUs ? [] : [pulses(before.pulseUs, after.pulseUs)]),
    ...pair("wanted", before.wantedDeg, after.wantedDeg, (value) => `${formatTrimmed(value, 2)} deg`),
    ...pair("throw", before.throwMm, after.throwMm, (value) => `${formatNumber(value, 1)} mm`),
    ...pair("extension", before.extensionMm, after.extensionMm, (value) => `${formatNumber(value, 1)} mm`),
    ...pair("gives", before.givesDeg, after.givesDeg, (value) => `${formatNumber(value, 2)} deg`),
  ].join("; ");
}

/** What is typed: of a limit always the percent. */
function entered(value: PercentPulse | Position, numbers: Numbers): string {
  return "sharePercent" in value
    ? withUnit(numbers.typed(value), "position", numbers)
    : withUnit(numbers.percent(value.percent), "limit", numbers);
}

function pair(
  name: string,
  before: number | undefined,
  after: number | undefined,
  show: (value: number) => string,
): readonly string[] {
  if (before === after) return [];
  return [
    `${name} ${arrow(before === undefined ? undefined : show(before), after === undefined ? undefined : show(after))}`,
  ];
}

function changed<T>(name: string, before: T, after: T, show: (value: T) => string): readonly string[] {
  const [was, is] = [show(before), show(after)];
  return was === is ? [] : [name + arrow(was, is)];
}

/** "-53 -> -57 %": a unit that both have stands once. */
function arrow(before: string | undefined, after: string | undefined): string {
  if (before === undefined) return `new: ${after ?? ""}`;
  if (after === undefined) return `gone, was ${before}`;
  const unit = / (?:%|share|us|deg|mm|s)$/.exec(before)?.[0];
  return unit !== undefined && after.endsWith(unit)
    ? `${before.slice(0, -unit.length)} -> ${after}`
    : `${before} -> ${after}`;
}

function pulses(before: number | undefined, after: number | undefined): string {
  return arrow(
    before === undefined ? undefined : pulseText(before),
    after === undefined ? undefined : pulseText(after),
  );
}

function rangeText(range: readonly [number, number] | undefined): string | undefined {
  return range && `${formatNumber(range[0], 1)} to ${pulseText(range[1])}`;
}

function curveText(curve: readonly CurvePoint[] | undefined, numbers: Numbers): string | undefined {
  return curve?.map((point) => `${signed(point.commandPercent, 1)}: ${entered(point, numbers)}`).join(", ");
}

function turns(direction: "rising" | "falling" | undefined): string | undefined {
  return direction === "rising" ? "rises" : "falls";
}

function quoted(label: string | undefined): string | undefined {
  return label === undefined ? undefined : `"${visibleText(label)}"`;
}

function seconds(value: number | undefined): string | undefined {
  return value === undefined ? undefined : `${formatNumber(value, 2)} s`;
}

function spanText(span: PlanRadio["per100Us"]): string {
  return typeof span === "number"
    ? `${formatTrimmed(span, 3)} us`
    : `${formatTrimmed(span.below, 3)} us below and ${formatTrimmed(span.above, 3)} us above`;
}

function pulseAt({ centreUs, per100Us }: PlanRadio, percent: number): number {
  return centreUs + (percent * (typeof per100Us === "number" ? per100Us : per100Us.above)) / 100;
}
