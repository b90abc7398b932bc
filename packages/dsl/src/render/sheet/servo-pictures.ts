import type { SetupPlan } from "@hingeline/core";
import { curvePlot } from "./curve-plot.ts";
import type { Element } from "./element.ts";
import { findGang } from "./gang-table.ts";
import { linkagePicture } from "./linkage-picture.ts";
import { loadPlot } from "./load-plot.ts";
import { heightOf } from "./plot-parts.ts";
import { responsePlot } from "./response-plot.ts";
import { type SheetServo, shortSetting } from "./servo-on-sheet.ts";
import type { SheetPage } from "./sheet-pages.ts";
import { sidesPlot } from "./sides-plot.ts";
import { travelPlot } from "./travel-plot.ts";

/** A picture of a page by a name that tells it from every other on the sheet: "flapLeft:response". */
export interface ServoPicture {
  readonly name: string;
  readonly element: Element;
  /** Left out on paper, where the page has no room for it; its numbers stand in the text. */
  readonly screenOnly: boolean;
  /** Of a picture that every servo has, the first: it begins a row, so that what belongs together stands side by side. */
  readonly beginsRow: boolean;
}

export interface PagePictures {
  readonly pictures: readonly ServoPicture[];
  /** Whether the printed page holds everything; where it does not, it goes on over as many pages as it takes. */
  readonly fits: boolean;
}

type Drawn = Omit<ServoPicture, "screenOnly">;

/** Millimetres inside the margins of a page between A4 and Letter: its height, what is neither picture nor setting, and one setting. */
const [paperMm, fixedMm, settingMm] = [265, 144, 7.8];
/** The second head of a table whose positions are shares. */
const shareHeadMm = 4.2;
/** A plot takes what is left, between these heights; a little less still prints, as the page shrinks its pictures. */
const [leastMm, mostMm] = [30, 56];
const tightMm = 0.7 * leastMm;
const lineMm = 3.8;
const unitsPerMm = 4;
/** Names longer than this take more lines than a page has been measured for. */
const longName = 40;

/**
 * All pictures of a page, beside which stand `lines` lines of findings. Where they do not all fit on paper with plots of a height that
 * can be read, first the loads, then the correction curves and at last the linkages stay on the screen.
 * Pictures that stand `alone` are as high as any.
 */
export function pagePictures(
  page: SheetPage,
  plan: SetupPlan,
  { lines = 0, alone = false }: { readonly lines?: number; readonly alone?: boolean } = {},
): PagePictures {
  const { servos, title } = page;
  const [first, second] = servos;
  const each = (name: string, draw: (servo: SheetServo) => Element | undefined) =>
    servos.flatMap((servo, index) => named(`${servo.described.id}:${name}`, draw(servo), index === 0));
  const plots = (height: number) => [
    ...each("response", (servo) => responsePlot(servo, height)),
    ...named(`${title}:sides`, first && second && sidesPlot(first, second, plan.matches, height)),
    ...named(`${title}:travel`, travelPlot(servos, height)),
  ];
  const curves = (height: number) => each("curve", (servo) => curvePlot(servo, plan.radio, height));
  const linkages = each("linkage", linkagePicture);
  const loads = each("load", loadPlot);
  const settings = Math.max(...servos.map((servo) => servo.settings.length));
  const headMm = plan.radio.endPoints === "scale" ? shareHeadMm : 0;
  const roomMm = paperMm - fixedMm - headMm - settings * settingMm - lines * lineMm;
  const least = leastMm * unitsPerMm;
  const smallest = { plots: plots(least), curves: curves(least) };
  const cells = smallest.plots.length + (findGang(page, plan) === undefined ? 0 : 1);
  const choices = [
    { withLinkages: true, withCurves: true, withLoads: true },
    { withLinkages: true, withCurves: true, withLoads: false },
    { withLinkages: true, withCurves: false, withLoads: false },
    { withLinkages: false, withCurves: false, withLoads: false },
  ].map((choice) => {
    const rows = Math.ceil((cells + (choice.withCurves ? smallest.curves.length : 0)) / 2);
    const otherMm =
      (choice.withLinkages ? tallestMm(linkages) : 0) + (choice.withLoads ? tallestMm(loads) : 0);
    return { ...choice, eachMm: (roomMm - otherMm) / Math.max(1, rows) };
  });
  const last = { withLinkages: false, withCurves: false, withLoads: false, eachMm: 0 };
  const chosen =
    choices.slice(0, -1).find(({ eachMm }) => eachMm >= leastMm) ??
    choices.slice(-2).find(({ eachMm }) => eachMm > tightMm) ??
    choices.at(-1) ??
    last;
  const plotMm = alone ? mostMm : Math.min(mostMm, Math.max(leastMm, chosen.eachMm));
  const height = Math.round(plotMm * unitsPerMm);
  const drawn = height === least ? smallest : { plots: plots(height), curves: curves(height) };
  return {
    pictures: [
      ...onPaper(drawn.plots, true),
      ...onPaper(drawn.curves, chosen.withCurves),
      ...onPaper(linkages, chosen.withLinkages),
      ...onPaper(loads, chosen.withLoads),
    ],
    fits:
      chosen.eachMm > tightMm &&
      servos.every((servo) => namesOf(servo).every((name) => name.length <= longName)),
  };
}

function onPaper(drawn: readonly Drawn[], printed: boolean): ServoPicture[] {
  return drawn.map((one) => ({ ...one, screenOnly: !printed }));
}

function tallestMm(drawn: readonly Drawn[]): number {
  return Math.max(0, ...drawn.map(({ element }) => heightOf(element) / unitsPerMm));
}

function namesOf({ described, channel, settings }: SheetServo): string[] {
  return [described.id, ...Object.values(channel.labels ?? {}), ...settings.map(shortSetting)];
}

function named(name: string, element: Element | undefined, beginsRow = false): Drawn[] {
  return element === undefined ? [] : [{ name, element, beginsRow }];
}
