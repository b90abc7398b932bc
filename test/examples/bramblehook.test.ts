import { compile, type Model } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import { describe, expect, test } from "vitest";
import { readingsOnly } from "../support/readings-only.ts";

const plan = compile(bramblehook);
const byReadings = compile(readingsOnly(bramblehook));

// Pulses worked out for this invented model apart from this project, by a curve through the same readings. The doubt of a
// position, k = 2, is 0.60 degrees; divided by the slope of the response there it is what two computations may differ by.
const worked = {
  flapLeft: { level: 1858.9, tow: 1795.6, takeoff: 1697.7, landing: 1235.4 },
  flapRight: { level: 1154.1, tow: 1216.3, takeoff: 1315.6, landing: 1783.2 },
} as const;
const doubtDeg = 0.6;
const slopeDegPerUs = { level: 0.108, tow: 0.09, takeoff: 0.0763, landing: 0.045 } as const;

describe.each([
  ["by readings and linkage", plan],
  ["by its readings alone", byReadings],
] as const)("the tow plane %s", (_, known) => {
  describe.each(Object.entries(worked))("%s", (surface, pulses) => {
    const settings = known.channels
      .flatMap((channel) => channel.settings)
      .filter((setting) => setting.surface === surface);

    test.each(Object.entries(pulses))("stands at %s with a pulse of about %d us", (detent, pulseUs) => {
      const setting = settings.find((one) => one.control === "flap" && one.detent === detent);
      const allowedUs = doubtDeg / slopeDegPerUs[detent as keyof typeof slopeDegPerUs];
      expect(setting?.exact.pulseUs).toBeDefined();
      expect(Math.abs((setting?.exact.pulseUs ?? 0) - pulseUs)).toBeLessThan(allowedUs);
    });
  });
});

test("the tow plane's stops are entered as -63 and +74 on the left, -71 and +65 on the right", () => {
  // The guarded ends 1182 and 1870, 1142 and 1828 us at 5 us per percent, rounded inward by hand.
  const limits = plan.channels
    .filter(({ channel }) => channel > 4)
    .map((channel) => [channel.limits.low.percent, channel.limits.high.percent]);
  expect(limits).toEqual([
    [-63, 74],
    [-71, 65],
  ]);
});

test("left and right are rounded together as worked by hand: 72/-69, 59/-57, 40/-37, -53/57", () => {
  const entered = byReadings.channels
    .filter(({ channel }) => channel > 4)
    .map(({ settings }) => settings.map(({ enter }) => enter.percent));
  expect(entered).toEqual([
    [72, 59, 40, -53],
    [-69, -57, -37, 57],
  ]);
});

test("half the pulses between level and landing give about 24.4 degrees, not 21", () => {
  const half = byReadings.findings.find(
    ({ code, at }) => code === "half-the-pulses" && at.includes("flapLeft"),
  );
  expect(half?.numbers.halfUs).toBeCloseTo(1547, 0);
  expect(half?.numbers.halfDeg).toBeCloseTo(24.4, 1);
  expect(half?.numbers.wantedDeg).toBeCloseTo(21, 9);
});

test("the tow plane has no error and no warning", () => {
  expect(plan.findings.filter(({ severity }) => severity !== "note")).toEqual([]);
});

test("what is added per selector leads from the channel at rest, which is rounded with its twin", () => {
  const { controls, moves } = bramblehook;
  const perMode = {
    ...bramblehook,
    controls: { ...controls, mode: { kind: "selector", detents: ["a", "b"] } },
    moves: { ...moves, flap: { per: "mode", cases: { a: moves.flap, b: moves.flap } } },
  } as Model;
  const right = compile(perMode).channels.find(({ servos }) => servos.includes("flapRight"));
  // Alone the right flap would rest at -69, together with the left at -70.
  expect(right?.neutral.percent).toBe(-70);
  const added = right?.settings.map(({ enter }) => [enter.percent, -70 + enter.addPercent]) ?? [];
  expect(added).toHaveLength(8);
  for (const [entered, reached] of added) expect(reached).toBe(entered);
});
