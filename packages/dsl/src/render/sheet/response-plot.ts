import { formatNumber, type HalfPulse, halfPulse, us } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import { type Element, h } from "./element.ts";
import {
  area,
  axes,
  type Box,
  fontSize,
  hatch,
  label,
  type Place,
  picture,
  pictureWidth,
  type Scale,
  scaleOver,
  shortName,
  spreadLabels,
  stroke,
  units,
} from "./plot-parts.ts";
import { degreesText, microseconds, type SheetServo, shortSetting } from "./servo-on-sheet.ts";

/**
 * Pulse against deflection of one servo: readings with their doubt, response with its band, stops and guards hatched, what is entered
 * as circles, half the pulses as a cross. The pulse axis runs so that deflection grows to the right; undefined without degrees.
 */
export function responsePlot(servo: SheetServo, height: number): Element | undefined {
  const { described, key } = servo;
  const { measured, stopsUs, guardUs, safeUs, rising } = described;
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
      ...shut(box, x, stopsUs, guardUs, safeUs, id),
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

/** Half the pulses between rest and the furthest setting of the control that moves the servo most. */
export function findHalf({ described, channel, settings }: SheetServo): HalfPulse | undefined {
  const response = described.measured?.response;
  const restUs = channel.neutral.pulseUs;
  const furthest = settings.reduce(
    (far, { enter }) => (Math.abs(enter.pulseUs - restUs) > Math.abs(far - restUs) ? enter.pulseUs : far),
    restUs,
  );
  return response === undefined || furthest === restUs
    ? undefined
    : halfPulse(response, us(restUs), us(furthest));
}

/** The response's pulses where a line through them looks smooth: its knots and some between. */
export function samplePulses(knots: readonly number[]): number[] {
  const parts = Math.max(2, Math.ceil(48 / Math.max(1, knots.length - 1)));
  return knots.flatMap((knot, index) => {
    const next = knots[index + 1];
    if (next === undefined) return [knot];
    return Array.from({ length: parts }, (_, part) => knot + ((next - knot) * part) / parts);
  });
}

/** The circle that the slider moves; out of sight until a script does. */
export function mark(key: string): Element {
  return h("circle", {
    "data-mark": key,
    r: 6,
    fill: "none",
    stroke: "currentColor",
    "stroke-width": 3,
    visibility: "hidden",
  });
}

function shut(
  box: Box,
  x: Scale,
  [lowUs, highUs]: readonly [number, number],
  [lowGuardUs, highGuardUs]: readonly [number, number],
  safeUs: readonly [number, number],
  id: string,
): Element[] {
  const [fromUs = lowUs, toUs = highUs] = x.domain();
  const height = units(box.bottom - box.top);
  const field = (one: number, other: number, fill: string) => {
    const [left, right] = [Math.min(x(one), x(other)), Math.max(x(one), x(other))];
    return h("rect", {
      x: units(left),
      y: box.top,
      width: units(right - left),
      height,
      fill: `url(#${id}-${fill})`,
    });
  };
  const edge = (pulseUs: number, dashes: string) =>
    stroke(
      [
        [x(pulseUs), box.top],
        [x(pulseUs), box.bottom],
      ],
      { "stroke-dasharray": dashes },
    );
  const towards = x(safeUs[0]) < x(safeUs[1]);
  return [
    field(fromUs, lowUs, "stop"),
    field(highUs, toUs, "stop"),
    field(lowUs, safeUs[0], "guard"),
    field(safeUs[1], highUs, "guard"),
    edge(lowUs, "none"),
    edge(highUs, "none"),
    ...(lowGuardUs === 0 && safeUs[0] === lowUs ? [] : [edge(safeUs[0], "4 3")]),
    ...(highGuardUs === 0 && safeUs[1] === highUs ? [] : [edge(safeUs[1], "4 3")]),
    label(x(safeUs[0]), box.top - 4, formatNumber(safeUs[0], 0), towards ? "start" : "end"),
    label(x(safeUs[1]), box.top - 4, formatNumber(safeUs[1], 0), towards ? "end" : "start"),
  ];
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

function halfMark(half: HalfPulse | undefined, x: Scale, y: Scale): Element[] {
  if (half === undefined) return [];
  const [cx, cy] = [x(half.pulseUs), y(half.deflectionDeg)];
  const r = 5;
  return [
    stroke(
      [
        [cx - r, cy - r],
        [cx + r, cy + r],
      ],
      { "stroke-width": 1.8 },
    ),
    stroke(
      [
        [cx - r, cy + r],
        [cx + r, cy - r],
      ],
      { "stroke-width": 1.8 },
    ),
    label(
      cx + (cx > pictureWidth / 2 ? -8 : 8),
      cy + fontSize + 2,
      "half",
      cx > pictureWidth / 2 ? "end" : "start",
    ),
  ];
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
