import {
  type AsBuilt,
  type Cause,
  formatNumber,
  type LineVerdict,
  type MatchVerdict,
  type Outcome,
  type PulseVerdict,
  type SetupPlan,
  type Verification,
} from "@hingeline/core";
import { pulseText } from "./numbers.ts";
import { type Paint, paintFor } from "./paint.ts";
import { placeText, verifiedChannel, verifiedMatches } from "./verify-tables.ts";
import { visibleText } from "./visible-text.ts";
import { hang, wrapText } from "./wrap-text.ts";

/**
 * As-built readings held against their plan, as text for the bench, at most `columns` wide (80 or more), ending with a line feed. What is
 * unsafe comes first, then the causes, every line of the plan with its verdict, the cautions, and the lines to sign.
 */
export function verifyToText(
  verification: Verification,
  plan: SetupPlan,
  asBuilt: AsBuilt,
  { colour = false, columns = 80 }: { readonly colour?: boolean; readonly columns?: number } = {},
): string {
  const paint = paintFor(colour);
  const { verdicts, causes } = verification;
  const matches = verdicts.filter((one): one is MatchVerdict => one.quantity === "match");
  const rule = "-".repeat(columns);
  const section = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ["", rule, paint.strong(title), "", ...lines];
  const lines = [
    ...headOf(verification, plan, asBuilt, paint, columns),
    ...unsafeLines(verdicts, plan, columns).map(paint.error),
    ...section("CAUSES", causeLines(causes, verdicts, columns)),
    ...plan.channels.flatMap((channel) => ["", rule, ...verifiedChannel(channel, verdicts, paint, columns)]),
    ...section("MATCHED SURFACES", verifiedMatches(matches, paint, columns)),
    ...section(
      "NOT IN THE PLAN",
      verification.strays.flatMap((text) => hang("- ", visibleText(text), columns)),
    ),
    ...section("CAUTIONS", cautionLines(plan, asBuilt, columns)),
    ...section("SIGN-OFF", signLines(verification, asBuilt, columns)),
  ];
  return `${lines.join("\n")}\n`;
}

function headOf(
  { revision, verdicts, passed }: Verification,
  plan: SetupPlan,
  { by = "", date = "" }: AsBuilt,
  paint: Paint,
  columns: number,
): string[] {
  const count = (outcome: Outcome) => verdicts.filter((one) => one.outcome === outcome).length;
  const counts = `of ${verdicts.length} lines ${count("agrees")} agreed, ${count("differs")} differed, ${count("cannotTell")} cannot be told, ${count("notMeasured")} not measured`;
  const result = passed
    ? "PASSED as far as it was measured"
    : count("notMeasured") === verdicts.length
      ? "NOTHING WAS MEASURED"
      : "NOT PASSED";
  const who = [...(by === "" ? [] : [`by ${visibleText(by)}`]), ...(date === "" ? [] : [visibleText(date)])];
  return [
    ...hang("AS-BUILT   ", visibleText(plan.model), columns).map(paint.strong),
    "",
    ...hang("Result     ", `${result}: ${counts}`, columns).map(passed ? paint.strong : paint.error),
    ...hang("Plan       ", `revision ${revision.ofPlan}`, columns),
    ...hang(
      "Readings   ",
      [`taken on revision ${revision.measured}${revision.same ? "" : ", ANOTHER PLAN"}`, ...who].join(", "),
      columns,
    ),
    ...hang(
      "Signs      ",
      "deflections are positive trailing edge down, a rudder's trailing edge to port",
      columns,
    ),
  ];
}

function unsafeLines(verdicts: readonly LineVerdict[], { channels }: SetupPlan, columns: number): string[] {
  const unsafe = verdicts.filter(
    (one): one is PulseVerdict => one.quantity === "pulse" && one.unsafe === true,
  );
  const lines = unsafe.flatMap((verdict) => {
    const [lowUs, highUs] = channels.find(({ channel }) => channel === verdict.channel)?.safeUs ?? [0, 0];
    return hang(
      "! ",
      `Channel ${verdict.channel}, ${placeText(verdict)}: ${pulseText(verdict.readUs ?? 0)} is outside the safe ${formatNumber(lowUs, 1)} to ${pulseText(highUs)}. Receiver off; do not connect it.`,
      columns,
    );
  });
  return lines.length === 0 ? [] : ["", ...lines];
}

function causeLines(causes: readonly Cause[], verdicts: readonly LineVerdict[], columns: number): string[] {
  const differs = verdicts.some(({ outcome }) => outcome === "differs");
  if (causes.length === 0)
    return differs ? wrapText("No single cause that is known here gives all the readings.", columns) : [];
  const complete = causes.some(({ all }) => all);
  const intro = !complete
    ? "No single cause gives all the readings. Of its own channel each of these would:"
    : causes.length === 1
      ? "This alone would give all the readings:"
      : "Any one of these would give all the readings:";
  return [
    ...wrapText(intro, columns),
    ...causes.flatMap((cause) => [
      "",
      ...hang("- ", visibleText(cause.message), columns),
      ...hang("  -> ", visibleText(cause.do), columns),
    ]),
  ];
}

function cautionLines({ cautions }: SetupPlan, { checkedBy = "" }: AsBuilt, columns: number): string[] {
  const second =
    checkedBy === ""
      ? ["No second person has checked this. Have it read back by someone else before flight."]
      : [];
  return [...second, ...cautions].flatMap((text) => hang("- ", visibleText(text), columns));
}

function signLines(
  { revision, passed }: Verification,
  { by = "", checkedBy = "" }: AsBuilt,
  columns: number,
): string[] {
  const line = "_".repeat(30);
  const names = [
    ["Builder", by],
    ["Checker", checkedBy],
  ] as const;
  return [
    ...(passed ? [] : [...wrapText("Not to be signed until it passes.", columns), ""]),
    ...wrapText(`Read back and measured against plan revision ${revision.ofPlan}.`, columns),
    ...names.flatMap(([role, name]) => [
      "",
      ...(name === "" ? [] : hang(`${role}    `, visibleText(name), columns)),
      `${name === "" ? role : "Signed "}    ${line}   Date ${"_".repeat(14)}`,
    ]),
  ];
}
