import fc from "fast-check";
import type { PulseRange } from "../../../packages/core/src/signal/grid.ts";
import type { SignalScale } from "../../../packages/core/src/signal/signal-scale.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";

const span = fc.double({ min: 200, max: 700, noNaN: true }).map(us);

/** Any signal scale that a radio might have; one in two has two spans, many have a reach that is no multiple of the step. */
export const scales: fc.Arbitrary<SignalScale<"any">> = fc.record({
  name: fc.constant("any" as const),
  centre: fc.oneof(fc.constantFrom(1500, 1520), fc.double({ min: 1300, max: 1700, noNaN: true })).map(us),
  per100: fc.oneof(
    fc.constantFrom(400, 500, 512).map(us),
    span,
    fc.record({ below: span, above: span }),
    fc.record({ below: span, above: span }),
  ),
  reach: fc
    .oneof(fc.constantFrom(100, 125, 140, 150), fc.double({ min: 50, max: 150, noNaN: true }))
    .map(pct),
  step: fc.constantFrom(0.1, 0.2, 0.25, 0.5, 1, 2, 5).map(pct),
});

/** A pulse that a receiver might give. */
export const pulses = fc.double({ min: 700, max: 2300, noNaN: true }).map(us);

/** Any two pulses, the lower first; a few microseconds apart in one of three. */
export const ranges: fc.Arbitrary<PulseRange> = fc.oneof(
  { weight: 2, arbitrary: fc.tuple(pulses, pulses).map(([a, b]): PulseRange => (a < b ? [a, b] : [b, a])) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(pulses, fc.double({ min: 0, max: 20, noNaN: true }))
      .map(([low, wide]): PulseRange => [low, us(low + wide)]),
  },
);

/** Every percent that the grid of a scale holds, by counting in whole numbers: an oracle for the rounding. */
export function everyPercent(scale: SignalScale): readonly number[] {
  // The steps in use have two decimals at most, so that a hundred of them is a whole number.
  const hundredths = Math.round(scale.step * 100);
  const most = Math.floor(150 / scale.step);
  return Array.from({ length: 2 * most + 1 }, (_, index) => ((index - most) * hundredths) / 100).filter(
    (percent) => Math.abs(percent) <= scale.reach,
  );
}
