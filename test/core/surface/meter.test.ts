import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type MeterAngle,
  type MeterProblem,
  shownDeflection,
  trueDeflection,
} from "../../../packages/core/src/surface/meter.ts";
import { deg } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";

const settings = fc.record({
  meter: fc.constantFrom("square" as const, "alongFlight" as const, "gravity" as const),
  sweep: evenly(-45, 45).map(deg),
  tilt: evenly(-60, 60).map(deg),
});
const deflections = evenly(-70, 70).map(deg);

function angleOf(result: MeterAngle | MeterProblem): number {
  return result.kind === "angle" ? result.angle : Number.NaN;
}

describe("shownDeflection", () => {
  it("is what a turned chord line shows along flight, or against the horizon", () => {
    fc.assert(
      fc.property(settings, deflections, (setting, deflection) => {
        // The chord line square to the hinge, turned down by the deflection: aft part and drop, hinge level and unswept.
        const [aft, drop] = [Math.cos((deflection * Math.PI) / 180), Math.sin((deflection * Math.PI) / 180)];
        const sweep = (setting.sweep * Math.PI) / 180;
        const tilt = (setting.tilt * Math.PI) / 180;
        // Along flight one surface line runs 1/cos(sweep) aft for the same drop; on a tilted hinge the drop leans by tilt.
        const expected = {
          square: deflection as number,
          alongFlight: (Math.atan2(drop, aft / Math.cos(sweep)) * 180) / Math.PI,
          gravity:
            (Math.atan2(drop * Math.cos(tilt), Math.hypot(aft, drop * Math.sin(tilt))) * 180) / Math.PI,
        }[setting.meter];
        expect(angleOf(shownDeflection(setting, deflection))).toBeCloseTo(expected, 10);
      }),
    );
  });

  it("shows 19.6 for 20 degrees on a hinge swept 12, 17.5 on one swept 30", () => {
    // Worked by hand: tan(shown) = tan(20) cos(sweep).
    expect(angleOf(shownDeflection({ meter: "alongFlight", sweep: deg(12) }, deg(20)))).toBeCloseTo(19.6, 1);
    expect(angleOf(shownDeflection({ meter: "alongFlight", sweep: deg(30) }, deg(20)))).toBeCloseTo(17.5, 1);
  });

  it("shows 14.7 for 18 degrees on a panel tilted 35", () => {
    // Worked by hand: sin(shown) = cos(35) sin(18).
    expect(angleOf(shownDeflection({ meter: "gravity", tilt: deg(35) }, deg(18)))).toBeCloseTo(14.7, 1);
  });
});

describe("trueDeflection", () => {
  it("undoes what the meter shows", () => {
    fc.assert(
      fc.property(settings, deflections, (setting, deflection) => {
        const shown = shownDeflection(setting, deflection);
        expect(shown.kind).toBe("angle");
        expect(angleOf(trueDeflection(setting, deg(angleOf(shown))))).toBeCloseTo(deflection, 9);
      }),
    );
  });

  it("says how many true degrees one shown degree is", () => {
    fc.assert(
      fc.property(settings, deflections, (setting, deflection) => {
        const shown = shownDeflection(setting, deflection);
        if (shown.kind !== "angle") throw new Error(shown.kind);
        const [after, before] = [1e-3, -1e-3].map((step) =>
          angleOf(trueDeflection(setting, deg(shown.angle + step))),
        );
        const slope = ((after ?? 0) - (before ?? 0)) / 2e-3;
        expect(shown.trueDegPerShownDeg / slope).toBeCloseTo(1, 4);
        const back = trueDeflection(setting, shown.angle);
        expect(back).toMatchObject({
          kind: "angle",
          trueDegPerShownDeg: expect.closeTo(shown.trueDegPerShownDeg, 8),
        });
      }),
    );
  });

  it("changes no digit where nothing is to correct, and takes no notice of what its meter does not feel", () => {
    const plain = { kind: "angle", angle: 12.3, trueDegPerShownDeg: 1 };
    expect(trueDeflection({ meter: "square", sweep: deg(30), tilt: deg(90) }, deg(12.3))).toEqual(plain);
    expect(trueDeflection({ meter: "gravity", sweep: deg(30) }, deg(12.3))).toEqual(plain);
    expect(trueDeflection({ meter: "alongFlight", tilt: deg(35) }, deg(12.3))).toEqual(plain);
  });

  it("refuses a gravity meter on a fin", () => {
    const expected = { kind: "hingeUnfit", meter: "gravity", hingeDeg: 90, largestHingeDeg: 75 };
    expect(trueDeflection({ meter: "gravity", tilt: deg(90) }, deg(5))).toEqual(expected);
    expect(shownDeflection({ meter: "gravity", tilt: deg(90) }, deg(5))).toEqual(expected);
  });

  it("believes a hinge of 75 degrees, where one degree shown stands for nearly four, and none that is steeper", () => {
    expect(trueDeflection({ meter: "gravity", tilt: deg(75) }, deg(0))).toMatchObject({
      kind: "angle",
      // By hand: 1 / cos 75.
      trueDegPerShownDeg: expect.closeTo(3.864, 3),
    });
    expect(trueDeflection({ meter: "gravity", tilt: deg(-75.1) }, deg(0)).kind).toBe("hingeUnfit");
  });

  it("refuses an angle that no deflection shows on the tilted panel", () => {
    // A surface turned by 90 degrees on a panel tilted 35 shows 55, the most there is.
    const result = trueDeflection({ meter: "gravity", tilt: deg(35) }, deg(56));
    expect(result).toEqual({
      kind: "noSuchAngle",
      meter: "gravity",
      angleDeg: 56,
      largestDeg: expect.closeTo(55, 9),
    });
    expect(trueDeflection({ meter: "gravity", tilt: deg(35) }, deg(54.9)).kind).toBe("angle");
  });

  it("refuses a shown angle beyond 90 degrees, which would fold back to a smaller one", () => {
    expect(trueDeflection({ meter: "gravity", tilt: deg(35) }, deg(150)).kind).toBe("noSuchAngle");
    expect(trueDeflection({ meter: "alongFlight", sweep: deg(12) }, deg(150)).kind).toBe("noSuchAngle");
  });

  it("refuses deflections of 90 degrees and more", () => {
    for (const meter of ["square", "alongFlight", "gravity"] as const) {
      expect(shownDeflection({ meter }, deg(-90)).kind).toBe("noSuchAngle");
      expect(trueDeflection({ meter }, deg(90)).kind).toBe("noSuchAngle");
    }
  });
});
