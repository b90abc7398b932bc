import {
  formatNumber,
  formatTrimmed,
  type PlanControl,
  type PlanMatch,
  type PlanRadio,
  type SetupPlan,
} from "@hingeline/core";
import { channelToText } from "./channel-to-text.ts";
import { countFindings, type FindingOptions, findingLines } from "./findings-to-text.ts";
import { gangLines } from "./gang-lines.ts";
import { numbersOf } from "./numbers.ts";
import { type Paint, paintFor } from "./paint.ts";
import { procedureLines } from "./procedure-lines.ts";
import { visibleText } from "./visible-text.ts";
import { hang, wrapText } from "./wrap-text.ts";

/**
 * The plan as text for the bench, at most `columns` wide (80 or more), ending with a line feed. A plan with an error opens with the sentence that
 * it must not be entered, its errors straight below; otherwise the findings follow the channels.
 */
export function planToText(
  plan: SetupPlan,
  { colour = false, columns = 80, frames }: FindingOptions = {},
): string {
  const paint = paintFor(colour);
  const numbers = numbersOf(plan.radio);
  const errors = plan.findings.filter(({ severity }) => severity === "error");
  const others = plan.findings.filter(({ severity }) => severity !== "error");
  const refused = errors.length > 0;
  const lines = [
    ...refusal(errors.length, paint, columns),
    ...findingLines(errors, paint, columns, frames),
    ...(refused ? [""] : []),
    ...headOf(plan, paint, columns),
    ...plan.channels.flatMap((channel) => [
      "",
      ...channelToText(channel, { numbers, paint, columns, refused }),
    ]),
    ...section(
      "MATCHED SURFACES",
      plan.matches.flatMap((match) => ["", ...matchLines(match, columns)]),
      paint,
      columns,
    ),
    ...section(
      "SERVOS ON ONE SURFACE",
      plan.gangs.flatMap((gang) => ["", ...gangLines(gang, columns)]),
      paint,
      columns,
    ),
    ...section("FINDINGS", findingLines(others, paint, columns, frames), paint, columns),
    ...section("PROCEDURE", procedureLines(plan.procedure, numbers, paint, columns), paint, columns),
    ...section(
      "CAUTIONS",
      ["", ...plan.cautions.flatMap((text) => hang("- ", visibleText(text), columns))],
      paint,
      columns,
    ),
  ];
  return `${lines.join("\n")}\n`;
}

function refusal(count: number, paint: Paint, columns: number): string[] {
  if (count === 0) return [];
  const errors = count === 1 ? "1 error" : `${count} errors`;
  return wrapText(`DO NOT ENTER THIS PLAN: it has ${errors}.`, columns).map((line) =>
    paint.strong(paint.error(line)),
  );
}

function headOf(
  { model, radio, controls, channels, findings }: SetupPlan,
  paint: Paint,
  columns: number,
): string[] {
  const count = channels.length === 1 ? "1 channel" : `${channels.length} channels`;
  return [
    ...hang("SETUP PLAN   ", visibleText(model), columns).map(paint.strong),
    "",
    ...hang("Radio      ", radioText(radio), columns),
    ...hang("Controls   ", controls.map(controlText).join("; "), columns),
    ...hang("Holds      ", `${count}; ${countFindings(findings)}`, columns),
    ...hang(
      "Signs      ",
      "deflections are positive trailing edge down, a rudder's trailing edge to port",
      columns,
    ),
    ...hang(
      "Columns    ",
      [
        radio.endPoints === "scale"
          ? "ENTER is the percent of a limit, and of a position its share between the channel's low limit (-100) and its high limit (+100), every other control at rest. A percent beside a pulse is of the signal scale."
          : "ENTER is the channel's value with every other control at rest.",
        "adds is what a position adds to the channel's value at rest, for a transmitter that sums.",
        ...(channels.some(({ curve }) => curve !== undefined)
          ? [
              "curve is for one whose curve is entered too: then it takes the place of ENTER, and sums of it are sums of degrees.",
            ]
          : []),
      ].join(" "),
      columns,
    ),
  ];
}

function controlText(one: PlanControl): string {
  const name = visibleText(one.control);
  if (one.kind === "selector") {
    const [rest, ...others] = one.detents.map(visibleText);
    return `${name}: ${[`${rest} (at rest)`, ...others].join(", ")}`;
  }
  const rests = one.rests === 0 ? "stick" : `lever, at rest at ${one.rests === 1 ? "+1" : "-1"}`;
  return `${name}: ${rests}${one.trimPercent === 0 ? "" : `, trim ${formatTrimmed(one.trimPercent, 2)} %`}`;
}

function radioText({
  name,
  centreUs,
  per100Us,
  reachPercent,
  stepPercent,
  endPoints,
  curvePoints,
  curveSpacing = "equal",
}: PlanRadio): string {
  const span =
    typeof per100Us === "number"
      ? `${formatTrimmed(per100Us, 3)} us`
      : `${formatTrimmed(per100Us.below, 3)} us below and ${formatTrimmed(per100Us.above, 3)} us above the centre`;
  const points =
    curvePoints === 0
      ? "no curve"
      : `a curve of ${curvePoints} points${curveSpacing === "free" ? ", freely placed" : ""}`;
  const ends = endPoints === "clamp" ? "limits cut the output" : "limits scale the output";
  return `${visibleText(name)}: centre ${formatTrimmed(centreUs, 3)} us, ${span} per 100 %, steps of ${formatTrimmed(stepPercent, 6)} % up to ${formatTrimmed(reachPercent, 6)} %; ${ends}; ${points}`;
}

function matchLines(
  { group, withinDeg, worstDeg, between, surfaces, at, uncertaintyDeg }: PlanMatch,
  columns: number,
): string[] {
  const [first, second] = surfaces.map(visibleText);
  const [from, to] = between.map(visibleText);
  const where =
    from === to ? `at ${from}` : `between ${from} and ${to}, ${formatNumber(at * 100, 0)} % of the way`;
  return hang(
    "  ",
    `${visibleText(group)}: ${first} and ${second} differ by ${formatNumber(worstDeg, 2)} deg at most (doubt ${formatNumber(uncertaintyDeg, 2)} deg), ${formatTrimmed(withinDeg, 2)} deg are allowed; ${where}`,
    columns,
  );
}

function section(title: string, lines: readonly string[], paint: Paint, columns: number): string[] {
  return lines.length === 0 ? [] : ["", "-".repeat(columns), paint.strong(title), ...lines];
}
