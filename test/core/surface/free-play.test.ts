import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freePlayAngle, MOST_PLAY } from "../../../packages/core/src/surface/free-play.ts";
import { throwAt } from "../../../packages/core/src/surface/throw.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";

describe("freePlayAngle", () => {
  it("is the angle whose halves move the trailing edge by half the play to either side", () => {
    fc.assert(
      fc.property(evenly(20, 200), evenly(0, 5), (chord, play) => {
        const edge = { chord: mm(chord) };
        const angle = freePlayAngle(edge, mm(play)) ?? NaN;
        expect(throwAt(edge, deg(angle / 2)) - throwAt(edge, deg(-angle / 2))).toBeCloseTo(play, 9);
      }),
    );
  });

  it("is a degree for a millimetre at 57.3 mm", () => {
    expect(freePlayAngle({ chord: mm(180 / Math.PI) }, mm(1))).toBeCloseTo(1, 4);
  });

  it("matters the more the faster the surface is used, and never more than a degree", () => {
    // From experience, no source.
    expect([MOST_PLAY.fast, MOST_PLAY.aileronOrElevator, MOST_PLAY.flap]).toEqual([0.3, 0.5, 1]);
  });

  it("is undefined for more play than the chord allows", () => {
    expect(freePlayAngle({ chord: mm(10) }, mm(41))).toBeUndefined();
  });
});
