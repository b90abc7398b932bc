import type { Model, SetupPlan } from "@hingeline/core";
import { cloneElement } from "preact";
import { renderToString } from "preact-render-to-string";
import { h } from "./element.ts";
import { pictureWidth } from "./plot-parts.ts";
import { pagePictures } from "./servo-pictures.ts";
import { sheetPages } from "./sheet-to-html.ts";

/** Names of every picture that the sheet of a model can show: "flapLeft:response", "flaps:sides". */
export function pictureNames(model: Model, plan: SetupPlan): readonly string[] {
  return sheetPages(model, plan).flatMap((page) => pagePictures(page, plan).pictures.map(({ name }) => name));
}

/** One picture as an SVG file that stands alone, black on white; undefined where the sheet has none of this name. */
export function pictureToSvg(model: Model, plan: SetupPlan, name: string): string | undefined {
  for (const page of sheetPages(model, plan)) {
    const picture = pagePictures(page, plan, { alone: true }).pictures.find((one) => one.name === name);
    if (picture === undefined) continue;
    const alone = cloneElement(
      picture.element,
      { color: "#000", width: 2 * pictureWidth, "font-family": "sans-serif" },
      h("rect", { width: "100%", height: "100%", fill: "#fff" }),
      picture.element.props.children,
    );
    return `${renderToString(alone)}\n`;
  }
  return undefined;
}
