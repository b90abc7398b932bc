import {
  type Extreme,
  formatNumber,
  formatTrimmed,
  type Model,
  type Reading,
  type Servo,
  type SetupPlan,
  type StopReason,
} from "@hingeline/core";
import { numbersOf, signed } from "../numbers.ts";
import { settingText, stateText } from "../state-text.ts";
import { visibleText } from "../visible-text.ts";
import { findHalf } from "./response-plot.ts";
import { degreesText, microseconds, type SheetServo } from "./servo-on-sheet.ts";

/** One line of what is known about a servo. */
export interface Fact {
  readonly name: string;
  readonly text: string;
  /** Worth a second look. */
  readonly warn?: true;
}

export const notMeasured = "NOT MEASURED";

const reasons: Readonly<Record<StopReason, string>> = {
  contact: "contact",
  deadCentre: "dead centre",
  structure: "structure",
  servo: "end of the servo",
  signal: "end of the signal",
  choice: "chosen",
};

/** What the bench, the plan and the model say about a servo, beside its values. What was not measured says so. */
export function servoFacts(servo: SheetServo, plan: SetupPlan, model: Model): readonly Fact[] {
  return [
    { name: "Sense", text: senseText(servo) },
    { name: "Stops", text: stopsText(servo) },
    ...extremeFacts(servo, plan),
    ...transitFacts(servo),
    ...halfFact(servo),
    ...summedFact(servo),
    ...powerUpFact(servo),
    ...loadFact(servo),
    ...otherWays(servo, plan),
    { name: "Readings", text: readingsText(findServo(model, servo)) },
    { name: "Bench", text: benchText(findServo(model, servo)) },
  ];
}

/** The servo's own part of the model. */
export function findServo({ surfaces }: Model, { described }: SheetServo): Servo | undefined {
  const surface = surfaces[described.surface];
  return surface?.servo ?? surface?.servos?.[described.id.slice(described.surface.length + 1)];
}

function senseText({ channel }: SheetServo): string {
  const turns = channel.direction === "rising" ? "rises" : "falls";
  return `the pulse ${turns} as the trailing edge goes down`;
}

function stopsText({ described }: SheetServo): string {
  const { stopsUs, guardUs, safeUs } = described;
  const ends = [0, 1].map((end) => {
    const reason = described.reasons[end];
    const because = reason === undefined ? "" : ` (${reasons[reason]})`;
    return `${formatTrimmed(stopsUs[end] ?? 0, 1)}${because}, guard ${formatNumber(guardUs[end] ?? 0, 1)}`;
  });
  return `${ends.join(" and ")}; safe ${formatNumber(safeUs[0], 1)} to ${microseconds(safeUs[1])}`;
}

function extremeFacts({ channel }: SheetServo, { radio }: SetupPlan): Fact[] {
  const numbers = numbersOf(radio);
  const [lowUs, highUs] = channel.safeUs;
  const fact = (name: string, { pulseUs, percent, when }: Extreme, spareUs: number): Fact => ({
    name,
    text: `${microseconds(pulseUs)} (${numbers.exactPercent(percent)} %), ${formatNumber(Math.abs(spareUs), 1)} ${spareUs < 0 ? "PAST the safe end" : "to spare"}: ${stateText(when)}`,
    ...(spareUs < 0 ? { warn: true } : {}),
  });
  return [
    fact("Lowest", channel.extremes.low, channel.extremes.low.pulseUs - lowUs),
    fact("Highest", channel.extremes.high, highUs - channel.extremes.high.pulseUs),
  ];
}

function transitFacts({ channel }: SheetServo): Fact[] {
  const transits = channel.transits ?? [];
  const longest = new Map<string, (typeof transits)[number]>();
  for (const transit of transits) {
    const known = longest.get(transit.control);
    if (known === undefined || transit.seconds > known.seconds) longest.set(transit.control, transit);
  }
  return [...longest.values()].map(({ control, from, to, seconds, secondsPerFullScale, fastestSeconds }) => ({
    name: "Slow",
    text:
      `${visibleText(control)} from ${visibleText(from)} to ${visibleText(to)} ${formatTrimmed(seconds, 2)} s; ` +
      `${formatTrimmed(secondsPerFullScale, 2)} s where −100 to +100 % is asked for` +
      (fastestSeconds === undefined ? "" : `; servo alone ${formatNumber(fastestSeconds, 2)} s`),
  }));
}

