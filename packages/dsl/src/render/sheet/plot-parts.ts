import { formatTrimmed } from "@hingeline/core";
import { type ScaleLinear, scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import { visibleText } from "../visible-text.ts";
import { type Element, h, trueMinus } from "./element.ts";

/** Width of every picture in its own units; about a quarter of a millimetre each on paper, a pixel on a telephone. */
export const pictureWidth = 372;
/** Height of a letter in the same units: 9 points on paper. */
export const fontSize = 13;

/** The box of a plot inside its picture, in picture units from the top left. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export type Scale = ScaleLinear<number, number>;
export type Place = readonly [x: number, y: number];

/** From a range of values to picture units; the range is widened by `pad` of itself to both sides. */
export function scaleOver(values: readonly number[], [from, to]: readonly [number, number], pad = 0): Scale {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const more = (high - low || 1) * pad;
  return scaleLinear()
    .domain([low - more, high + more])
    .range([from, to]);
}

/** A picture with its title and what it shows in words; no colour but the reader's own. */
export function picture(
  id: string,
  height: number,
  { title, text }: { readonly title: string; readonly text: string },
  children: readonly (Element | undefined)[],
  more: Readonly<Record<string, string>> = {},
): Element {
  return h(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${pictureWidth} ${units(height)}`,
      role: "img",
      "aria-labelledby": `${id}-title ${id}-text`,
      "font-size": fontSize,
      fill: "currentColor",
      id,
      ...more,
    },
    h("title", { id: `${id}-title` }, trueMinus(title)),
    h("desc", { id: `${id}-text` }, trueMinus(text)),
    ...children,
  );
}

/** Height of a picture in its own units. */
export function heightOf({ props }: Element): number {
  const { viewBox = "" } = props as { readonly viewBox?: string };
  return Number(viewBox.split(" ").at(-1));
}

/** Axes with ticks, faint lines across at each, and the unit at the end of each axis. */
export function axes(box: Box, x: Scale, y: Scale, xUnit: string, yUnit: string, xTicks = 5): Element[] {
  const along = x.ticks(xTicks).map((value) => {
    const line = [
      [x(value), box.top],
      [x(value), box.bottom],
    ] as const;
    const text = label(x(value), box.bottom + fontSize + 1, formatTrimmed(value, 2), "middle");
    return h("g", {}, stroke(line, { "stroke-opacity": 0.2 }), text);
  });
  return [
    ...levels(box, y, yUnit),
    ...along,
    label(pictureWidth - 2, box.bottom + fontSize + 1, xUnit, "end"),
  ];
}

/** Faint lines across a plot with their values at the left, as many as there is room for, the one at 0 stronger. */
export function levels(box: Box, y: Scale, unit: string): Element[] {
  const most = Math.max(2, Math.min(4, Math.floor((box.bottom - box.top) / 22)));
  const lines = y.ticks(most).map((value) => {
    const line = [
      [box.left, y(value)],
      [box.right, y(value)],
    ] as const;
    const text = label(box.left - 5, y(value) + 4.5, formatTrimmed(value, 2), "end");
    return h("g", {}, stroke(line, { "stroke-opacity": value === 0 ? 0.7 : 0.2 }), text);
  });
  return [...lines, label(box.left - 5, box.top - 4, unit, "end")];
}

/** A line through places. */
export function stroke(
  places: readonly Place[],
  more: Readonly<Record<string, string | number>> = {},
): Element {
  return h("path", { d: pathOf(places), fill: "none", stroke: "currentColor", ...more });
}

/** An area between places, closed. */
export function area(
  places: readonly Place[],
  more: Readonly<Record<string, string | number>> = {},
): Element | undefined {
  return places.length < 3 ? undefined : h("path", { d: `${pathOf(places)}Z`, stroke: "none", ...more });
}

/** Words in a picture. Names in them are cut where they would leave it; the text beside the picture has them whole. */
export function label(
  x: number,
  y: number,
  text: string,
  anchor: "start" | "middle" | "end" = "start",
  more: Readonly<Record<string, string | number>> = {},
): Element {
  return h("text", { x: units(x), y: units(y), "text-anchor": anchor, ...more }, trueMinus(text));
}

/** A name as it fits in a picture, at most so many characters. */
export function shortName(name: string, most: number): string {
  const letters = [...visibleText(name)];
  return letters.length <= most ? letters.join("") : `${letters.slice(0, most - 1).join("")}…`;
}

/** Slanted lines that fill an area; `dense` where nothing may ever be. The id is unique on a page. */
export function hatch(id: string, dense: boolean): Element {
  const step = dense ? 5 : 9;
  return h(
    "pattern",
    {
      id,
      width: step,
      height: step,
      patternUnits: "userSpaceOnUse",
      patternTransform: `rotate(${dense ? 45 : -45})`,
    },
    h("path", { d: `M0 0V${step}`, stroke: "currentColor", "stroke-width": dense ? 1.6 : 0.9 }),
  );
}

/** A picture coordinate with as many digits as can be seen. */
export function units(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

/** Labels one below the other at their own heights, moved apart where they would touch, inside top and bottom. */
export function spreadLabels(heights: readonly number[], top: number, bottom: number): number[] {
  const order = heights.map((at, index) => ({ at, index })).sort((a, b) => a.at - b.at);
  let free = top;
  for (const one of order) {
    one.at = Math.max(one.at, free);
    free = one.at + fontSize;
  }
  let last = bottom;
  for (const one of order.toReversed()) {
    one.at = Math.min(one.at, last);
    last = one.at - fontSize;
  }
  return order.sort((a, b) => a.index - b.index).map(({ at }) => at);
}

function pathOf(places: readonly Place[]): string {
  const draw = line<Place>()
    .x(([x]) => x)
    .y(([, y]) => y)
    .digits(2);
  return draw([...places]) ?? "";
}
