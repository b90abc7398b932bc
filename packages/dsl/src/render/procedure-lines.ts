import { type Edit, formatNumber, type ProcedureStep } from "@hingeline/core";
import { type Numbers, pulseText, withUnit } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { settingText } from "./state-text.ts";
import { visibleText } from "./visible-text.ts";
import { hang } from "./wrap-text.ts";

const names: Readonly<Record<Edit["set"], string>> = {
  clear: "a new memory, nothing mixed in",
  limitLow: "low limit",
  limitHigh: "high limit",
  neutral: "at rest",
  direction: "direction: a larger percent gives a longer pulse",
  detent: "detent",
  stick: "stick end",
  transit: "transit",
  failsafe: "failsafe",
};

/**
 * The steps in their order, numbered, each with a box to tick, what it sets and the pulses that it must show. Where supply or
 * linkages are others than in the step before, they stand above the step.
 */
export function procedureLines(
  procedure: readonly ProcedureStep[],
  numbers: Numbers,
  paint: Paint,
  columns: number,
): string[] {
  const digits = String(procedure.length).length;
  return procedure.flatMap((step, index) => {
    const head = `[ ] ${String(index + 1).padStart(digits)}. `;
    const indent = " ".repeat(head.length);
    const state = stateText(step);
    const before = procedure[index - 1];
    const changes = before === undefined || stateText(before) !== state;
    const pulses = (name: string, verb: string, list: ProcedureStep["expect"]) =>
      list.flatMap(({ channel, pulseUs: [lowUs, highUs] }) =>
        hang(
          indent + name,
          `channel ${channel} ${verb} ${formatNumber(lowUs, 1)} to ${pulseText(highUs)}`,
          columns,
        ),
      );
    return [
      "",
      ...(changes ? [...hang("", state, columns).map(paint.strong), ""] : []),
      ...hang(head, visibleText(step.text), columns),
      ...step.edits.flatMap((edit) =>
        hang(`${indent}ENTER  `, editText(edit, numbers), columns).map(paint.strong),
      ),
      ...pulses("check  ", "shows", step.expect),
      ...pulses("reach  ", "can now send", step.reach),
    ];
  });
}

/** "RECEIVER SUPPLY OFF, LINKAGES OFF" */
function stateText({ supply, linkage }: ProcedureStep): string {
  return `RECEIVER SUPPLY ${supply.toUpperCase()}, LINKAGES ${linkage.toUpperCase()}`;
}

/** "channel 5, flap at landing: -53 %, adds -125 %": one thing to enter, without styling; a position in shares where limits scale. */
export function editText(edit: Edit, numbers: Numbers): string {
  const { channel, control, percent, addPercent, seconds } = edit;
  const place =
    control === undefined || edit.set === "transit" ? names[edit.set] : settingText({ ...edit, control });
  const timed = control !== undefined && edit.set === "transit" ? ` of ${visibleText(control)}` : "";
  const kind = edit.set === "limitLow" || edit.set === "limitHigh" ? "limit" : "position";
  const values = [
    ...(percent === undefined ? [] : [withUnit(numbers.percent(percent), kind, numbers)]),
    ...(addPercent === undefined ? [] : [`adds ${withUnit(numbers.percent(addPercent), kind, numbers)}`]),
    ...(seconds === undefined ? [] : [`${formatNumber(seconds, 2)} s`]),
  ];
  return `channel ${channel}, ${place}${timed}${values.length === 0 ? "" : `: ${values.join(", ")}`}`;
}
