import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import type { Reading } from "../../../packages/core/src/model/model.ts";
import { deg, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { smallModel, smallSurface, straightReadings } from "../../support/small-model.ts";

const falling = straightReadings.map(([pulse, at]): Reading => [us(3000 - pulse), at]);
const asking = (landing: number, guard: number, isRising = true) =>
  compile(
    smallModel({
      surfaces: {
        flap: smallSurface(
          isRising
            ? { guard: us(guard) }
            : { up: us(1800), down: us(1200), guard: us(guard), readings: falling },
        ),
      },
      moves: { lever: { stowed: {}, takeoff: {}, landing: { flap: deg(landing) } } },
    }),
  ).findings.filter(({ severity }) => severity === "error");
/** The degrees that a remedy says are there. */
const offered = (remedy = "") =>
  Number(/(-?[\d.]+) deg (?:is the furthest|at most|at least)/.exec(remedy)?.[1]);

describe("the furthest deflection that a finding names", () => {
  test("is one that the plan then takes, and a tenth of a degree more is not", () => {
    fc.assert(
      fc.property(
        evenly(5, 30),
        fc.constantFrom(-1, 1),
        fc.boolean(),
        fc.constantFrom(29.999, 35),
        (guard, sign, isRising, far) => {
          const [refused] = asking(sign * far, guard, isRising);
          expect(refused?.code).toBe(far > 30 ? "not-measured" : "limit-passed");
          const place = offered(refused?.do);
          expect(asking(place, guard, isRising)).toEqual([]);
          expect(asking(place + sign * 0.1, guard, isRising)).toHaveLength(1);
        },
      ),
      { numRuns: 40 },
    );
  });

  test("is rounded to the inside of a safe end between two tenths", () => {
    // 13.4 us inside the stop at 1800 us are 1786.6 us, 28.66 degrees.
    const [refused] = asking(28.7, 13.4);
    expect(refused?.code).toBe("limit-passed");
    expect(refused?.do).toContain("28.6 deg is the furthest that is safe.");
  });
});
