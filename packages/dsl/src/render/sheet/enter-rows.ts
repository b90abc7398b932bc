import {
  type Edit,
  formatNumber,
  type Position,
  type Setting,
  type SetupPlan,
  typedPercent,
} from "@hingeline/core";
import { decimalsShown } from "../decimals-shown.ts";
import { numbersOf, signed, type TypedKind, unitOf } from "../numbers.ts";
import { visibleText } from "../visible-text.ts";
import { type LineName, type ReadBack, verdictsAt } from "./read-back.ts";
import { type SheetServo, settingKey } from "./servo-on-sheet.ts";

/** One value to enter and what must come of it, as text. */
export interface EnterRow {
  readonly key: string;
  readonly name: string;
  /** What is wanted: "-18.0°, -15.0 mm"; of a limit, which stop it keeps from. */
  readonly detail: string;
  readonly enter: string;
  /** Of `enter` and `adds` where limits scale; absent where all are percents. */
  readonly unit?: string;
  /** For transmitters that add up; absent where nothing is added. */
  readonly adds?: string;
  readonly pulse: string;
  /** What was read there, or what belongs there where nothing was. */
  readonly read: ReturnType<typeof verdictsAt>;
}

/**
 * What is entered for one servo's channel, in the order in which it is safe: limits first. Where limits scale, a position is the
 * share of the way between them, otherwise an absolute percent. Values are those of the procedure where there is one.
 */
export function enterRows(servo: SheetServo, plan: SetupPlan, readBack: ReadBack): EnterRow[] {
  const { described, channel, settings } = servo;
  const { limits, neutral, failsafe } = channel;
  const numbers = numbersOf(plan.radio);
  const edits = plan.procedure.flatMap((step) =>
    step.edits.filter((edit) => edit.channel === channel.channel),
  );
  const position = (value: Position) => typedPercent(value, plan.radio);
  const entered = ({ enter }: Setting) => position(enter);
  const rest = edits.find(({ set }) => set === "neutral")?.percent ?? position(neutral);
  const restUs = settings.find((setting) => entered(setting) === rest)?.enter.pulseUs ?? neutral.pulseUs;
  const row = (line: LineName, name: string, detail: string, percent: number, pulseUs: number): EnterRow => {
    const kind: TypedKind = line === "limitLow" || line === "limitHigh" ? "limit" : "position";
    return {
      key: typeof line === "string" ? line : line.setting,
      name,
      detail,
      enter: numbers.percent(percent),
      ...(numbers.byShare ? { unit: unitOf(kind, numbers) } : {}),
      pulse: formatNumber(pulseUs, 1),
      read: verdictsAt(readBack, servo, line),
    };
  };
  const [lowEnd, highEnd] = described.rising ? ["(up)", "(down)"] : ["(down)", "(up)"];
  return [
    row("limitLow", "low limit", lowEnd, limits.low.percent, limits.low.pulseUs),
    row("limitHigh", "high limit", highEnd, limits.high.percent, limits.high.pulseUs),
    row("neutral", "at rest", restDetail(settings), rest, restUs),
    ...settings.map((setting): EnterRow => {
      const adds = addsOf(setting, edits);
      return {
        ...row(
          { setting: settingKey(setting) },
          rowName(setting),
          wantedText(setting),
          entered(setting),
          setting.enter.pulseUs,
        ),
        ...(adds === 0 ? {} : { adds: numbers.percent(adds) }),
      };
    }),
    row("failsafe", "failsafe", "", position(failsafe), failsafe.pulseUs),
  ];
}

/** The rows of several servos side by side: each has every row that any of them has, in the same order. */
export function alignRows(
  lists: readonly (readonly EnterRow[])[],
): readonly (readonly (EnterRow | undefined)[])[] {
  const keys = [...new Set(lists.flatMap((rows) => rows.map(({ key }) => key)))];
  const last = keys.indexOf("failsafe");
  if (last >= 0) keys.push(...keys.splice(last, 1));
  return lists.map((rows) => keys.map((key) => rows.find((row) => row.key === key)));
}

function addsOf(setting: Setting, edits: readonly Edit[]): number {
  const key = settingKey(setting);
  const edit = edits.find(
    (edit) => (edit.set === "detent" || edit.set === "stick") && settingKey(edit) === key,
  );
  return edit?.addPercent ?? setting.enter.addPercent;
}

/** "flap landing", "roll -1, phase thermal". */
function rowName({ control, detent, stick, when = {} }: Setting): string {
  const own = `${visibleText(control)} ${detent === undefined ? (stick === 1 ? "+1" : "-1") : visibleText(detent)}`;
  return [own, ...Object.entries(when).map((one) => one.map(visibleText).join(" "))].join(", ");
}

/** Where the selectors stand at rest, which is their first detent: "flap level". */
function restDetail(settings: readonly Setting[]): string {
  const first = new Map<string, string>();
  for (const { control, detent } of settings)
    if (detent !== undefined && !first.has(control)) first.set(control, detent);
  return [...first].map((one) => one.map(visibleText).join(" ")).join(", ");
}

function wantedText({ wanted }: Setting): string {
  if (wanted === undefined) return "degrees NOT MEASURED";
  const throwText = wanted.throwMm === undefined ? "" : `, ${signed(wanted.throwMm, 1)}\u00a0mm`;
  return `${signed(wanted.deflectionDeg, decimalsShown([wanted.deflectionDeg]))}°${throwText}`;
}
