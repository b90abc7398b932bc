import fc from "fast-check";

/**
 * Numbers spread evenly from `min` to `max`, both included. `fc.double` spreads evenly over the bit patterns instead, so that
 * nearly all numbers of a range that holds 0 come out smaller than 1e-10.
 */
export function evenly(min: number, max: number): fc.Arbitrary<number> {
  const steps = 2 ** 31 - 1;
  return fc
    .integer({ min: 0, max: steps })
    .map((step) => (step === steps ? max : min + (step / steps) * (max - min)));
}
