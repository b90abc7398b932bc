import type { LineVerdict, SetupPlan } from "@hingeline/core";
import { type Numbers, numbersOf } from "../numbers.ts";
import { visibleText } from "../visible-text.ts";
import { type Element, h, trueMinus } from "./element.ts";
import { alignRows, type EnterRow, enterRows } from "./enter-rows.ts";
import type { ReadBack } from "./read-back.ts";
import { expectedText, readText, verdictText } from "./read-words.ts";
import type { SheetServo } from "./servo-on-sheet.ts";
import type { SheetPage } from "./sheet-pages.ts";

/** The rows before it are the two limits. */
const firstPosition = 2;

/** The values to enter, one table a servo with the same rows side by side, and blanks for what is read back. */
export function enterTables(page: SheetPage, plan: SetupPlan, readBack: ReadBack): Element {
  const lists = alignRows(page.servos.map((servo) => enterRows(servo, plan, readBack)));
  const numbers = numbersOf(plan.radio);
  return h(
    "div",
    { class: "pair" },
    page.servos.map((servo, index) => enterTable(servo, lists[index] ?? [], page.key, numbers, readBack)),
  );
}

function enterTable(
  { described, channel, key }: SheetServo,
  rows: readonly (EnterRow | undefined)[],
  page: string,
  { byShare, positionUnit, isFine }: Numbers,
  { asBuilt }: ReadBack,
): Element {
  const name = visibleText(described.id);
  const mark = channel.labels?.[described.id];
  return h(
    "table",
    { class: `enter${isFine ? " fine" : ""}${asBuilt === undefined ? "" : " verified"}` },
    h(
      "caption",
      {},
      h("b", {}, `Channel ${channel.channel}`),
      " ",
      h("bdi", {}, name),
      mark === undefined ? "" : [" ", h("span", { class: "mark" }, visibleText(mark))],
      h(
        "small",
        {},
        `${channel.servos.length > 1 ? ", Y lead" : ""}, pulse ${channel.direction === "rising" ? "rises" : "falls"} going down`,
      ),
    ),
    h("thead", {}, headRow(byShare ? "limit" : "position", "%")),
    h(
      "tbody",
      {},
      rows.map((row, index) => [
        // From the first position on it is another unit.
        byShare && index === firstPosition ? headRow("position", positionUnit, "head") : undefined,
        row === undefined
          ? h("tr", {}, h("th", { scope: "row" }, "–"), h("td", { colspan: 4 }, "not moved by this"))
          : enterRow(row, `${page}-${key}-${index}`, name, asBuilt !== undefined),
      ]),
    ),
  );
}

function headRow(first: string, unit: string, kind?: "head"): Element {
  return h(
    "tr",
    { class: kind },
    [
      [first, ""],
      ["ENTER", unit],
      ["pulse", "µs"],
      ["read", "µs"],
      ["read", "°"],
    ].map(([head, unit]) => h("th", { scope: "col" }, head, unit === "" ? "" : h("small", {}, ` ${unit}`))),
  );
}

function enterRow(
  { key, name, detail, enter, adds, pulse, read }: EnterRow,
  id: string,
  servo: string,
  verified: boolean,
): Element {
  const kind = key === "limitLow" || key === "limitHigh" ? "limit" : key === "neutral" ? "short" : undefined;
  const blank = (unit: string, what: string) =>
    h("input", {
      "aria-label": `${what} read at ${name}, ${servo}`,
      "data-keep": `${id}-${unit}`,
      inputmode: "decimal",
      autocomplete: "off",
    });
  return h(
    "tr",
    { class: kind },
    h("th", { scope: "row" }, h("bdi", {}, trueMinus(name)), h("small", {}, trueMinus(detail))),
    h(
      "td",
      { class: "value" },
      trueMinus(enter),
      adds === undefined ? "" : h("small", {}, `adds ${trueMinus(adds)}`),
    ),
    h("td", { class: "pulse" }, pulse),
    ...(verified
      ? [verdictCell(read.pulse), verdictCell(read.deflection)]
      : [
          h("td", { class: "read" }, blank("us", "Pulse")),
          h(
            "td",
            { class: "read" },
            blank("deg", "Deflection"),
            read.deflection === undefined ? "" : h("small", {}, trueMinus(expectedText(read.deflection))),
          ),
        ]),
  );
}

/** What was read, with the verdict in words and by the line around it. */
function verdictCell(verdict: LineVerdict | undefined): Element {
  if (verdict === undefined) return h("td", { class: "read" });
  const read = readText(verdict);
  return h(
    "td",
    { class: `read verified ${verdict.outcome}` },
    read === undefined ? "" : h("b", {}, trueMinus(read)),
    h("small", {}, trueMinus(verdictText(verdict))),
  );
}
