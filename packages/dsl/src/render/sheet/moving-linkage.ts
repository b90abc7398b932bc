import { visibleText } from "../visible-text.ts";
import { type Element, h } from "./element.ts";
import { partLines, viewsOf } from "./linkage-views.ts";
import { units } from "./plot-parts.ts";
import type { SheetServo } from "./servo-on-sheet.ts";

const width = 180;
const frameCount = 41;

/** The picture that the slider moves: its lines name their points, and the points of every frame stand beside it. */
export function movingLinkage(servo: SheetServo, range: readonly [number, number]): Element | undefined {
  const { linkage, id } = servo.described;
  if (linkage === undefined) return undefined;
  const frames = Array.from({ length: frameCount }, (_, step) => {
    const deflectionDeg = range[0] + ((range[1] - range[0]) * step) / (frameCount - 1);
    const stand = linkage.standAt(deflectionDeg);
    return stand === undefined ? [] : [{ deflectionDeg, stand }];
  }).flat();
  const [view] = viewsOf(
    frames.map(({ stand }) => stand),
    width,
    0.7 * width,
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
      viewBox: `0 0 ${width} ${units(view.height)}`,
      role: "img",
      "aria-label": `Linkage of ${visibleText(id)} where the slider stands`,
      "data-linkage": servo.key,
      "data-frames": JSON.stringify({ deg: frames.map(({ deflectionDeg }) => units(deflectionDeg)), at }),
    },
    ...first.stand.drawing.segments.map(({ part, between }) =>
      h("line", {
        "data-ends": JSON.stringify(between.map((name) => names.indexOf(name))),
        stroke: "currentColor",
        ...partLines[part],
      }),
    ),
  );
}
