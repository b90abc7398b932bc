import type { LinkageStand } from "@hingeline/core";
import { formatNumber } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import { type Element, h } from "./element.ts";
import {
  fontSize,
  label,
  type Place,
  picture,
  pictureWidth,
  shortName,
  stroke,
  units,
} from "./plot-parts.ts";
import { degreesText, type SheetServo, shortSetting } from "./servo-on-sheet.ts";

type Point = LinkageStand["drawing"]["points"][string];
type Part = LinkageStand["drawing"]["segments"][number]["part"];

/** Every part by its line, so that no colour is needed. */
const lines: Readonly<Record<Part, Readonly<Record<string, string | number>>>> = {
  arm: { "stroke-width": 3.5 },
  horn: { "stroke-width": 3.5 },
  rod: { "stroke-width": 1.3 },
  cable: { "stroke-width": 1.3, "stroke-dasharray": "5 3" },
  wire: { "stroke-width": 2 },
  track: { "stroke-width": 1.3, "stroke-dasharray": "1 3" },
  surface: { "stroke-width": 4 },
};
/** A rod nearer than this to dead centre is marked. (common practice, no source) */
const nearDeg = 15;
/** Side by side; what lies between the ends is thinned out where there is more. */
const most = 4;
const movingWidth = 180;

/** A linkage at what is entered, drawn to scale from the port tip; below it from above where it does not lie in one plane. */
export function linkagePicture(servo: SheetServo): Element | undefined {
  const stands = standsOf(servo);
  const cellWidth = pictureWidth / Math.max(2, stands.length);
  const views = viewsOf(
    stands.map(({ stand }) => stand),
    cellWidth,
  );
  if (stands.length === 0 || views.length === 0) return undefined;
  const drawn = views.reduce((sum, { height }) => sum + height + 6, 0);
  const lines = 2 + Math.max(...stands.map(({ stand }) => deadCentreTexts(stand).length));
  const cellHeight = drawn + lines * fontSize + 8;
  const name = visibleText(servo.described.id);
  return picture(
    `linkage-${servo.key}`,
    cellHeight,
    { title: `Linkage of ${name}`, text: stands.map(standText).join(" ") },
    stands.map(({ name: at, deflectionDeg, stand }, index) => {
      const words = [shortName(at, 13), degreesText(deflectionDeg), ...deadCentreTexts(stand)];
      return h(
        "g",
        { transform: `translate(${units(index * cellWidth)} 0)` },
        ...drawViews(views, stand, deflectionDeg),
        ...words.map((text, line) => label(4, drawn + (line + 1) * fontSize + 1, text)),
      );
    }),
  );
}

/** The picture that the slider moves: its lines name their points, and the points of every frame stand beside it. */
export function movingLinkage(servo: SheetServo, range: readonly [number, number]): Element | undefined {
  const { linkage, id } = servo.described;
  if (linkage === undefined) return undefined;
  const frames = Array.from({ length: 41 }, (_, step) => {
    const deflectionDeg = range[0] + ((range[1] - range[0]) * step) / 40;
    const stand = linkage.standAt(deflectionDeg);
    return stand === undefined ? [] : [{ deflectionDeg, stand }];
  }).flat();
  const [view] = viewsOf(
    frames.map(({ stand }) => stand),
    movingWidth,
  );
  const [first] = frames;
  if (view === undefined || first === undefined) return undefined;
  const names = Object.keys(first.stand.drawing.points);
  const at = frames.map(({ stand }) =>
    names.flatMap((name) => {
      const point = stand.drawing.points[name];
      return point === undefined ? [0, 0] : view.place(point).map(units);
    }),
  );
  return h(
    "svg",
    {
      viewBox: `0 0 ${movingWidth} ${units(view.height)}`,
      role: "img",
      "aria-label": `Linkage of ${visibleText(id)} where the slider stands`,
      "data-linkage": servo.key,
      "data-frames": JSON.stringify({ deg: frames.map(({ deflectionDeg }) => units(deflectionDeg)), at }),
    },
    ...first.stand.drawing.segments.map(({ part, between }) =>
      h("line", {
        "data-ends": JSON.stringify(between.map((name) => names.indexOf(name))),
        stroke: "currentColor",
        ...lines[part],
      }),
    ),
  );
}

interface Stand {
  readonly name: string;
  readonly deflectionDeg: number;
  readonly stand: LinkageStand;
}

