import { formatTrimmed, type Transit, us } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import type { Element } from "./element.ts";
import { axes, label, type Place, picture, scaleOver, shortName, stroke } from "./plot-parts.ts";
import type { SheetServo } from "./servo-on-sheet.ts";

const dashes = ["none", "6 4"] as const;

/**
 * Deflection over time of the longest timed travel, for one servo or two: the pulse runs evenly, the surface does not. Undefined where
 * nothing is timed or no degrees are known.
 */
export function travelPlot(servos: readonly SheetServo[], height: number): Element | undefined {
  const [first] = servos;
  const transit = first && longest(first.channel.transits ?? []);
  if (first === undefined || transit === undefined) return undefined;
  const curves = servos.slice(0, 2).map((servo) => travelOf(servo, transit));
  const values = curves.flat().map(([, deflectionDeg]) => deflectionDeg);
  if (values.length === 0) return undefined;
  const box = { left: 38, right: 330, top: 34, bottom: height - 20 };
  const x = scaleOver([0, transit.seconds], [box.left, box.right]);
  const y = scaleOver(values, [box.bottom, box.top], 0.06);
  const [control, from, to] = [transit.control, transit.from, transit.to].map(visibleText);
  const seconds = formatTrimmed(transit.seconds, 2);
  return picture(
    `travel-${first.key}`,
    height,
    {
      title: `Travel of ${control} from ${from} to ${to} over time`,
      text: `${seconds} s from ${from} to ${to}. The pulse changes evenly; the curve shows the deflection.`,
    },
    [
      ...axes(box, x, y, "s", "°", 4),
      label(box.left, 13, `${shortName(transit.from, 14)} to ${shortName(transit.to, 14)}: ${seconds} s`),
      ...curves.map((curve, index) =>
        stroke(
          curve.map(([second, deflectionDeg]): Place => [x(second), y(deflectionDeg)]),
          { "stroke-width": 1.8, "stroke-dasharray": dashes[index] ?? "none" },
        ),
      ),
    ],
  );
}

function longest(transits: readonly Transit[]): Transit | undefined {
  return transits.reduce<Transit | undefined>(
    (far, transit) => (transit.seconds > (far?.seconds ?? 0) ? transit : far),
    undefined,
  );
}

function travelOf({ described, settings }: SheetServo, { control, from, to, seconds }: Transit): Place[] {
  const pulseOf = (detent: string) =>
    settings.find((setting) => setting.control === control && setting.detent === detent)?.enter.pulseUs;
  const [fromUs, toUs] = [pulseOf(from), pulseOf(to)];
  const response = described.measured?.response;
  if (fromUs === undefined || toUs === undefined || response === undefined) return [];
  return Array.from({ length: 41 }, (_, step) => step / 40).flatMap((at) => {
    const deflectionDeg = response.deflectionAt(us(fromUs * (1 - at) + toUs * at));
    return deflectionDeg === undefined ? [] : [[at * seconds, deflectionDeg] as const];
  });
}
