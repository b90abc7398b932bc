import { formatNumber, type PlanGang, type SetupPlan } from "@hingeline/core";
import { signed } from "../numbers.ts";
import { visibleText } from "../visible-text.ts";
import { type Element, h, trueMinus } from "./element.ts";
import type { SheetPage } from "./sheet-pages.ts";

/** What the plan says of the servos of a page that move one surface together; undefined where they do not. */
export function findGang({ servos }: SheetPage, { gangs }: SetupPlan): PlanGang | undefined {
  const [first, second] = servos;
  if (first === undefined || second?.described.surface !== first.described.surface) return undefined;
  return gangs.find(({ surface }) => surface === first.described.surface);
}

/** The pulses that belong together, for the servos of a page that move one surface. */
export function gangTable(page: SheetPage, plan: SetupPlan): Element | undefined {
  const gang = findGang(page, plan);
  if (gang === undefined) return undefined;
  const shown = page.servos.map(({ described }) => ({
    name: visibleText(described.id),
    index: gang.servos.indexOf(described.id),
  }));
  const head = (text: string) => h("th", { scope: "col" }, h("bdi", {}, text), h("small", {}, " µs"));
  return h(
    "table",
    { class: "gang" },
    h(
      "caption",
      {},
      `Pulses that belong together; between them the servos pull ${formatNumber(gang.worstDeg, 2)}° apart at most`,
    ),
    h(
      "thead",
      {},
      h(
        "tr",
        {},
        h("th", { scope: "col" }, "deflection"),
        shown.map(({ name }) => head(name)),
      ),
    ),
    h(
      "tbody",
      {},
      gang.points.map(({ deflectionDeg, pulsesUs }) =>
        h(
          "tr",
          {},
          h("th", { scope: "row" }, trueMinus(`${signed(deflectionDeg, 1)}°`)),
          shown.map(({ index }) => {
            const pulseUs = pulsesUs[index];
            return h("td", {}, pulseUs === undefined ? "–" : formatNumber(pulseUs, 1));
          }),
        ),
      ),
    ),
  );
}
