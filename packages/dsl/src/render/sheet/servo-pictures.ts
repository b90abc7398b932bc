import type { SetupPlan } from "@hingeline/core";
import { curvePlot } from "./curve-plot.ts";
import type { Element } from "./element.ts";
import { linkagePicture } from "./linkage-picture.ts";
import { loadHeight, loadPlot } from "./load-plot.ts";
import { responsePlot } from "./response-plot.ts";
import type { SheetPage } from "./sheet-pages.ts";
import { sidesPlot } from "./sides-plot.ts";
import { travelPlot } from "./travel-plot.ts";

/** A picture of a page by a name that tells it from every other on the sheet: "flapLeft:response". */
export interface ServoPicture {
  readonly name: string;
  readonly element: Element;
}

/** Millimetres on a Letter page inside its margins: its height, what is no picture and no row of values, and one such row. */
const [paperMm, fixedMm, rowMm] = [260, 104, 7.4];
/** Heights of a plot, millimetres: it takes what is left between these. */
const [leastMm, mostMm] = [32, 56];
const linkageMm = 36;
const unitsPerMm = 4;

/** All pictures of a page, those first that both servos have; plots as high as the page's values leave room for in print. */
export function servoPictures(page: SheetPage, { matches }: SetupPlan): readonly ServoPicture[] {
  const { servos, title } = page;
  const [first, second] = servos;
  const each = (name: string, draw: (servo: (typeof servos)[number]) => Element | undefined) =>
    servos.flatMap((servo) => named(`${servo.described.id}:${name}`, draw(servo)));
  const plots = (height: number) => [
    ...each("response", (servo) => responsePlot(servo, height)),
    ...named(`${title}:sides`, first && second && sidesPlot(first, second, matches, height)),
    ...named(`${title}:travel`, travelPlot(servos, height)),
    ...each("curve", (servo) => curvePlot(servo, height)),
  ];
  const loads = each("load", loadPlot);
  const linkages = each("linkage", linkagePicture);
  const settings = Math.max(...servos.map((servo) => servo.settings.length));
  const othersMm =
    (linkages.length === 0 ? 0 : linkageMm) + (loads.length === 0 ? 0 : loadHeight / unitsPerMm);
  const rows = Math.max(1, Math.ceil(plots(leastMm * unitsPerMm).length / 2));
  const eachMm = (paperMm - fixedMm - settings * rowMm - othersMm) / rows - 1;
  const height = Math.round(Math.min(mostMm, Math.max(leastMm, eachMm)) * unitsPerMm);
  return [...plots(height), ...linkages, ...loads];
}

function named(name: string, element: Element | undefined): ServoPicture[] {
  return element === undefined ? [] : [{ name, element }];
}
