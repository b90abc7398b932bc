import { type Edit, formatNumber, type ProcedureStep } from "@hingeline/core";
import { type Numbers, pulseText } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { visibleText } from "./visible-text.ts";
import { hang } from "./wrap-text.ts";

const edits: Readonly<Record<Edit["set"], string>> = {
  clear: "new and empty",
  limitLow: "low limit",
  limitHigh: "high limit",
  neutral: "neutral",
  direction: "direction",
  detent: "detent",
  stick: "stick end",
  curve: "curve point",
  transit: "transit",
  failsafe: "failsafe",
};

/** The steps in their order, numbered, each with a box to tick, what it sets and the pulses that it must show. */
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
    const state = `${visibleText(step.phase)}: receiver supply ${step.supply}, linkages ${step.linkage}`;
    return [
      "",
      ...hang(head, visibleText(step.text), columns),
      ...hang(indent, state, columns).map(paint.faint),
      ...step.edits.flatMap(({ channel, set, percent }) => {
        const value = percent === undefined ? "" : `: ${numbers.percent(percent)} %`;
        return hang(`${indent}ENTER  `, `channel ${channel}, ${edits[set]}${value}`, columns).map(
          paint.strong,
        );
      }),
      ...step.expect.flatMap(({ channel, pulseUs: [lowUs, highUs] }) =>
        hang(
          `${indent}check  `,
          `channel ${channel} sends ${formatNumber(lowUs, 1)} to ${pulseText(highUs)}`,
          columns,
        ),
      ),
    ];
  });
}
