import { formatNumber, type PercentPulse, type PlanChannel } from "@hingeline/core";
import { countFindings } from "../findings-to-text.ts";
import { type Numbers, numbersOf, type TypedKind, unitOf } from "../numbers.ts";
import { visibleText } from "../visible-text.ts";
import { asBuiltResult } from "./as-built-lines.ts";
import { asBuiltList } from "./as-built-list.ts";
import { type Element, h, trueMinus } from "./element.ts";
import { findingList } from "./finding-list.ts";
import { otherWays } from "./other-ways.ts";
import { pageHead, type SheetFacts, shareText, signOff } from "./page-parts.ts";
import { notMeasured } from "./servo-facts.ts";
import type { SheetServo } from "./servo-on-sheet.ts";

const valueHeads = ["low limit", "high limit", "at rest", "failsafe"] as const;

/** The first page: what the sheet is for, every channel at a glance, cautions, findings. */
export function overviewPage(sheet: SheetFacts, servos: readonly SheetServo[]): Element {
  const { plan } = sheet;
  const numbers = numbersOf(plan.radio);
  const heads = ["channel", "servos", "sense", ...valueHeads];
  return h(
    "section",
    { class: "page", id: "overview", "aria-labelledby": "overview-title" },
    pageHead("overview-title", "Overview", sheet),
    asBuiltList(asBuiltResult(sheet.readBack)),
    h(
      "p",
      { class: "plain" },
      `Deflections are positive trailing edge down, a rudder's trailing edge to port. Pulses are absolute, in microseconds.${numbers.byShare ? ` ${shareText}` : ""}`,
    ),
    h(
      "div",
      { class: "scroll", tabindex: 0, role: "region", "aria-labelledby": "channels-title" },
      h(
        "table",
        { class: "numbers" },
        h("caption", { id: "channels-title" }, "Channels"),
        h(
          "thead",
          {},
          h(
            "tr",
            {},
            heads.map((head) => h("th", { scope: "col" }, head)),
          ),
        ),
        h(
          "tbody",
          {},
          plan.channels.map((channel) => channelRow(channel, numbers)),
        ),
      ),
    ),
    h("h3", {}, "Cautions"),
    h(
      "ul",
      { class: "cautions" },
      plan.cautions.map((text) => h("li", {}, visibleText(text))),
    ),
    h("h3", {}, `Findings: ${countFindings(plan.findings)}`),
    findingList(plan.findings),
    h("h3", {}, "The same for transmitters that ask otherwise"),
    otherWays(servos, plan),
    h("h3", {}, "Seen at the bench"),
    h(
      "ul",
      { class: "checks" },
      [
        `Failsafe as seen: ${notMeasured} until ticked`,
        `Power-up as seen: ${notMeasured} until ticked`,
        `Free play: ${notMeasured} until ticked`,
        `Senses of all controls: ${notMeasured} until ticked`,
      ].map((text, index) =>
        h(
          "li",
          {},
          h("label", {}, h("input", { type: "checkbox", "data-keep": `overview-check-${index}` }), text),
        ),
      ),
    ),
    signOff("overview", sheet.readBack),
  );
}

function channelRow(
  { channel, servos, direction, limits, neutral, failsafe }: PlanChannel,
  numbers: Numbers,
): Element {
  const cell = (head: string, typed: string, kind: TypedKind, { pulseUs }: PercentPulse) =>
    h(
      "td",
      { "data-head": head },
      h("b", {}, trueMinus(typed)),
      h("small", {}, ` ${unitOf(kind, numbers)}, ${formatNumber(pulseUs, 0)} µs`),
    );
  const [low, high, rest, lost] = valueHeads;
  const cells = [
    cell(low, numbers.percent(limits.low.percent), "limit", limits.low),
    cell(high, numbers.percent(limits.high.percent), "limit", limits.high),
    cell(rest, numbers.typed(neutral), "position", neutral),
    cell(lost, numbers.typed(failsafe), "position", failsafe),
  ];
  return h(
    "tr",
    {},
    h("th", { scope: "row" }, String(channel)),
    h(
      "td",
      {},
      servos.map((servo, index) => [index === 0 ? "" : ", ", h("bdi", {}, visibleText(servo))]),
    ),
    h("td", {}, direction),
    cells,
  );
}
