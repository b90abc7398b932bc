import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Pushrod } from "../../../packages/core/src/linkage/linkage.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import fourBar from "../../fixtures/linkage/four-bar.json" with { type: "json" };
import { evenly } from "../../support/evenly.ts";
import { simulateFourBar } from "../../support/simulate-four-bar.ts";
import { made } from "./made.ts";

// The second witness of the planar pushrod, beside the closed forms of four-bar.json: planck, a general-purpose physics
// library. It is handed two bodies, two pins and a rod, and solves impulses and constraints step by step; it knows
// nothing of circles that meet, of branches or of our signs. Its angles run anticlockwise from aft.

/**
 * The simulated horn has settled when a step turns it by less than 1e-12 radians, 6e-11 degrees; every step takes away
 * nearly all of what is left, so that it then stands nearer than that. The rest is room for rounding.
 */
const SETTLED_DEG = 1e-9;

/** Largest difference, degrees, between the simulated horn and `drive`'s deflection, over rotations from level. */
function worstMiss(pushrod: Pushrod, rotationsDeg: readonly number[], formula = pushrod): number {
  const { deflectionAt } = made(formula);
  const bars = {
    armMm: pushrod.arm,
    hornMm: pushrod.horn,
    aftMm: pushrod.base,
    upMm: pushrod.rise,
    armAtDeg: pushrod.armAt,
    hornAtDeg: pushrod.hornAt,
  };
  const turnsDeg = rotationsDeg.map((rotationDeg) => -rotationDeg);
  const misses = simulateFourBar(bars, turnsDeg).map(({ armAtDeg, hornAtDeg }) => {
    const deflection = deflectionAt(deg(pushrod.armAt - armAtDeg)) ?? Number.NaN;
    return Math.abs(pushrod.hornAt - deflection - hornAtDeg);
  });
  return Math.max(...misses);
}

/** Rotations from level to nine tenths of either end: nearer to a dead centre a solver that follows tangents gets lost. */
function withinRange(pushrod: Pushrod): readonly number[] {
  const { low, high } = made(pushrod).range;
  return [high, low].flatMap(({ rotation }) => [0.3, 0.6, 0.9].map((part) => part * rotation));
}

/** Whether rod and horn meet at level at more than this angle, as a builder would have them. */
const LEAST_MEETING_DEG = 20;

function clearOfDeadCentre(pushrod: Pushrod): boolean {
  const rod = made(pushrod).rodsAt(deg(0))?.[0];
  return rod !== undefined && rod.sineAtHorn > Math.sin((LEAST_MEETING_DEG * Math.PI) / 180);
}

const solved = fourBar.cases.flatMap(({ id, a, c, d, theta2_deg, solutions = [] }) =>
  solutions
    .filter(({ transmission_acute_deg }) => transmission_acute_deg > LEAST_MEETING_DEG)
    .map(({ branch, theta4_deg }) => ({
      id,
      branch,
      linkage: pushrod({ arm: a, horn: c, base: d, rise: 0, armAt: theta2_deg, hornAt: theta4_deg }),
    })),
);

describe("a pushrod against a physics library that solves constraints step by step", () => {
  it.each(solved)("$id $branch: from the reference's position to both sides", ({ linkage }) => {
    expect(worstMiss(linkage, withinRange(linkage))).toBeLessThan(SETTLED_DEG);
  });

  it.each(fourBar.sweeps)("$id: from level to both sides", ({ arm, horn, hinge, ...sweep }) => {
    const [base = 0, rise = 0] = hinge;
    const { arm_neutral_abs_deg: armAt, horn_neutral_abs_deg: hornAt } = sweep;
    const level = pushrod({ arm, horn, base, rise, armAt, hornAt });
    expect(worstMiss(level, withinRange(level))).toBeLessThan(SETTLED_DEG);
  });

  it("any pushrod of a model's size", () => {
    const anyPushrod = fc
      .record({
        arm: evenly(6, 25),
        horn: evenly(6, 25),
        base: evenly(40, 150),
        rise: evenly(-20, 20),
        armAt: evenly(50, 130),
        hornAt: fc.oneof(evenly(50, 130), evenly(-130, -50)),
      })
      .map(pushrod)
      .filter(clearOfDeadCentre);
    fc.assert(
      fc.property(anyPushrod, (any) => {
        expect(worstMiss(any, withinRange(any))).toBeLessThan(SETTLED_DEG);
      }),
      { numRuns: 100 },
    );
  });

  // Grashof: the shortest bar and the longest together are shorter than the other two, so that the shortest goes round.
  it.each([
    ["past both turning points, where the arm is the shortest", 8, 16, 45, "turnsBack"],
    ["the horn with it, where the base is the shortest", 20, 24, 5, "full"],
  ] as const)("an arm that goes round: %s", (_, arm, horn, base, end) => {
    const round = pushrod({ arm, horn, base, rise: 5, armAt: 95, hornAt: 85 });
    const { low, high } = made(round).range;
    expect([low.kind, high.kind]).toEqual([end, end]);
    const wholeTurn = Array.from({ length: 24 }, (_, index) => 15 * (index + 1));
    expect(worstMiss(round, wholeTurn)).toBeLessThan(SETTLED_DEG);
  });

  it("tells a horn that is a micrometre longer", () => {
    const level = pushrod({ arm: 11, horn: 16, base: 55, rise: -8, armAt: 100, hornAt: 75 });
    const longer = { ...level, horn: mm(level.horn + 1e-3) };
    expect(worstMiss(level, withinRange(level), longer)).toBeGreaterThan(1e5 * SETTLED_DEG);
  });
});

/** The rod is what fits at level, in the simulation too. */
function pushrod(
  bars: Readonly<Record<"arm" | "horn" | "base" | "rise" | "armAt" | "hornAt", number>>,
): Pushrod {
  return {
    kind: "pushrod",
    arm: mm(bars.arm),
    horn: mm(bars.horn),
    base: mm(bars.base),
    rise: mm(bars.rise),
    armAt: deg(bars.armAt),
    hornAt: deg(bars.hornAt),
  };
}
