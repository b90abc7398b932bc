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
import { numbersOf, signed, withUnit } from "../numbers.ts";
import { sparePulses } from "../spare-pulses.ts";
import { visibleText } from "../visible-text.ts";
import { findHalf } from "./half-mark.ts";
import {
  degreesText,
  microseconds,
  type SheetServo,
  settingKey,
  shortSetting,
  shortState,
} from "./servo-on-sheet.ts";

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
  const bench = findServo(model, servo)?.bench;
  return [
    { name: "Stops", text: stopsText(servo) },
    ...extremeFacts(servo, plan),
    ...transitFacts(servo),
    ...doubtFact(servo),
    ...halfFact(servo),
    ...curveFact(servo, plan),
    ...loadFact(servo),
    ...powerUpFact(servo),
    { name: "Readings", text: readingsText(bench) },
    ...benchFacts(servo, bench),
  ];
}

/** The servo's own part of the model. */
function findServo({ surfaces }: Model, { described }: SheetServo): Servo | undefined {
  const surface = surfaces[described.surface];
  return surface?.servo ?? surface?.servos?.[described.id.slice(described.surface.length + 1)];
}

/** "1172, 1880 (contact), kept clear 10.0; safe 1182–1870": said once where it is the same at both ends. */
function stopsText({ described }: SheetServo): string {
  const { stopsUs, safeUs } = described;
  const ends = ([0, 1] as const).map((end) => {
    const reason = described.reasons[end];
    const because = reason === undefined ? "" : ` (${reasons[reason]})`;
    return {
      pulse: formatTrimmed(stopsUs[end], 1),
      because,
      // Worked out as the plan does it, so that both round to the same.
      clear: `, kept clear ${formatTrimmed(Math.abs(safeUs[end] - stopsUs[end]), 1)}`,
    };
  });
  const [low, high] = ends;
  if (low === undefined || high === undefined) return "";
  const lowText = `${low.pulse}${low.because === high.because ? "" : low.because}${low.clear === high.clear ? "" : low.clear}`;
  return `${lowText}, ${high.pulse}${high.because}${high.clear}; safe ${formatTrimmed(safeUs[0], 1)}–${formatTrimmed(safeUs[1], 1)}`;
}

function extremeFacts({ channel }: SheetServo, { radio }: SetupPlan): Fact[] {
  const numbers = numbersOf(radio);
  const spare = sparePulses(channel);
  const fact = (name: string, { pulseUs, percent, when }: Extreme, spareUs: number): Fact => ({
    name,
    text: `${microseconds(pulseUs)} (${numbers.exactPercent(percent)} %), ${formatNumber(Math.abs(spareUs), 1)} ${spareUs < 0 ? "PAST the safe end" : "to spare as entered"}: ${shortState(when)}`,
    ...(spareUs < 0 ? { warn: true } : {}),
  });
  return [
    fact("Lowest", channel.extremes.low, spare.lowUs),
    fact("Highest", channel.extremes.high, spare.highUs),
  ];
}

function transitFacts({ channel }: SheetServo): Fact[] {
  const transits = channel.transits ?? [];
  const longest = new Map<string, (typeof transits)[number]>();
  for (const transit of transits) {
    const known = longest.get(transit.control);
    if (known === undefined || transit.seconds > known.seconds) longest.set(transit.control, transit);
  }
  return [...longest.values()].map(({ control, from, to, seconds, secondsPerFullScale }) => ({
    name: "Transit",
    text: `${visibleText(control)} ${visibleText(from)} to ${visibleText(to)} ${formatTrimmed(seconds, 2)} s (−100 to +100 %: ${formatTrimmed(secondsPerFullScale, 2)} s)`,
  }));
}

function doubtFact({ channel, settings }: SheetServo): Fact[] {
  const { doubt } = channel;
  if (doubt === undefined) return [];
  const least = settings.find((setting) => settingKey(setting) === settingKey(doubt));
  const where = least === undefined ? "" : `, least sure: ${visibleText(shortSetting(least))}`;
  return [
    { name: "Doubt", text: `deflections to ±${formatNumber(doubt.uncertaintyDeg, 1)}° (k = 2)${where}` },
  ];
}

function halfFact(servo: SheetServo): Fact[] {
  const found = findHalf(servo);
  if (found === undefined) return [];
  const { pulseUs } = found;
  const [given, half] = [found.deflectionDeg, found.wantedDeg].map((value) => degreesText(value));
  return [
    {
      name: "Half the pulses",
      text: `(cross, ${microseconds(pulseUs)}) gives ${given}, ${given === half ? "half the deflection" : `not ${half}`}`,
    },
  ];
}

function curveFact({ channel }: SheetServo, { radio }: SetupPlan): Fact[] {
  const { curve, curveWorstDeg } = channel;
  if (curve === undefined) return [];
  const numbers = numbersOf(radio);
  const points = curve.map((point) => {
    const typed = numbers.typed(point);
    const given = numbers.byShare ? withUnit(typed, "position", numbers) : typed;
    return `${numbers.percent(point.commandPercent)} to ${given}`;
  });
  const worst = curveWorstDeg === undefined ? "" : `; at most ${formatNumber(curveWorstDeg, 2)}° off between`;
  return [{ name: "Curve in place of ENTER", text: `${points.join("; ")}${worst}` }];
}

function loadFact({ channel }: SheetServo): Fact[] {
  const { load } = channel;
  if (load === undefined) return [];
  return [
    {
      name: "Load",
      text: `about ${formatNumber(load.share * 100, 0)} % of ${formatNumber(load.heldNm, 2)} N m at ${formatNumber(load.airspeedMps, 1)} m/s: ${shortState(load.when)}`,
      ...(load.share > 1 ? { warn: true as const } : {}),
    },
  ];
}

function powerUpFact({ channel }: SheetServo): Fact[] {
  const { powerUp } = channel;
  if (powerUp === undefined) return [];
  const at = powerUp.deflectionDeg === undefined ? "" : `, ${degreesText(powerUp.deflectionDeg)}`;
  return [
    { name: "Power-up", text: `${microseconds(powerUp.pulseUs)}${at} before the transmitter is heard` },
  ];
}

function readingsText(bench: Servo["bench"] | undefined): string {
  const readings = bench?.readings ?? [];
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

/** When and how it was measured, and all that was not, in one line that cannot be overlooked. */
function benchFacts({ channel, settings }: SheetServo, bench: Servo["bench"] | undefined): Fact[] {
  const { on, supply, temperature } = bench?.measured ?? {};
  const known = [
    ...(on === undefined ? [] : [visibleText(on)]),
    ...(supply === undefined ? [] : [`${formatTrimmed(supply, 2)} V`]),
    ...(temperature === undefined ? [] : [`${formatTrimmed(temperature, 1)} °C`]),
  ];
  const missing = [
    ...(bench?.up === undefined ? ["a stop up"] : []),
    ...(channel.powerUp === undefined ? ["power-up"] : []),
    ...(settings.some(({ load }) => load !== undefined) ? [] : ["load"]),
    ...(known.length === 0
      ? ["date, supply, temperature"]
      : [
          ...(on === undefined ? ["date"] : []),
          ...(supply === undefined ? ["supply"] : []),
          ...(temperature === undefined ? ["temperature"] : []),
        ]),
  ];
  return [
    ...(known.length === 0 ? [] : [{ name: "Bench", text: known.join(", ") }]),
    ...(missing.length === 0 ? [] : [{ name: notMeasured, text: missing.join(", "), warn: true as const }]),
  ];
}
