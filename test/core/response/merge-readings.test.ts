import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mergeReadings, type ServoReading } from "../../../packages/core/src/response/merge-readings.ts";

const out = (pulseUs: number, deflectionDeg: number): ServoReading => ({
  pulseUs,
  deflectionDeg,
  way: "out",
});
const back = (pulseUs: number, deflectionDeg: number): ServoReading => ({
  pulseUs,
  deflectionDeg,
  way: "back",
});

const anyReading = fc.record(
  {
    pulseUs: fc.integer({ min: 1490, max: 1510 }),
    deflectionDeg: fc.integer({ min: -100, max: 100 }).map((tenths) => tenths / 10),
    way: fc.constantFrom("out" as const, "back" as const),
  },
  { requiredKeys: ["pulseUs", "deflectionDeg"] },
);

describe("mergeReadings", () => {
  it("puts every reading into exactly one point or one duplicate, by rising pulse", () => {
    fc.assert(
      fc.property(fc.array(anyReading), (rows) => {
        const { points, duplicates } = mergeReadings(rows);
        const indices = [...points, ...duplicates].flatMap((group) => group.indices).sort((a, b) => a - b);
        expect(indices).toEqual(rows.map((_, i) => i));
        const pulses = points.map((point) => point.pulseUs);
        expect(pulses).toEqual([...new Set(pulses)].sort((a, b) => a - b));
      }),
    );
  });

  it("keeps a point inside the readings behind it", () => {
    fc.assert(
      fc.property(fc.array(anyReading), (rows) => {
        for (const point of mergeReadings(rows).points) {
          const behind = point.indices.map((index) => rows[index]?.deflectionDeg ?? Number.NaN);
          expect(point.deflectionDeg).toBeGreaterThanOrEqual(Math.min(...behind));
          expect(point.deflectionDeg).toBeLessThanOrEqual(Math.max(...behind));
        }
      }),
    );
  });

  it("takes the middle of out and back and says how far they lie apart, and where", () => {
    const { points, hysteresis, duplicates } = mergeReadings([
      out(1660, 17.2),
      back(1750, 20),
      back(1660, 16.3),
    ]);
    expect(points).toEqual([
      { pulseUs: 1660, deflectionDeg: 16.75, indices: [2, 0] },
      { pulseUs: 1750, deflectionDeg: 20, indices: [1] },
    ]);
    expect(hysteresis).toEqual([
      { pulseUs: 1660, outDeg: 17.2, backDeg: 16.3, differenceDeg: expect.closeTo(0.9, 12), indices: [2, 0] },
    ]);
    expect(duplicates).toEqual([]);
  });

  it("pairs an out and a back reading that lie up to 2 us apart, at the middle pulse", () => {
    expect(mergeReadings([out(1500, 5), back(1502, 5.6)]).points).toEqual([
      { pulseUs: 1501, deflectionDeg: expect.closeTo(5.3, 12), indices: [0, 1] },
    ]);
    expect(mergeReadings([out(1500, 5), back(1503, 5.6)]).points).toHaveLength(2);
    expect(mergeReadings([out(1500, 5), out(1502, 5.6)]).points).toHaveLength(2);
  });

  it("averages repeats of each way before it takes the middle", () => {
    const { points, hysteresis } = mergeReadings([out(1500, 5), out(1500, 5.4), back(1500, 4)]);
    expect(points[0]?.deflectionDeg).toBeCloseTo(4.6, 12);
    expect(hysteresis[0]?.differenceDeg).toBeCloseTo(1.2, 12);
  });

  it("calls readings at one pulse a duplicate unless they are marked as both ways", () => {
    const plain = { pulseUs: 1500, deflectionDeg: 5.2 };
    for (const rows of [
      [plain, plain],
      [out(1500, 5), out(1500, 5)],
      [out(1500, 5), back(1500, 4), plain],
    ]) {
      const { points, duplicates } = mergeReadings(rows);
      expect(points).toEqual([]);
      expect(duplicates).toMatchObject([{ kind: "duplicate", pulseUs: 1500 }]);
      expect(duplicates[0]?.indices.toSorted()).toEqual(rows.map((_, i) => i));
    }
  });
});
