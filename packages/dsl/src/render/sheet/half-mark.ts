import { type HalfPulse, halfPulse, us } from "@hingeline/core";
import type { Element } from "./element.ts";
import { fontSize, label, type Scale, stroke } from "./plot-parts.ts";
import type { SheetServo } from "./servo-on-sheet.ts";

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