function halfFact(servo: SheetServo): Fact[] {
  const half = findHalf(servo);
  if (half === undefined) return [];
  const { pulseUs, deflectionDeg, wantedDeg } = half;
  return [
    {
      name: "Half",
      text: `half the pulses (${microseconds(pulseUs)}, the cross) gives ${degreesText(deflectionDeg)}, not ${degreesText(wantedDeg)}`,
    },
  ];
}

function summedFact({ channel }: SheetServo): Fact[] {
  const { summed } = channel;
  if (summed === undefined) return [];
  return [
    {
      name: "Adding",
      text: `a transmitter that adds percents is ${degreesText(summed.errorDeg, 2)} off at ${stateText(summed.when)}`,
    },
  ];
}

function powerUpFact({ channel }: SheetServo): Fact[] {
  const { powerUp } = channel;
  if (powerUp === undefined)
    return [{ name: "Power-up", text: `${notMeasured}: look where it goes, linkage off` }];
  const at = powerUp.deflectionDeg === undefined ? "" : `, ${degreesText(powerUp.deflectionDeg)}`;
  return [
    { name: "Power-up", text: `${microseconds(powerUp.pulseUs)}${at} before the transmitter is heard` },
  ];
}

function loadFact({ channel }: SheetServo): Fact[] {
  const { load } = channel;
  if (load === undefined) return [{ name: "Load", text: "NOT ESTIMATED" }];
  return [
    {
      name: "Load",
      text: `about ${formatNumber(load.worstNm, 2)} of ${formatNumber(load.heldNm, 2)} N m (${formatNumber(load.share * 100, 0)} %) at ${formatNumber(load.airspeedMps, 1)} m/s: ${stateText(load.when)}`,
      ...(load.share > 1 ? { warn: true } : {}),
    },
  ];
}

/** For transmitters that ask otherwise: the share between the limits, and what goes into a correction curve. */
function otherWays({ channel, settings }: SheetServo, { radio }: SetupPlan): Fact[] {
  const numbers = numbersOf(radio);
  const list = (of: (setting: (typeof settings)[number]) => number | undefined) =>
    settings
      .flatMap((setting) => {
        const value = of(setting);
        return value === undefined ? [] : [`${settingText(setting)} ${numbers.percent(value)}`];
      })
      .join("; ");
  const scales = radio.endPoints === "scale";
  const ways: Fact[] = [
    scales
      ? { name: "Percent", text: list(({ enter }) => enter.percent) }
      : { name: "Share", text: list(({ enter }) => enter.sharePercent) },
    { name: "Curve in", text: channel.curve === undefined ? "" : list(({ enter }) => enter.commandPercent) },
  ];
  return ways.filter(({ text }) => text !== "");
}

function readingsText(servo: Servo | undefined): string {
  const readings = servo?.bench.readings ?? [];
  return readings.length === 0 ? notMeasured : readings.map(readingText).join("; ");
}

function readingText([pulse, at, way]: Reading): string {
  const value =
    typeof at === "number" ? `${signed(at, Math.max(1, decimals(at)))}°` : `${formatTrimmed(at.mm, 2)} mm`;
  return `${formatTrimmed(pulse, 1)} ${value}${way === undefined ? "" : ` ${way}`}`;
}

function decimals(value: number): number {
  return formatTrimmed(Math.abs(value), 2).split(".")[1]?.length ?? 0;
}

function benchText(servo: Servo | undefined): string {
  const { on, supply, temperature } = servo?.bench.measured ?? {};
  const parts = [
    `date ${on === undefined ? notMeasured : visibleText(on)}`,
    `supply ${supply === undefined ? notMeasured : `${formatTrimmed(supply, 2)} V`}`,
    `temperature ${temperature === undefined ? notMeasured : `${formatTrimmed(temperature, 1)} °C`}`,
  ];
  return parts.join(", ");
}
