import { us } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import { type Element, h } from "./element.ts";
import { findHalf, halfMark } from "./half-mark.ts";
import {
  area,
  axes,
  type Box,
  hatch,
  label,
  type Place,
  picture,
  type Scale,
  scaleOver,
  shortName,
  spreadLabels,
  stroke,
  units,
} from "./plot-parts.ts";
import { samplePulses } from "./sample-pulses.ts";
import { degreesText, microseconds, type SheetServo, shortSetting } from "./servo-on-sheet.ts";
import { shutFields } from "./shut-fields.ts";

/**
 * Pulse against deflection of one servo: readings with their doubt, response with its band, stops and guards hatched, what is entered
 * as circles, half the pulses as a cross. The pulse axis runs so that deflection grows to the right; undefined without degrees.
 */
export function responsePlot(servo: SheetServo, height: number): Element | undefined {
  const { described, key } = servo;
  const { measured, stopsUs, rising } = described;
  if (measured === undefined) return undefined;
  const { response, points, uncertaintyAt } = measured;
  const box: Box = { left: 38, right: 268, top: 18, bottom: height - 20 };
  const pulses = samplePulses(response.knots);
  const across = [box.left, box.right] as const;
  const x = scaleOver([...stopsUs, ...response.pulses], rising ? across : [box.right, box.left], 0.04);
  const y = scaleOver(response.deflections, [box.bottom, box.top], 0.06);
  const curve = pulses.map((pulseUs): Place => [x(pulseUs), y(response.deflectionAt(us(pulseUs)) ?? 0)]);
  const edge = (sign: -1 | 1) =>
    pulses.map((pulseUs): Place => {
      const deflectionDeg = response.deflectionAt(us(pulseUs)) ?? 0;
      return [x(pulseUs), y(deflectionDeg + sign * (uncertaintyAt(pulseUs) ?? 0))];
    });
  const id = `plot-${key}`;
  return picture(
    id,
    height,
    { title: `Pulse and deflection of ${visibleText(described.id)}`, text: textOf(servo) },
    [
      h("defs", {}, hatch(`${id}-stop`, true), hatch(`${id}-guard`, false)),
      ...shutFields(box, x, described, id),
      ...axes(box, x, y, "µs", "°", 4),
      area([...edge(1), ...edge(-1).reverse()], { "fill-opacity": 0.14 }),
      stroke(curve, { "stroke-width": 1.8 }),
      ...points.map(({ pulseUs, deflectionDeg, uncertaintyDeg }) =>
        h(
          "g",
          {},
          stroke([
            [x(pulseUs), y(deflectionDeg - uncertaintyDeg)],
            [x(pulseUs), y(deflectionDeg + uncertaintyDeg)],
          ]),
          h("circle", { cx: units(x(pulseUs)), cy: units(y(deflectionDeg)), r: 2.4 }),
        ),
      ),
      ...entered(servo, box, x, y),
      ...halfMark(findHalf(servo), x, y),
      mark(key),
    ],
    {
      "data-plot": key,
      "data-x": JSON.stringify([...x.domain(), ...x.range()].map(units)),
      "data-y": JSON.stringify([...y.domain(), ...y.range()].map(units)),
    },
  );
}

/** The circle that the slider moves; out of sight until a script does. */
function mark(key: string): Element {
  return h("circle", {
    "data-mark": key,
    r: 6,
    fill: "none",
    stroke: "currentColor",
    "stroke-width": 3,
    visibility: "hidden",
  });
}

/** What is entered, as open circles with a line to their names at the right. */
function entered({ settings, described }: SheetServo, box: Box, x: Scale, y: Scale): Element[] {
  const places = settings.flatMap((setting) => {
    const deflectionDeg = described.measured?.response.deflectionAt(us(setting.enter.pulseUs));
    return deflectionDeg === undefined ? [] : [{ setting, deflectionDeg }];
  });
  const heights = spreadLabels(
    places.map(({ deflectionDeg }) => y(deflectionDeg)),
    box.top,
    box.bottom,
  );
  return places.flatMap(({ setting, deflectionDeg }, index) => {
    const at: Place = [x(setting.enter.pulseUs), y(deflectionDeg)];
    const labelAt = heights[index] ?? at[1];
    return [
      stroke([at, [box.right, at[1]], [box.right + 8, labelAt]], { "stroke-dasharray": "1 3" }),
      h("circle", {
        cx: units(at[0]),
        cy: units(at[1]),
        r: 4.5,
        fill: "none",
        stroke: "currentColor",
        "stroke-width": 1.6,
      }),
      label(box.right + 11, labelAt + 4.5, shortName(shortSetting(setting), 13)),
    ];
  });
}

function textOf({ described, settings }: SheetServo): string {
  const { measured, stopsUs, safeUs } = described;
  if (measured === undefined) return "";
  const ends = measured.response.pulses.map(
    (pulseUs) => `${degreesText(measured.response.deflectionAt(pulseUs) ?? 0)} at ${microseconds(pulseUs)}`,
  );
  const places = settings.map(
    (setting) =>
      `${visibleText(shortSetting(setting))} ${setting.gives === undefined ? "" : `${degreesText(setting.gives.deflectionDeg)} `}at ${microseconds(setting.enter.pulseUs)}`,
  );
  return `A curve from ${ends.join(" to ")} through ${measured.points.length} readings. Safe from ${microseconds(safeUs[0])} to ${microseconds(safeUs[1])}, stops at ${microseconds(stopsUs[0])} and ${microseconds(stopsUs[1])}. Entered: ${places.join("; ")}.`;
}