/** How the linkage stands at the settings that differ, by rising deflection, both ends among them. */
function standsOf({ described, settings }: SheetServo): Stand[] {
  const stands = settings
    .flatMap((setting): Stand[] => {
      const deflectionDeg = setting.gives?.deflectionDeg;
      const stand = deflectionDeg === undefined ? undefined : described.linkage?.standAt(deflectionDeg);
      return deflectionDeg === undefined || stand === undefined
        ? []
        : [{ name: shortSetting(setting), deflectionDeg, stand }];
    })
    .toSorted((a, b) => a.deflectionDeg - b.deflectionDeg);
  const apart = stands.filter(
    ({ deflectionDeg }, index) =>
      deflectionDeg - (stands[index - 1]?.deflectionDeg ?? Number.NEGATIVE_INFINITY) > 0.05,
  );
  if (apart.length <= most) return apart;
  const kept = Array.from({ length: most }, (_, index) =>
    Math.round((index * (apart.length - 1)) / (most - 1)),
  );
  return apart.filter((_, index) => kept.includes(index));
}

interface View {
  readonly height: number;
  /** Whether the deflection can be seen as an angle in it. */
  readonly fromSide: boolean;
  readonly place: (point: Point) => Place;
}

/** From the port tip (aft to the right, up), and from above (starboard up) where the points do not lie in one plane. */
function viewsOf(stands: readonly LinkageStand[], width: number): View[] {
  const points = stands.flatMap(({ drawing }) => Object.values(drawing.points));
  const [first] = points;
  if (first === undefined) return [];
  const flat = points.every(([, starboard]) => Math.abs(starboard - first[1]) < 1e-6);
  const aft = points.map(([x]) => x);
  const wide = Math.max(...aft) - Math.min(...aft) + 1e-9;
  const across = ([...axis]: readonly (1 | 2)[]) =>
    axis.map((index) => {
      const values = points.map((point) => point[index]);
      return { index, low: Math.min(...values), high: Math.max(...values) };
    });
  // One scale for all; room at the right for the start of the surface, and no picture higher than it is wide.
  const extents = across(flat ? [2] : [2, 1]);
  const tall = Math.max(...extents.map(({ low, high }) => high - low));
  const scale = Math.min((width - 32) / wide, (0.7 * width) / (tall + 1e-9));
  return extents.map(({ index, low, high }) => ({
    height: (high - low) * scale + 20,
    fromSide: index === 2,
    place: (point) => [(point[0] - Math.min(...aft)) * scale + 8, (high - point[index]) * scale + 10],
  }));
}

function drawViews(views: readonly View[], { drawing }: LinkageStand, deflectionDeg: number): Element[] {
  let top = 0;
  return views.map(({ height, fromSide, place }) => {
    const at = (name: string): Place => {
      const point = drawing.points[name];
      return point === undefined ? [0, 0] : place(point);
    };
    const hinge = at(drawing.to);
    const angleRad = (deflectionDeg * Math.PI) / 180;
    const edge: Place = [hinge[0] + 22 * Math.cos(angleRad), hinge[1] + 22 * Math.sin(angleRad)];
    const group = h(
      "g",
      { transform: `translate(0 ${units(top)})` },
      fromSide ? stroke([hinge, edge], { "stroke-dasharray": "2 2", "stroke-width": 2 }) : undefined,
      ...drawing.segments.map(({ part, between: [from, to] }) => stroke([at(from), at(to)], lines[part])),
      pin(at(drawing.from), true),
      pin(hinge, false),
    );
    top += height + 6;
    return group;
  });
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

/** "arm 64°" and "horn 23° !" for each rod: how far from dead centre, marked where it is near. */
function deadCentreTexts({ rods }: LinkageStand): string[] {
  const text = (at: string, angleDeg: number) =>
    `${at} ${formatNumber(angleDeg, 0)}°${angleDeg < nearDeg ? " !" : ""}`;
  return rods.flatMap(({ armDeg, hornDeg }) => [text("arm", armDeg), text("horn", hornDeg)]);
}

function standText({ name, deflectionDeg, stand }: Stand): string {
  const angles = stand.rods.map(
    ({ armDeg, hornDeg }) =>
      `the rod stands ${formatNumber(armDeg, 0)}° from dead centre at the arm and ${formatNumber(hornDeg, 0)}° at the horn${Math.min(armDeg, hornDeg) < nearDeg ? ", which is near" : ""}`,
  );
  return `${visibleText(name)}, ${degreesText(deflectionDeg)}${angles.length === 0 ? "" : `: ${angles.join("; ")}`}.`;
}
