import type { LinkageStand } from "@hingeline/core";
import { type Element, h } from "./element.ts";
import { type Place, stroke, units } from "./plot-parts.ts";

type Point = LinkageStand["drawing"]["points"][string];
type Part = LinkageStand["drawing"]["segments"][number]["part"];

/** A linkage as seen from one side. */
export interface View {
  readonly height: number;
  /** Whether the deflection can be seen as an angle in it. */
  readonly fromSide: boolean;
  readonly place: (point: Point) => Place;
}

/** Every part by its line, so that no colour is needed. */
export const partLines: Readonly<Record<Part, Readonly<Record<string, string | number>>>> = {
  arm: { "stroke-width": 3.5 },
  horn: { "stroke-width": 3.5 },
  rod: { "stroke-width": 1.3 },
  cable: { "stroke-width": 1.3, "stroke-dasharray": "5 3" },
  wire: { "stroke-width": 2 },
  track: { "stroke-width": 1.3, "stroke-dasharray": "1 3" },
  surface: { "stroke-width": 4 },
};
/** Length of the start of the surface behind its hinge, which is not to scale. */
const surfaceLength = 34;
const margin = 8;

/**
 * From the port tip (aft to the right, up), and from above (starboard up) where the points do not lie in one plane; one scale for all,
 * no wider than `width` with the start of the surface, and neither view with its margins higher than `most`.
 */
export function viewsOf(stands: readonly LinkageStand[], width: number, most: number): View[] {
  const points = stands.flatMap(({ drawing }) => Object.values(drawing.points));
  const [first] = points;
  if (first === undefined) return [];
  const flat = points.every(([, starboard]) => Math.abs(starboard - first[1]) < 1e-6);
  const across = ([...axes]: readonly (1 | 2)[]) =>
    axes.map((index) => {
      const values = points.map((point) => point[index]);
      return { index, low: Math.min(...values), high: Math.max(...values) };
    });
  const aft = points.map(([x]) => x);
  const fore = Math.min(...aft);
  const hinges = stands.map(({ drawing }) => drawing.points[drawing.to]?.[0] ?? fore);
  const extents = across(flat ? [2] : [2, 1]);
  const tall = Math.max(...extents.map(({ low, high }) => high - low)) + 1e-9;
  const wide = Math.max(...aft) - fore + 1e-9;
  const scale = Math.min(
    (width - 2 * margin) / wide,
    (width - 2 * margin - surfaceLength) / (Math.max(...hinges) - fore + 1e-9),
    (most - 2 * margin) / tall,
  );
  return extents.map(({ index, low, high }) => ({
    height: (high - low) * scale + 2 * margin,
    fromSide: index === 2,
    place: (point) => [(point[0] - fore) * scale + margin, (high - point[index]) * scale + margin],
  }));
}

/** One stand in one view; `faint` where it is one of those between the ends. */
export function drawStand(
  { fromSide, place }: View,
  { drawing }: LinkageStand,
  deflectionDeg: number,
  faint: boolean,
): Element {
  const at = (name: string): Place => {
    const point = drawing.points[name];
    return point === undefined ? [0, 0] : place(point);
  };
  const hinge = at(drawing.to);
  return h(
    "g",
    faint ? { opacity: 0.45 } : {},
    fromSide
      ? stroke([hinge, surfaceEnd(hinge, deflectionDeg)], { "stroke-dasharray": "2 2", "stroke-width": 2 })
      : undefined,
    ...drawing.segments.map(({ part, between: [from, to] }) => stroke([at(from), at(to)], partLines[part])),
    pin(at(drawing.from), true),
    pin(hinge, false),
  );
}

/** Where the drawn start of a surface ends, from its hinge. */
export function surfaceEnd([x, y]: Place, deflectionDeg: number): Place {
  const angleRad = (deflectionDeg * Math.PI) / 180;
  return [x + surfaceLength * Math.cos(angleRad), y + surfaceLength * Math.sin(angleRad)];
}

/** The shaft is filled, the hinge open. */
function pin([x, y]: Place, filled: boolean): Element {
  return h("circle", {
    cx: units(x),
    cy: units(y),
    r: 3.5,
    fill: filled ? "currentColor" : "none",
    stroke: "currentColor",
    "stroke-width": 1.5,
  });
}
