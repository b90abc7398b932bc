import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scaleProblems } from "../../../packages/core/src/signal/scale-problems.ts";
import type { SignalScale } from "../../../packages/core/src/signal/signal-scale.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";
import { scales } from "./arbitraries.ts";

const sound: SignalScale = {
  name: "field",
  centre: us(1500),
  per100: us(512),
  reach: pct(125),
  step: pct(0.1),
};

describe("scaleProblems", () => {
  it("has none for any scale that a radio might have", () => {
    fc.assert(
      fc.property(scales, (scale) => {
        expect(scaleProblems(scale)).toEqual([]);
      }),
    );
  });

  it("names each number that is not above zero, each span of a pair too", () => {
    expect(scaleProblems({ ...sound, per100: { below: us(0), above: us(-400) }, step: pct(0) })).toEqual([
      { kind: "not-positive", field: "per100", value: 0 },
      { kind: "not-positive", field: "per100", value: -400 },
      { kind: "not-positive", field: "step", value: 0 },
    ]);
    expect(scaleProblems({ ...sound, centre: us(-1), per100: us(0), reach: pct(0) })).toEqual([
      { kind: "not-positive", field: "centre", value: -1 },
      { kind: "not-positive", field: "per100", value: 0 },
      { kind: "not-positive", field: "reach", value: 0 },
    ]);
  });

  it("refuses a step that is past the reach, not one that is all of it", () => {
    expect(scaleProblems({ ...sound, step: pct(125) })).toEqual([]);
    expect(scaleProblems({ ...sound, step: pct(200) })).toEqual([
      { kind: "step-past-reach", stepPercent: 200, reachPercent: 125 },
    ]);
  });
});
