import { describe, expect, it } from "vitest";
import { coverageFactor } from "../../../packages/core/src/uncertainty/coverage-factor.ts";
import { draw } from "../../../packages/core/src/uncertainty/draw.ts";
import { propagate } from "../../../packages/core/src/uncertainty/propagate.ts";
import { simulate, type Trial } from "../../../packages/core/src/uncertainty/simulate.ts";
import { isLinearValid, linearExcess } from "../../../packages/core/src/uncertainty/validate-linear.ts";
import reference from "../../fixtures/uncertainty.json";

function isValid(trial: Trial, value: number, standard: number): boolean {
  const simulated = simulate(trial, { seed: 5, trials: 100_000 });
  if (simulated === undefined) throw new Error("nothing to summarise");
  return isLinearValid({ value, expanded: coverageFactor(0.95) * standard }, simulated);
}

describe("isLinearValid", () => {
  it("holds for a straight model of normal inputs", () => {
    const trial: Trial = (random) =>
      draw({ kind: "normal", mean: 14, standard: 0.3 }, random) +
      draw({ kind: "normal", mean: 0, standard: 0.4 }, random);
    expect(isValid(trial, 14, 0.5)).toBe(true);
  });

  // Source: JCGM 101:2008 9.4: at x = 0 the first order sees no doubt at all, test/fixtures/uncertainty.json.
  it.each(reference.square_sum.filter((row) => row.r === 0 && row.x1 < 0.05))(
    "fails where the model is curved within its doubt, $id",
    ({ x1, u }) => {
      const linear = propagate([{ name: "x1", standard: u, sensitivity: 2 * x1 }]).standard;
      const trial: Trial = (random) =>
        draw({ kind: "normal", mean: x1, standard: u }, random) ** 2 +
        draw({ kind: "normal", mean: 0, standard: u }, random) ** 2;
      expect(isValid(trial, x1 ** 2, linear)).toBe(false);
    },
  );
});

describe("linearExcess", () => {
  it("is above 0 at an end where the straight-line interval holds more than it needs to, below 0 where it falls short", () => {
    const simulated = simulate((random) => random(), { seed: 1, trials: 10_000 });
    if (simulated === undefined) throw new Error("nothing to summarise");
    const [low, high] = linearExcess({ value: 1, expanded: 3 }, { ...simulated, symmetric: [-1, 5] });
    expect([low, high]).toEqual([1, -1]);
  });
});
