import fc from "fast-check";
import { describe, expect, test } from "vitest";
import * as quantity from "../../../packages/core/src/units/quantity.ts";

const { amps, celsius, deg, degPerS, degPerUs, grams, m, mm, mps, newtons, nm, pct, s, us, volts } = quantity;
const constructors = {
  amps,
  celsius,
  deg,
  degPerS,
  degPerUs,
  grams,
  m,
  mm,
  mps,
  newtons,
  nm,
  pct,
  s,
  us,
  volts,
};

describe.each(Object.entries(constructors))("%s", (name, make) => {
  test("gives back the very number, finite whatever it is", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) =>
        Object.is(make(value), value),
      ),
    );
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    "refuses %s by its own name",
    (value) => {
      expect(() => make(value)).toThrow(new RangeError(`${name}(${value}): expected a finite number`));
    },
  );
});

test("no constructor is left out here", () => {
  const all = Object.entries(quantity).filter(
    ([name, value]) => typeof value === "function" && name !== "finite",
  );
  expect(all.map(([name]) => name).sort()).toEqual(Object.keys(constructors));
});
