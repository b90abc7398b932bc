import { type Extreme, formatNumber, type PlanChannel } from "@hingeline/core";
import { wordsOf } from "./doubt-causes.ts";
import { type Numbers, pulseText, signed } from "./numbers.ts";
import { sparePulses } from "./spare-pulses.ts";
import { settingText, stateText } from "./state-text.ts";
import { visibleText } from "./visible-text.ts";
import { hang } from "./wrap-text.ts";

/** How far the controls take a channel, how fast, against what load, and how sure that is: a line or two each. */
export function travelLines(channel: PlanChannel, numbers: Numbers, columns: number): string[] {
  const lines = [
    ...extremeTexts(channel, numbers),
    ...powerUpTexts(channel, numbers),
    ...doubtTexts(channel),
    ...summedTexts(channel),
    ...transitTexts(channel),
    ...loadTexts(channel),
  ];
  return lines.flatMap(([head, text]) => hang(head.padEnd(11), text, columns));
}

type Line = readonly [head: string, text: string];

function extremeTexts(channel: PlanChannel, numbers: Numbers): Line[] {
  const { low, high } = channel.extremes;
  const spare = sparePulses(channel);
  const text = ({ pulseUs, percent, when }: Extreme, spareUs: number) => {
    const left = `${pulseText(Math.abs(spareUs))} ${spareUs < 0 ? "PAST the safe end" : "to spare as entered"}`;
    return `${pulseText(pulseUs)} (${numbers.exactPercent(percent)} %), ${left}: ${stateText(when)}`;
  };
  return [
    ["Lowest", text(low, spare.lowUs)],
    ["Highest", text(high, spare.highUs)],
  ];
}

function powerUpTexts({ powerUp }: PlanChannel, numbers: Numbers): Line[] {
  if (powerUp === undefined) return [];
  const { pulseUs, percent, deflectionDeg } = powerUp;
  const deflection = deflectionDeg === undefined ? "" : `, ${signed(deflectionDeg, 1)} deg`;
  const text = `${pulseText(pulseUs)} (${numbers.exactPercent(percent)} %)${deflection}, until the receiver hears the transmitter`;
  return [["Power-up", text]];
}

function doubtTexts({ doubt }: PlanChannel): Line[] {
  if (doubt === undefined) return [];
  const causes = doubt.budget
    .slice(0, 3)
    .map(
      ({ cause, share, assumed }) =>
        `${wordsOf(cause)}${assumed === undefined ? "" : " (assumed)"} ${formatNumber(share * 100, 0)} %`,
    );
  const why = causes.length === 0 ? "" : `; it comes from ${causes.join(", ")}`;
  const text = `${settingText(doubt)} is the least sure, within ${formatNumber(doubt.uncertaintyDeg, 2)} deg (k = 2)${why}`;
  return [["Doubt", text]];
}

function summedTexts({ summed }: PlanChannel): Line[] {
  if (summed === undefined) return [];
  const { wantedDeg, givesDeg, errorDeg, when } = summed;
  const text = `added up in percent it would be ${signed(givesDeg, 2)} deg in place of ${signed(wantedDeg, 2)} deg (${signed(errorDeg, 2)} deg off): ${stateText(when)}`;
  return [["Summed", text]];
}

function transitTexts({ transits = [] }: PlanChannel): Line[] {
  return transits.map(({ control, from, to, seconds, secondsPerFullScale, fastestSeconds }) => {
    const way = `${visibleText(control)} from ${visibleText(from)} to ${visibleText(to)}`;
    const fastest =
      fastestSeconds === undefined ? "" : `; the servo alone needs ${formatNumber(fastestSeconds, 2)} s`;
    const scale = `from -100 to +100 %: ${formatNumber(secondsPerFullScale, 2)} s`;
    return ["Transit", `${way} in ${formatNumber(seconds, 2)} s (${scale})${fastest}`];
  });
}

function loadTexts({ load }: PlanChannel): Line[] {
  if (load === undefined) return [];
  const { worstNm, heldNm, share, when, airspeedMps } = load;
  const torque = `about ${formatNumber(worstNm, 2)} of ${formatNumber(heldNm, 2)} N m (${formatNumber(share * 100, 0)} %)`;
  return [["Load", `${torque} at ${formatNumber(airspeedMps, 1)} m/s: ${stateText(when)}`]];
}
