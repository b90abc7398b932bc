import {
  type CalibrationProblem,
  formatNumber,
  formatTrimmed,
  type MeasuredRadio,
  type ReceiverReading,
  type ScaleKink,
  type ScaleProblem,
} from "@hingeline/core";
import { alignTable } from "./align-table.ts";
import { signed } from "./numbers.ts";
import { wrapText } from "./wrap-text.ts";

/** How the readings lie about a measured radio, and the radio for a model file, as text ending with a line feed. */
export function radioToText(
  measured: MeasuredRadio,
  readings: readonly ReceiverReading[],
  columns = 80,
): string {
  const { calibration, radio, centreUncertaintyUs, per100UncertaintyUs } = measured;
  const { residuals } = calibration;
  const spans =
    typeof per100UncertaintyUs === "number"
      ? `within ${doubtText(per100UncertaintyUs)}`
      : `within ${doubtText(per100UncertaintyUs.below)} and ${doubtText(per100UncertaintyUs.above)}`;
  const per100 =
    typeof radio.per100 === "number"
      ? `us(${radio.per100})`
      : `{ below: us(${radio.per100.below}), above: us(${radio.per100.above}) }`;
  const lines = [
    ...alignTable(
      "Reading",
      readings.map(({ percent }) => `${signed(percent, 2).replace(/\.?0+$/, "")} %`),
      [
        { head: "read", unit: "us", cells: readings.map(({ pulse }) => formatNumber(pulse, 1)) },
        { head: "off by", unit: "us", cells: residuals.map(({ residualUs }) => signed(residualUs, 1)) },
        { head: "used", unit: "", cells: residuals.map(({ used }) => (used ? "yes" : "no")) },
      ],
      columns,
    ),
    "",
    ...radioWarnings(measured).flatMap((text) => [...wrapText(`WARNING: ${text}`, columns), ""]),
    "radio: {",
    `  name: ${JSON.stringify(radio.name)},`,
    `  centre: us(${radio.centre}), // within ${doubtText(centreUncertaintyUs)} (k = 2)`,
    `  per100: ${per100}, // ${spans} (k = 2)`,
    `  reach: pct(${radio.reach}),`,
    `  step: pct(${radio.step}), // stated`,
    `  endPoints: "${radio.endPoints}", // stated`,
    `  curvePoints: ${radio.curvePoints},${radio.curvePoints === 0 ? " // no curve is used" : " // stated"}`,
    "},",
  ];
  return `${lines.join("\n")}\n`;
}

/** What is not as a plain scale would have it, a sentence or two each. */
export function radioWarnings({ calibration }: MeasuredRadio): readonly string[] {
  const { kinks, fits, largest } = calibration;
  return [
    ...kinks.map(kinkText),
    ...(fits
      ? []
      : [
          `no scale goes through these readings: the worst is ${signed(largest.residualUs, 1)} us off. Read it again, with no limit, shift, curve or mix on the channel.`,
        ]),
  ];
}

/** Why readings give no radio, in one sentence. */
export function radioProblemText(problem: CalibrationProblem | ScaleProblem): string {
  switch (problem.kind) {
    case "not-finite":
      return `Reading ${problem.index + 1} is no number.`;
    case "too-few-readings":
      return `${counted(problem.count, "reading is", "readings are")} too few: ${problem.needed} are needed, one near 0 % and one far out on either side.`;
    case "too-few-percents": {
      const flat = problem.leftOut === 0 ? "" : ` (${problem.leftOut} on a clamp left out)`;
      return `The readings are at ${counted(problem.distinct, "percent", "different percents")}${flat}; ${problem.needed} are needed.`;
    }
    case "not-rising":
      return "The pulse does not rise with the percent: take the readings on a channel that is not reversed.";
    case "not-positive":
      return `The radio's ${problem.field} would be ${formatTrimmed(problem.value, 3)}; it has to be above 0.`;
    case "step-past-reach":
      return `A step of ${formatTrimmed(problem.stepPercent, 3)} % is larger than the reach of ${formatTrimmed(problem.reachPercent, 3)} %.`;
  }
}

function kinkText({ kind, where, fromPercent, toPercent, pulseUs, meetsPercent }: ScaleKink): string {
  const range = `${signed(fromPercent, 1)} to ${signed(toPercent, 1)} %`;
  if (where === "inside")
    return `between ${range} the pulse stays at ${formatNumber(pulseUs, 1)} us: a curve, a mix or a switch is in the way.`;
  const clamp = `it is met at ${signed(meetsPercent, 1)} %, and the reach ends there`;
  return kind === "flat"
    ? `from ${range} the pulse stays at ${formatNumber(pulseUs, 1)} us, a clamp: ${clamp}.`
    : `at ${formatNumber(pulseUs, 1)} us the ${where} end falls short of what the others expect, as behind a clamp: ${clamp}. One reading more from ${range} would tell.`;
}

function counted(count: number, one: string, several: string): string {
  return `${count} ${count === 1 ? one : several}`;
}

function doubtText(uncertaintyUs: number): string {
  return `${formatNumber(uncertaintyUs, 1)} us`;
}
