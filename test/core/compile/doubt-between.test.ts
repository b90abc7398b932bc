import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { listDoubts } from "../../../packages/core/src/compile/list-doubts.ts";
import type { Model } from "../../../packages/core/src/model/model.ts";
import { deg, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { readings, smallModel, smallSurface } from "../../support/small-model.ts";

/** Two flaps at 0.1 deg/us, the right one of the same sense as the left or mirrored. */
function pair(mirrored: boolean, pulse: number, deflection: number): Model {
  const right = mirrored
    ? smallSurface(
        { up: us(1800), down: us(1200), readings: readings([1200, 30], [1500, 0], [1800, -30]) },
        { channel: 2 },
      )
    : smallSurface({ readings: readings([1200, -30], [1500, 0], [1800, 30]) }, { channel: 2 });
  return smallModel({
    instruments: { pulse: us(pulse), deflection: deg(deflection) },
    surfaces: {
      flap: smallSurface({ readings: readings([1200, -30], [1500, 0], [1800, 30]) }),
      right,
    },
    groups: { flaps: { kind: "matched", surfaces: ["flap", "right"], within: deg(1) } },
    moves: { lever: { stowed: { flaps: deg(0) }, takeoff: { flaps: deg(12) }, landing: { flaps: deg(25) } } },
  });
}

const matchDoubt = (model: Model) => compile(model).matches[0]?.uncertaintyDeg ?? Number.NaN;

describe("the doubt of left against right", () => {
  // Source: JCGM 100:2008 5.2.2 (16) and F.1.2.3. The meter that read both drops out of the difference; what the tester is off by, seen
  // through the slope, drops out of two servos of one sense and counts double on two of opposite sense.
  it("has what meter and tester are off by once, with its sign, and every other cause from each side", () => {
    fc.assert(
      fc.property(evenly(0.1, 8), evenly(0.05, 0.8), fc.boolean(), (pulse, deflection, mirrored) => {
        const zero = deflection / Math.sqrt(3);
        const [play, alignment] = [0.35 / Math.sqrt(3), 0.05];
        const obeyed = 0.1 * Math.hypot(5 / Math.sqrt(12), 0.5);
        const tester = (0.1 * pulse) / Math.sqrt(3);
        const apart = 2 * (zero ** 2 + play ** 2 + alignment ** 2 + obeyed ** 2);
        const common = mirrored ? (2 * tester) ** 2 : 0;
        expect(matchDoubt(pair(mirrored, pulse, deflection))).toBeCloseTo(2 * Math.sqrt(apart + common), 9);
      }),
    );
  });

  it("does not count a common meter twice: it is less than that of two sides with nothing in common", () => {
    const model = pair(false, 1, 0.4);
    const [left, right] = ["flap", "right"].map(
      (surface) => listDoubts(model, compile(model), { surface })[0]?.expandedDeg ?? Number.NaN,
    );
    expect(matchDoubt(model)).toBeLessThan(Math.hypot(left ?? Number.NaN, right ?? Number.NaN) - 0.05);
  });
});

describe("the doubt of two surfaces on one Y lead", () => {
  const lead = (offDeg: number) =>
    smallModel({
      surfaces: {
        flap: smallSurface({}, { yLead: true }),
        other: smallSurface(
          { readings: readings([1200, -30 + offDeg], [1500, offDeg], [1800, 30 + offDeg]) },
          { yLead: true },
        ),
      },
      groups: { both: { kind: "together", surfaces: ["flap", "other"] } },
      moves: { lever: { stowed: { both: deg(0) }, takeoff: { both: deg(12) }, landing: { both: deg(25) } } },
    });

  // One pulse, one meter: zero, alignment and play of each side are left. 2 sqrt(2 (0.2^2 / 3 + 0.05^2 + 0.35^2 / 3)) = 0.674 deg.
  it("leaves out the pulse, which is one and the same", () => {
    const found = compile(lead(0.8)).findings.find(({ code }) => code === "y-lead-off");
    expect(found?.numbers.doubtDeg).toBeCloseTo(
      2 * Math.sqrt(2 * (0.2 ** 2 / 3 + 0.05 ** 2 + 0.35 ** 2 / 3)),
      9,
    );
    expect(compile(lead(0.6)).findings.map(({ code }) => code)).not.toContain("y-lead-off");
  });
});
