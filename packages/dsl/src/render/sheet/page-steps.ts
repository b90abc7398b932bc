import { formatNumber, formatTrimmed, type SetupPlan } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import { shortSetting } from "./servo-on-sheet.ts";
import type { SheetPage } from "./sheet-pages.ts";

/**
 * The order of entry in short, for a page that is used alone: each line is a box to tick. A plan with a procedure has it in full.
 * (common practice, no source)
 */
export function pageSteps(page: SheetPage, plan: SetupPlan): readonly string[] {
  const collapses = plan.procedure.some(({ phase }) => phase === "collapse");
  const positions = positionsInOrder(page, plan);
  const seconds = Math.max(
    0,
    ...page.servos.flatMap(({ channel }) => (channel.transits ?? []).map((one) => one.seconds)),
  );
  return [
    "Receiver OFF; motor safe, propeller off, model held",
    "Servos unplugged or linkages off; pulse meter in",
    "New memory: trims 0, no mix, curve or transit",
    `${collapses ? "Limits to 0, direction" : "Direction"}: larger percent, longer pulse`,
    plan.radio.endPoints === "scale"
      ? "Both limits; they and the direction now stay"
      : "Both limits; the direction now stays",
    `Transmitter on, at rest; receiver ON${readsAtPower(page, plan)}`,
    positions === "" ? "Value at rest; read it" : `At rest, then ${positions}: read each`,
    `${seconds === 0 ? "" : `Transit ${formatTrimmed(seconds, 2)} s; `}failsafe`,
    "All controls to all ends, trims too: pulses safe",
    "Transmitter off: failsafe read",
    "Receiver off and on: no pulse, or a safe one",
    "Receiver off, servos in; on: arms as measured",
    "Receiver off: linkages on one by one, no force",
    "Receiver on: a little first, then all; degrees read",
  ].map(upperFirst);
}

/** What to do about a reading that is not as stated. (common practice, no source) */
export function ifDifferent(withinUs: number | undefined): string {
  const within = withinUs === undefined ? "" : ` by more than ±${formatNumber(withinUs, 1)} µs`;
  return `A pulse off${within}: receiver off, find why (channel, sign, direction, trim or mix left in). Pulse right, degrees outside their box: arm, linkage or servo; measure its bench again.`;
}

/** What holds for every page that may be used without the overview. */
export const shortCautions =
  "Arithmetic from bench readings: it approves nothing, holds only for what was measured; rules of authority, club and makers come first; the pilot decides. At unexpected movement, buzzing or high current pull the receiver's supply.";

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** ": 1500" with the doubt left to the head of the table; empty where there is no such step. */
function readsAtPower({ servos }: SheetPage, { procedure }: SetupPlan): string {
  const step = procedure.find(({ phase }) => phase === "power");
  const pulses = new Set(
    servos.flatMap(({ channel }) =>
      (step?.expect ?? [])
        .filter((one) => one.channel === channel.channel)
        .map(({ pulseUs: [lowUs, highUs] }) => formatNumber((lowUs + highUs) / 2, 1)),
    ),
  );
  return pulses.size === 0 ? "" : `: reads ${[...pulses].join(" and ")}`;
}

/** The positions as the procedure takes them, the nearest first. */
function positionsInOrder({ servos }: SheetPage, { procedure }: SetupPlan): string {
  const names = procedure
    .filter(({ phase }) => phase === "positions")
    .flatMap(({ edits }) =>
      edits.filter((edit) => servos.some(({ channel }) => channel.channel === edit.channel)),
    )
    .flatMap(({ control, ...edit }) =>
      control === undefined ? [] : [visibleText(shortSetting({ control, ...edit }))],
    );
  return [...new Set(names)].join(", ");
}
