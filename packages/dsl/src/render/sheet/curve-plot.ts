import { type CurvePoint, formatNumber, type PlanRadio, typedPercent, us } from "@hingeline/core";
import { numbersOf } from "../numbers.ts";
import { visibleText } from "../visible-text.ts";
import { type Element, h } from "./element.ts";
import { axes, label, type Place, picture, scaleOver, stroke, units } from "./plot-parts.ts";
import type { SheetServo } from "./servo-on-sheet.ts";

/**
 * The correction curve to enter: its input against its output in percent (shares where limits scale), and below it by how much the deflection is off in between.
 * Undefined where the channel has no curve or no degrees are known.
 */
export function curvePlot(
  { described, channel, key }: SheetServo,
  radio: PlanRadio,
  height: number,
): Element | undefined {
  const { curve = [], curveWorstDeg } = channel;
  const response = described.measured?.response;
  if (curve.length < 2 || response === undefined) return undefined;
  const strip = Math.min(60, height * 0.36);
  const { byShare, positionUnit } = numbersOf(radio);
  const box = { left: byShare ? 46 : 38, right: 330, top: 18, bottom: height - 20 - strip };
  const x = scaleOver([-100, 100], [box.left, box.right]);
  const y = scaleOver(
    curve.map((point) => typedPercent(point, radio)),
    [box.bottom, box.top],
    0.06,
  );
  const errors = errorsOf(curve, (pulseUs) => response.deflectionAt(us(pulseUs)));
  const largest = Math.max(0.05, ...errors.map(([, value]) => Math.abs(value))) * 1.15;
  const below = scaleOver([-largest, largest], [height - 3, height - strip + 14]);
  const worst =
    curveWorstDeg === undefined ? "" : ` At most ${formatNumber(curveWorstDeg, 2)}° off in between.`;
  return picture(
    `curve-${key}`,
    height,
    {
      title: `Correction curve of ${visibleText(described.id)}`,
      text: `Points, input ${byShare ? "in percent to output in shares" : "to output in percent"}: ${curve.map((point) => `${formatNumber(point.commandPercent, 1)} to ${formatNumber(typedPercent(point, radio), 1)}`).join("; ")}.${worst}`,
    },
    [
      ...axes(box, x, y, "%", positionUnit, 5),
      stroke(
        curve.map((point): Place => [x(point.commandPercent), y(typedPercent(point, radio))]),
        {
          "stroke-width": 1.8,
        },
      ),
      ...curve.map((point) =>
        h("circle", { cx: units(x(point.commandPercent)), cy: units(y(typedPercent(point, radio))), r: 3 }),
      ),
      stroke(
        [
          [box.left, below(0)],
          [box.right, below(0)],
        ],
        { "stroke-opacity": 0.7 },
      ),
      stroke(
        errors.map(([command, value]): Place => [x(command), below(value)]),
        { "stroke-width": 1.8 },
      ),
      label(box.left - 5, below(0) + 4.5, "0", "end"),
      label(box.right + 4, below(0) + 4.5, `±${formatNumber(largest / 1.15, 1)}°`),
      label(box.left, height - strip + 11, "off by"),
    ],
  );
}

/** What the curve gives minus what its input means, which is linear in deflection from the first point to the last. */
function errorsOf(
  curve: readonly CurvePoint[],
  deflectionAt: (pulseUs: number) => number | undefined,
): readonly (readonly [number, number])[] {
  const [first, last] = [curve[0], curve.at(-1)];
  if (first === undefined || last === undefined) return [];
  const [fromDeg, toDeg] = [deflectionAt(first.pulseUs), deflectionAt(last.pulseUs)];
  if (fromDeg === undefined || toDeg === undefined) return [];
  return curve.flatMap((from, index) => {
    const to = curve[index + 1];
    if (to === undefined) return [];
    return Array.from({ length: 13 }, (_, step) => step / 12).flatMap((at) => {
      const command = from.commandPercent * (1 - at) + to.commandPercent * at;
      const given = deflectionAt(from.pulseUs * (1 - at) + to.pulseUs * at);
      const share = (command - first.commandPercent) / (last.commandPercent - first.commandPercent);
      return given === undefined ? [] : [[command, given - (fromDeg * (1 - share) + toDeg * share)] as const];
    });
  });
}
