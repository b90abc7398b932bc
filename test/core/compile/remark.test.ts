import { describe, expect, test } from "vitest";
import { benchProgress } from "../../../packages/core/src/compile/bench-progress.ts";
import { deg, pct, us } from "../../../packages/core/src/units/quantity.ts";
import { codesOf, findingOf } from "../../support/expect-finding.ts";
import { readings, smallModel, smallSurface, straightReadings } from "../../support/small-model.ts";

describe("the next reading of a plan", () => {
  /** A response bent like a sine of `bow` radians to either end. */
  const bent = (bow: number, deadBand: number) =>
    smallModel({
      instruments: { pulse: us(1), deflection: deg(0.1) },
      surfaces: {
        flap: {
          ...smallSurface(
            {
              guard: us(20),
              readings: readings(
                ...[1200, 1350, 1500, 1650, 1800].map(
                  (at) => [at, (30 * Math.sin(((at - 1500) / 300) * bow)) / Math.sin(bow)] as const,
                ),
              ),
            },
            { type: { deadBand: us(deadBand) } },
          ),
          freePlay: deg(0.05),
        },
      },
    });

  test("is wanted where the bench session wants it: neither a dead band nor a step makes a reading worse", () => {
    for (const bow of [0.3, 0.6, 0.8, 1.2])
      for (const deadBand of [0, 6, 14]) {
        const model = bent(bow, deadBand);
        const isWanted = benchProgress(model, "flap")?.next?.kind === "gap";
        expect([bow, deadBand, codesOf(model).includes("read-more")]).toEqual([bow, deadBand, isWanted]);
      }
    expect([0.3, 0.6].map((bow) => codesOf(bent(bow, 14)).includes("read-more"))).toEqual([false, true]);
  });
});

describe("a limit that the radio ends short of", () => {
  const { radio } = smallModel();
  const until = (safeUs: number, reach: number, step = 1) =>
    smallModel({
      radio: { ...radio, reach: pct(reach), step: pct(step) },
      surfaces: {
        flap: smallSurface({
          down: us(safeUs),
          guard: us(0),
          readings: [...straightReadings, ...readings([safeUs, (safeUs - 1500) / 10])],
        }),
      },
    });

  test("is none where the reach ends just at the safe pulse", () => {
    expect(codesOf(until(2000, 100))).not.toContain("limit-short");
    for (const safeUs of [2199.2, 2199.6, 2200])
      expect(codesOf(until(safeUs, 140, 0.1))).not.toContain("limit-short");
  });

  test("is one as soon as the safe pulse lies beyond", () => {
    const at = "surfaces.flap.servo.bench.down";
    expect(findingOf(until(2001, 100), "limit-short", at).numbers).toEqual({
      safeUs: 2001,
      reachUs: 2000,
      reachPercent: 100,
    });
  });
});
