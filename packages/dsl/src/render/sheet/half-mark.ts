import { type HalfPulse, halfPulse, type Setting, us } from "@hingeline/core";
import type { Element } from "./element.ts";
import { fontSize, label, type Scale, stroke } from "./plot-parts.ts";
import type { SheetServo } from "./servo-on-sheet.ts";

/**
 * Half the pulses of the control that moves the servo furthest from rest: of a selector between its outermost detents before any
 * rounding, as the finding of the plan has it; of a stick between rest and that end, as entered.
 */
export function findHalf({ described, channel, settings }: SheetServo): HalfPulse | undefined {
  const response = described.measured?.response;
  const restUs = channel.neutral.pulseUs;
  const far = ({ enter }: Setting) => Math.abs(enter.pulseUs - restUs);
  const [furthest] = settings.toSorted((a, b) => far(b) - far(a));
  if (response === undefined || furthest === undefined || far(furthest) === 0) return undefined;
  const detents = settings.filter(({ detent, when }) => detent !== undefined && when === undefined);
  const exact = detents.map(({ exact }) => exact.pulseUs);
  const [fromUs, toUs] = detents.includes(furthest)
    ? [Math.min(...exact), Math.max(...exact)]
    : [restUs, furthest.enter.pulseUs];
  return halfPulse(response, us(fromUs), us(toUs));
}

/** A cross at half the pulses, where a straight line would have half the deflection. */
export function halfMark(half: HalfPulse | undefined, x: Scale, y: Scale): Element[] {
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
    // The curve rises to the right: below it on that side and above it on the other there is room.
    cx < 220 ? label(cx + 8, cy + fontSize + 2, "half") : label(cx - 8, cy - 6, "half", "end"),
  ];
}
