import {
  type BenchNext,
  type BenchProgress,
  benchProgress,
  formatNumber,
  formatTrimmed,
  hasErrors,
  type Radio,
  toPercent,
  us,
} from "@hingeline/core";
import { alignTable } from "../render/align-table.ts";
import { findingLines } from "../render/findings-to-text.ts";
import { signed } from "../render/numbers.ts";
import { type Paint, paintFor } from "../render/paint.ts";
import { visibleText } from "../render/visible-text.ts";
import { hang } from "../render/wrap-text.ts";
import { benchAt } from "./bench-at.ts";
import type { Session } from "./session.ts";

const columns = 78;

/**
 * What the last answer means, as lines: the pulse as percent, and where readings are taken all of them with deflection, slope,
 * residual and hysteresis, how well each wanted deflection is known, and where to read next. Empty where nothing was entered.
 */
export function progressLines(session: Session, paint: Paint = paintFor(false)): readonly string[] {
  const { entered, model, note } = session;
  if (entered === undefined) return [];
  const progress = benchProgress(model, entered.servo);
  if (progress === undefined) return [];
  const noted = note === undefined ? [] : hang("  ", note, columns);
  if (entered.step === "level" || entered.step === "up" || entered.step === "down") {
    const { pulseUs = 0, step } = entered;
    const percent = percentText(model.radio, pulseUs);
    // That level is not among the readings is told where level is entered; the stops have no part in it.
    const wrong = progress.findings.filter(
      ({ at, code }) =>
        /\.bench(\.(up|level|down|guard))?$/.test(at) && (step === "level" || code !== "level-not-measured"),
    );
    return [`  ${step}: ${pulseUs} us, ${percent} %`, ...findingLines(wrong, paint, columns)];
  }
  return [
    ...noted,
    ...pointTable(progress, model.radio, entered.pulseUs, paint),
    ...wantedLines(progress),
    ...findingLines(progress.findings, paint, columns),
    ...nextLines(progress, benchAt(model, entered.servo).readings?.length ?? 0, paint),
  ];
}

function pointTable(
  { points }: BenchProgress,
  radio: Radio,
  enteredUs: number | undefined,
  paint: Paint,
): readonly string[] {
  if (points.length === 0) return [];
  const column = (head: string, unit: string, cells: readonly string[]) => ({ head, unit, cells });
  const optional = (value: number | undefined, decimals: number) =>
    value === undefined ? "-" : signed(value, decimals);
  // Out and back at one point lie up to 2 us apart.
  const isEntered = (pulseUs: number) => enteredUs !== undefined && Math.abs(pulseUs - enteredUs) <= 1;
  return [
    "",
    ...alignTable(
      "",
      points.map(({ pulseUs }) => (isEntered(pulseUs) ? "entered" : "")),
      [
        column(
          "pulse",
          "us",
          points.map(({ pulseUs }) => formatTrimmed(pulseUs, 1)),
        ),
        column(
          "percent",
          "%",
          points.map(({ pulseUs }) => percentText(radio, pulseUs)),
        ),
        {
          ...column(
            "deflection",
            "deg",
            points.map(({ deflectionDeg }) => signed(deflectionDeg, 1)),
          ),
          paint: paint.strong,
        },
        column(
          "slope",
          "deg/us",
          points.map(({ slopeDegPerUs }) => optional(slopeDegPerUs, 4)),
        ),
        column(
          "residual",
          "deg",
          points.map(({ residualDeg }) => optional(residualDeg, 2)),
        ),
        column(
          "out-back",
          "deg",
          points.map(({ hysteresisDeg }) => optional(hysteresisDeg, 2)),
        ),
      ],
      columns,
    ),
  ];
}

function wantedLines({ wanted }: BenchProgress): readonly string[] {
  if (wanted.length === 0) return [];
  return [
    "",
    ...wanted.flatMap(({ what, deflectionDeg, known }) => {
      const text =
        known === undefined
          ? "outside the readings: not measured"
          : `at ${formatNumber(known.pulseUs, 1)} us, known to ±${formatNumber(known.uncertaintyDeg, 1)} deg (k = 2)${
              known.gapDeg === undefined ? "" : `, and the gap may cost ${formatNumber(known.gapDeg, 1)} deg`
            }`;
      return hang("  ", `${visibleText(what)}: ${signed(deflectionDeg, 1)} deg ${text}`, columns);
    }),
  ];
}

function nextLines({ next, findings }: BenchProgress, readings: number, paint: Paint): readonly string[] {
  const suspicious = findings.some(({ code }) => code === "suspicious-reading");
  const text =
    next === undefined
      ? readings > 1 && hasErrors({ findings })
        ? "Next: correct what is wrong above; drop a reading, or read it again."
        : "Next: as many readings as you like; no deflection is wanted here."
      : suspicious
        ? "Next: read again the one that is named above."
        : nextSentence(next);
  return ["", ...hang("  ", text, columns).map(paint.strong)];
}

function nextSentence(next: BenchNext): string {
  const at = (pulseUs: number) => `${formatTrimmed(pulseUs, 1)} us`;
  switch (next.kind) {
    case "start":
      return `Next: read at ${at(next.pulseUs)}.`;
    case "shapeUnknown":
      return `Next: read at ${at(next.pulseUs)}; two readings do not show how the response bends.`;
    case "beyond":
      return `Next: read at the stop, ${at(next.pulseUs)}; ${signed(next.wantedDeg, 1)} deg is wanted and lies outside the readings.`;
    case "gap":
      return `Next: read at ${at(next.pulseUs)}; for ${signed(next.wantedDeg, 1)} deg the gap there may cost ${formatNumber(next.gapDeg, 2)} deg, a reading ${formatNumber(next.readingDeg, 2)} deg.`;
    case "enough":
      return "Enough: at every wanted deflection one more reading would add less than its own doubt.";
  }
}

function percentText(radio: Radio, pulseUs: number): string {
  return signed(toPercent(radio, us(pulseUs)), 1);
}
