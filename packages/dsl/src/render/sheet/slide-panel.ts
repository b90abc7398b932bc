import { decimalsOf, type PlanRadio, us } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import { type Element, h } from "./element.ts";
import { movingLinkage } from "./moving-linkage.ts";
import type { SheetServo } from "./servo-on-sheet.ts";
import type { SheetPage } from "./sheet-pages.ts";

/**
 * The slider of a page: one deflection, and for each servo the pulse and what would be typed for it, a share where limits scale. Hidden until a script shows it;
 * undefined where no servo knows degrees.
 */
export function slidePanel(page: SheetPage, radio: PlanRadio): Element | undefined {
  const servos = page.servos.filter(({ described }) => described.measured !== undefined);
  if (servos.length === 0) return undefined;
  const ends = servos.flatMap(({ described }) => described.measured?.response.deflections ?? []);
  const range = [Math.ceil(Math.min(...ends) * 10) / 10, Math.floor(Math.max(...ends) * 10) / 10] as const;
  const { per100Us } = radio;
  const data = {
    centre: radio.centreUs,
    below: typeof per100Us === "number" ? per100Us : per100Us.below,
    above: typeof per100Us === "number" ? per100Us : per100Us.above,
    decimals: decimalsOf(radio.stepPercent) + 1,
    servos: servos.map((servo) => slideData(servo, radio)),
  };
  const id = `slide-${page.key}`;
  return h(
    "div",
    { class: "slide", hidden: true, "data-slide": JSON.stringify(data) },
    h("label", { for: id }, "Try a deflection, degrees; trailing edge down is positive"),
    h("input", {
      id,
      type: "range",
      min: range[0],
      max: range[1],
      step: 0.1,
      value: Math.min(range[1], Math.max(range[0], 0)),
    }),
    servos.map(({ key }) => h("output", { "data-servo": key, for: id })),
    h(
      "div",
      { class: "pair" },
      servos.map((servo) => movingLinkage(servo, range)),
    ),
  );
}

/** Knots as [pulse, deflection, slope]: enough to compute the response itself; the limits where shares between them are typed. */
function slideData({ described, channel, key }: SheetServo, { endPoints }: PlanRadio) {
  const { id, safeUs, measured } = described;
  return {
    key,
    name: visibleText(id),
    safe: safeUs,
    ...(endPoints === "scale"
      ? { limits: [channel.limits.low.pulseUs, channel.limits.high.pulseUs] as const }
      : {}),
    knots: (measured?.response.knots ?? []).map((knot) => [
      knot,
      measured?.response.deflectionAt(us(knot)) ?? 0,
      measured?.response.slopeAt(us(knot)) ?? 0,
    ]),
  };
}
