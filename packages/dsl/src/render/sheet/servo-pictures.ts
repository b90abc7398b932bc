import type { SetupPlan } from "@hingeline/core";
import { curvePlot } from "./curve-plot.ts";
import type { Element } from "./element.ts";
import { linkagePicture } from "./linkage-picture.ts";
import { loadHeight, loadPlot } from "./load-plot.ts";
import { responsePlot } from "./response-plot.ts";
import { type SheetServo, shortSetting } from "./servo-on-sheet.ts";
import type { SheetPage } from "./sheet-pages.ts";
import { sidesPlot } from "./sides-plot.ts";
import { travelPlot } from "./travel-plot.ts";

/** A picture of a page by a name that tells it from every other on the sheet: "flapLeft:response". */
export interface ServoPicture {
  readonly name: string;
  readonly element: Element;
}

export interface PagePictures {
  readonly pictures: readonly ServoPicture[];
  /** Whether the printed page holds everything; where it does not, it goes on over as many pages as it takes. */
  readonly fits: boolean;
}

/** Millimetres inside the margins of a page between A4 and Letter: its height, what is neither picture nor setting, and one setting. */
const [paperMm, fixedMm, settingMm] = [265, 122, 7.8];
/** A plot takes what is left, between these heights; a little less still prints, as the page shrinks its pictures. */
const [leastMm, mostMm] = [28, 56];
const linkageMm = 36;
const lineMm = 3.8;
const unitsPerMm = 4;
/** Names longer than this take more lines than a page has been measured for. */
const longName = 40;

/** All pictures of a page, those first that every servo has; beside them stand `lines` lines of findings. */
export function pagePictures(page: SheetPage, { matches }: SetupPlan, lines = 0): PagePictures {
  const { servos, title } = page;
  const [first, second] = servos;
  const each = (name: string, draw: (servo: SheetServo) => Element | undefined) =>
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
  const eachMm = (paperMm - fixedMm - settings * settingMm - lines * lineMm - othersMm) / rows;
  const height = Math.round(Math.min(mostMm, Math.max(leastMm, eachMm)) * unitsPerMm);
  return {
    pictures: [...plots(height), ...linkages, ...loads],
    fits:
      eachMm > 0.8 * leastMm &&
      servos.every((servo) => namesOf(servo).every((name) => name.length <= longName)),
  };
}

function namesOf({ described, channel, settings }: SheetServo): string[] {
  return [described.id, ...Object.values(channel.labels ?? {}), ...settings.map(shortSetting)];
}

function named(name: string, element: Element | undefined): ServoPicture[] {
  return element === undefined ? [] : [{ name, element }];
}
