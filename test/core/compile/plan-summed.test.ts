import { expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { deg } from "../../../packages/core/src/units/quantity.ts";
import { readings, smallModel, smallMoves, smallSurface } from "../../support/small-model.ts";

test("a transmitter that adds percents gives what the pulse spans of each control alone add up to", () => {
  // 0.05 degrees a microsecond up to 1700 us and 0.2 above: 5 degrees are 100 us from level, but only some 25 us from 10 degrees on.
  const bend = readings([1300, -10], [1400, -5], [1500, 0], [1600, 5], [1700, 10], [1750, 20], [1800, 30]);
  const model = smallModel({
    surfaces: { flap: smallSurface({ readings: bend }) },
    controls: {
      lever: { kind: "selector", detents: ["stowed", "takeoff", "landing"] },
      pitch: { kind: "stick" },
    },
    moves: {
      lever: { ...smallMoves.lever, takeoff: { flap: deg(5) }, landing: { flap: deg(10) } },
      pitch: { flap: [deg(-5), deg(5)] },
    },
  });
  const [channel] = compile(model).channels;
  // Readings are kept exactly, so that 5 and 10 degrees are 100 and 200 us; 1800 us is 30 degrees, past the guarded 1790 us.
  expect(channel?.summed?.when).toEqual({ lever: "landing", pitch: 1 });
  expect(channel?.summed?.wantedDeg).toBeCloseTo(15, 9);
  expect(channel?.summed?.pulseUs).toBe(1790);
  expect(channel?.summed?.givesDeg).toBeGreaterThan(25);
  expect(channel?.summed?.errorDeg).toBeCloseTo((channel?.summed?.givesDeg ?? 0) - 15, 9);
});

test("what adds straight has no difference, and one control alone has nothing to add", () => {
  const straight = smallModel({
    controls: { ...smallModel().controls, pitch: { kind: "stick" } },
    moves: { ...smallMoves, pitch: { flap: [deg(-3), deg(3)] } },
  });
  expect(compile(straight).channels[0]?.summed?.errorDeg ?? 0).toBeCloseTo(0, 9);
  expect(compile(smallModel()).channels[0]?.summed).toBeUndefined();
});
