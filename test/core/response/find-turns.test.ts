import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findTurns } from "../../../packages/core/src/response/find-turns.ts";
import { mergeReadings } from "../../../packages/core/src/response/merge-readings.ts";
import { demoDoubts, demoReadings, demoTables, readings } from "./demo-readings.ts";

function turns(rows: ReturnType<typeof readings>) {
  return findTurns(mergeReadings(rows).points, demoDoubts);
}

describe("findTurns", () => {
  it("finds none in strictly monotone readings", () => {
    for (const table of demoTables) expect(turns(demoReadings(table))).toEqual([]);
  });

  it("finds as many as there are steps that do not go with the trend", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -300, max: 300 }), { minLength: 2, maxLength: 9 }), (tenths) => {
        const rows = readings(tenths.map((tenth, i) => [1000 + 100 * i, tenth / 10]));
        const found = turns(rows);
        const steps = tenths.slice(1).map((tenth, i) => tenth - (tenths[i] ?? 0));
        const falls = steps.filter((step) => step <= 0).length;
        const rises = steps.filter((step) => step >= 0).length;
        if (found.length === 0) expect(Math.min(falls, rises)).toBe(0);
        else expect(found).toHaveLength(found[0]?.rising ? falls : rises);
      }),
    );
  });

  it("names the pulses between which the deflection turns, and the one reading that explains it", () => {
    const rows = readings([
      [1800, 35],
      [1400, 15.2],
      [1340, 8],
      [1300, 9.9],
      [1200, 5],
      [1500, 20.1],
      [1650, 27.4],
    ]);
    expect(turns(rows)).toEqual([
      {
        kind: "notMonotone",
        betweenUs: [1300, 1340],
        deflectionsDeg: [9.9, 8],
        rising: true,
        indices: [3, 2],
        culpritIndices: [2],
      },
    ]);
  });

  it("names the reading without which fewer steps are wrong", () => {
    const low = readings([
      [1200, 5],
      [1300, 10],
      [1340, 3],
      [1400, 15],
      [1500, 20],
    ]);
    expect(turns(low)).toMatchObject([{ betweenUs: [1300, 1340], culpritIndices: [2] }]);
    const high = readings([
      [1200, 5],
      [1300, 17],
      [1340, 12],
      [1400, 15],
      [1500, 20],
    ]);
    expect(turns(high)).toMatchObject([{ betweenUs: [1300, 1340], culpritIndices: [1] }]);
  });

  it("names a slipped decimal: 43 degrees written down as 34", () => {
    const rows = readings([
      [1100, 53],
      [1200, 48],
      [1300, 34],
      [1400, 37.8],
      [1500, 32],
      [1600, 26],
      [1700, 20],
    ]);
    expect(turns(rows)).toMatchObject([{ betweenUs: [1300, 1400], rising: false, culpritIndices: [2] }]);
  });

  it("takes two equal deflections for a turn, and cannot say which of two readings is wrong", () => {
    expect(
      turns(
        readings([
          [1200, 5],
          [1600, 5],
        ]),
      ),
    ).toMatchObject([{ betweenUs: [1200, 1600], culpritIndices: [0, 1] }]);
  });

  it("names the readings of both ways behind a point", () => {
    const rows = [
      ...readings([
        [1200, 0],
        [1300, 6],
        [1500, 18],
        [1600, 24],
      ]),
      { pulseUs: 1400, deflectionDeg: 2, way: "out" as const },
      { pulseUs: 1400, deflectionDeg: 1.5, way: "back" as const },
    ];
    expect(turns(rows)).toMatchObject([{ indices: [1, 5, 4], culpritIndices: [5, 4] }]);
  });
});
